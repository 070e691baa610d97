#include <CLI/CLI.hpp>
#include <memory>
#include <sealworthy/merge.hpp>

#include "commands.hpp"
#include "fail_policy.hpp"
#include "paths.hpp"
#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

struct MergeArguments {
  std::vector<std::string> parts;
  std::string format = "json";
  std::string output;
  std::string fail_on = "warning";
  std::string require;
};

constexpr std::size_t part_limit = std::size_t{8} << 30;

int run(const MergeArguments& arguments) {
  Merger merger;
  bool troubled = false;
  for (const auto& part : arguments.parts) {
    const auto text = read_file(part, part_limit);
    if (const auto* trouble = std::get_if<Trouble>(&text)) {
      tell({part, {}, trouble->message, {}});
      troubled = true;
    } else if (const auto error = merger.add(part, std::get<std::string>(text))) {
      tell(*error);
      troubled = true;
    }
  }
  Output output(arguments.output);
  if (!output.ok()) {
    tell({arguments.output, {}, "this file can't be written", {}});
    return unreadable;
  }
  if (!output.write(arguments.format == "json" ? merger.json() : merger.ndjson())) {
    tell("the report could not be written");
    return unreadable;
  }
  if (troubled || merger.summary().count(Verdict::unreadable) > 0) return unreadable;
  return merger.fails(fail_policy(arguments.fail_on, arguments.require)) ? found : fine;
}

}  // namespace

void add_merge(CLI::App& app, int& status) {
  auto arguments = std::make_shared<MergeArguments>();
  auto& a = *arguments;
  auto* command = app.add_subcommand(
      "merge", "Put reports of `check` in JSON or NDJSON together, as if one run had made them");
  command->add_option("PART", a.parts, "Report in JSON or NDJSON, or - for standard input")->required();
  command->add_option("--format", a.format, "json or ndjson (a recipe a line)")
      ->check(CLI::IsMember({"json", "ndjson"}))
      ->capture_default_str();
  command->add_option("--output", a.output, "Write the report to this file instead of standard output")
      ->type_name("FILE");
  add_fail_options(*command, a.fail_on, a.require);
  command->footer(
      "Recipes come out by path. Exit status as that of one run of `check`; 2 too where a part could not be "
      "read.");
  command->callback([arguments, &status] { status = run(*arguments); });
}

}  // namespace sealworthy::cli
