#include <CLI/CLI.hpp>
#include <memory>
#include <sealworthy/plan.hpp>

#include "commands.hpp"
#include "kitchens.hpp"
#include "paths.hpp"
#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

struct PlanArguments {
  Common common;
  std::string output;  ///< empty: standard output
  std::vector<std::string> paths;
  std::string jars;
  std::string have;
  std::string today;
};

/// The cards' texts; nullopt after what can't be read was told.
std::optional<std::vector<PlanCards>> read_cards(const std::vector<std::string>& paths) {
  const auto expanded = expand(paths);
  bool good = expanded.troubles.empty();
  for (const auto& trouble : expanded.troubles) tell({trouble.path, {}, trouble.message, {}});
  std::vector<PlanCards> cards;
  for (const auto& path : expanded.files) {
    auto text = read_file(path, file_limit);
    if (const auto* trouble = std::get_if<Trouble>(&text)) {
      tell({trouble->path, {}, trouble->message, {}});
      good = false;
    } else {
      cards.push_back({path, std::get<std::string>(std::move(text))});
    }
  }
  if (!good) return std::nullopt;
  return cards;
}

std::string written(const Plan& plan, const PlanArguments& arguments) {
  const auto& common = arguments.common;
  if (common.format == "json") return plan_json(plan);
  if (common.format == "html") return plan_html(plan);
  const bool terminal = arguments.output.empty() && is_terminal(Stream::out);
  return plan_text(plan, {terminal_width(Stream::out), use_color(common.color, terminal)});
}

int run(const PlanArguments& arguments) {
  const auto checker = make_checker(arguments.common);
  if (!checker) return unreadable;
  const auto cards = read_cards(arguments.paths);
  if (!cards) return unreadable;
  PlanOptions options;
  options.jars = arguments.jars;
  options.have = arguments.have;
  options.check.today = arguments.today.empty() ? local_date() : arguments.today;
  bool kitchen_read = true;
  Kitchens kitchens(*checker, options.check.today, [&](const InputError& error) {
    kitchen_read = false;
    tell(error);
  });
  if (!arguments.common.kitchen.empty() && !kitchens.use_for_all(arguments.common.kitchen)) return unreadable;
  if (!cards->empty()) options.check.kitchen = kitchens.of(cards->front().path);
  if (!kitchen_read) return unreadable;
  if (!arguments.common.altitude.empty()) {
    options.check.altitude = read_altitude_option(arguments.common.altitude);
    if (!options.check.altitude) return unreadable;
  }
  const auto made = make_plan(*checker, *cards, options);
  if (const auto* errors = std::get_if<std::vector<InputError>>(&made)) {
    for (const auto& error : *errors) tell(error);
    return unreadable;
  }
  Output output(arguments.output.empty() ? std::string("-") : arguments.output);
  if (!output.ok() || !output.write(written(std::get<Plan>(made), arguments))) {
    tell({arguments.output, {}, "the plan can't be written", {}});
    return unreadable;
  }
  return fine;
}

}  // namespace

void add_plan(CLI::App& app, int& status) {
  auto arguments = std::make_shared<PlanArguments>();
  auto& a = *arguments;
  auto* command = app.add_subcommand(
      "plan", "Plan a canning day: amounts, produce, canner loads and times of tested cards");
  command->add_option("CARD", a.paths, "Tested cards; several share one day and its canners")->required();
  command->add_option("--jars", a.jars, "So many jars of each card: 28, or \"28 pints\"");
  command->add_option("--have", a.have, "As many jars as this fills: \"30 lb tomatoes\"");
  command->add_option("--kitchen", a.common.kitchen,
                      "Kitchen file; without it, the nearest kitchen.yaml beside or above the first card");
  command->add_option("--altitude", a.common.altitude, "Where you can: 5,280 ft, 1600 m");
  command
      ->add_option("--format", a.common.format,
                   "text for people, json for programs, html a sheet to hang beside the stove")
      ->check(CLI::IsMember({"text", "json", "html"}))
      ->capture_default_str();
  command->add_option("--output", a.output, "Write the plan to this file instead of standard output");
  command->add_option("--today", a.today, "The date to judge by, like 2026-08-31; without it, today")
      ->check(CLI::Validator(date_error, "DATE"));
  command->add_option("--rules", a.common.rules, "Folder or file of further rules (YAML)");
  command->add_option("--color", a.common.color, "Colour in text output")
      ->check(CLI::IsMember({"auto", "always", "never"}));
  command->footer(
      "A card that is not tested is not planned. Amounts are scaled only where the card stays tested; else "
      "the "
      "recipe is\n"
      "made several times. Exit status: 0, or 2 where a card can't be planned.");
  command->callback([arguments, &status] { status = run(*arguments); });
}

}  // namespace sealworthy::cli
