#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <sealworthy/explain.hpp>

#include "commands.hpp"
#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

struct ExplainArguments {
  Common common;
  std::vector<std::string> ids;
};

int run(const ExplainArguments& arguments) {
  const auto checker = make_checker(arguments.common);
  if (!checker) return unreadable;
  Output output("");
  const TextStyle style{terminal_width(Stream::out),
                        use_color(arguments.common.color, is_terminal(Stream::out))};
  if (arguments.ids.empty()) {
    output.write(list_rules(*checker, style));
    return fine;
  }
  int status = fine;
  bool first = true;
  for (const auto& id : arguments.ids) {
    if (const auto text = explain(*checker, id, style)) {
      output.write((first ? "" : "\n") + *text);
      first = false;
      continue;
    }
    status = unreadable;
    const auto near = suggest_rules(*checker, id);
    tell(fmt::format("no rule or topic is called '{}'{}", id,
                     near.empty() ? "; `sealworthy explain` lists them all"
                                  : fmt::format("; did you mean {}?", fmt::join(near, ", "))));
  }
  return status;
}

}  // namespace

void add_explain(CLI::App& app, int& status) {
  auto arguments = std::make_shared<ExplainArguments>();
  auto* command = app.add_subcommand(
      "explain", "What a rule means, why, its source and examples; or the science: altitude, heat, acidity");
  command->add_option("RULE", arguments->ids, "Ids as the reports print them; none lists all rules");
  command->add_option("--rules", arguments->common.rules, "Folder or file of further rules (YAML)")
      ->type_name("PATH")
      ->allow_extra_args(false);
  command->callback([arguments, &status] { status = run(*arguments); });
}

}  // namespace sealworthy::cli
