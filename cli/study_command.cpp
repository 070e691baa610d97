#include <CLI/CLI.hpp>
#include <memory>
#include <sealworthy/study.hpp>

#include "commands.hpp"
#include "kitchens.hpp"
#include "paths.hpp"
#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

struct StudyArguments {
  Common common;
  std::string path;
};

std::optional<CheckOptions> options_for(const StudyArguments& arguments, Kitchens& kitchens) {
  CheckOptions options;
  options.explain = true;
  if (!arguments.common.altitude.empty()) {
    options.altitude = read_altitude_option(arguments.common.altitude);
    if (!options.altitude) return std::nullopt;
  }
  if (!arguments.common.kitchen.empty() && !kitchens.use_for_all(arguments.common.kitchen))
    return std::nullopt;
  options.kitchen = kitchens.of(arguments.path);
  return options;
}

int run(const StudyArguments& arguments) {
  const auto checker = make_checker(arguments.common);
  if (!checker) return unreadable;
  Kitchens kitchens(*checker, local_date(), [](const InputError& error) { tell(error); });
  const auto options = options_for(arguments, kitchens);
  if (!options) return unreadable;
  const auto text = read_file(arguments.path, file_limit);
  if (const auto* trouble = std::get_if<Trouble>(&text)) {
    tell({trouble->path, {}, trouble->message, {}});
    return unreadable;
  }
  const auto reports = checker->check_text(arguments.path, std::get<std::string>(text), *options);
  Output output("-");
  const TextStyle style{terminal_width(Stream::out), false};
  if (arguments.common.format == "json") output.write(study_json(reports));
  bool failed = false;
  bool first = true;
  for (const auto& report : reports) {
    if (report.verdict == Verdict::unreadable) {
      failed = true;
      const auto& finding = report.findings.front();
      tell({report.path, finding.at, finding.message, finding.instead});
    } else if (arguments.common.format != "json") {
      output.write((first ? "" : "\n") + study_text(report, style));
      first = false;
    }
  }
  return failed ? unreadable : fine;
}

}  // namespace

void add_study(CLI::App& app, int& status) {
  auto arguments = std::make_shared<StudyArguments>();
  auto& a = *arguments;
  auto* command = app.add_subcommand(
      "study", "The science behind a card: altitude, what its heat kills, its pH; it is no process");
  command->add_option("FILE", a.path, "A file of cards, or - for standard input")->required();
  command->add_option("--kitchen", a.common.kitchen, "Kitchen file; without it, the nearest kitchen.yaml");
  command->add_option("--altitude", a.common.altitude, "Where you can: 5,280 ft, 1600 m");
  command->add_option("--format", a.common.format, "text for people, json for programs")
      ->check(CLI::IsMember({"text", "json"}))
      ->capture_default_str();
  command->add_option("--rules", a.common.rules, "Folder or file of further rules (YAML)");
  command->footer(
      "It explains and alarms. It judges nothing and clears nothing: `sealworthy check` compares.");
  command->callback([arguments, &status] { status = run(*arguments); });
}

}  // namespace sealworthy::cli
