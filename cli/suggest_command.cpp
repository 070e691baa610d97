#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <memory>
#include <sealworthy/suggest.hpp>

#include "commands.hpp"
#include "kitchens.hpp"
#include "paths.hpp"
#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

struct SuggestArguments {
  Common common;
  std::string path;
  std::string output;  ///< empty: standard output
};

/// What is written, and whether something could not be suggested or is not tested.
struct Done {
  std::string cards;
  bool troubled = false;
  bool untested = false;
};

void add(const Suggestions& all, const std::string& path, Done& done) {
  for (const auto& error : all.errors) tell(error);
  done.troubled = done.troubled || !all.errors.empty();
  for (const auto& suggestion : all.cards) {
    if (!done.cards.empty()) done.cards += "---\n";
    done.cards += suggestion.card;
    if (suggestion.verdict == Verdict::tested) continue;
    done.untested = true;
    tell(fmt::format("{}: the suggested card is {}: {}", path, to_string(suggestion.verdict),
                     suggestion.why_not_tested));
  }
}

int run(const SuggestArguments& arguments) {
  const auto& [common, path, output_path] = arguments;
  const auto checker = make_checker(common);
  if (!checker) return unreadable;
  std::error_code failed;
  if (!output_path.empty() && std::filesystem::exists(output_path, failed)) {
    tell({output_path, {}, "this file exists; a suggestion is never written over one", "name a new file"});
    return unreadable;
  }
  CheckOptions options;
  options.today = local_date();
  bool kitchen_read = true;
  Kitchens kitchens(*checker, options.today, [&](const InputError& error) {
    kitchen_read = false;
    tell(error);
  });
  if (!common.kitchen.empty() && !kitchens.use_for_all(common.kitchen)) return unreadable;
  options.kitchen = kitchens.of(path);
  if (!kitchen_read) return unreadable;
  if (!common.altitude.empty()) {
    options.altitude = read_altitude_option(common.altitude);
    if (!options.altitude) return unreadable;
  }
  const auto text = read_file(path, file_limit);
  if (const auto* trouble = std::get_if<Trouble>(&text)) {
    tell({trouble->path, {}, trouble->message, {}});
    return unreadable;
  }
  Done done;
  add(suggest_cards(*checker, path, std::get<std::string>(text), options), path, done);
  if (!done.cards.empty() || !done.troubled) {
    Output output(output_path.empty() ? std::string("-") : output_path);
    if (!output.ok() || !output.write(done.cards)) {
      tell({output_path, {}, "the suggestion can't be written", {}});
      return unreadable;
    }
  }
  if (done.troubled) return unreadable;
  return done.untested ? found : fine;
}

}  // namespace

void add_suggest(CLI::App& app, int& status) {
  auto arguments = std::make_shared<SuggestArguments>();
  auto& common = arguments->common;
  auto* command = app.add_subcommand(
      "suggest", "The tested process nearest to a card, as a new card with a comment at each change");
  command->add_option("CARD", arguments->path, "A card, or - for standard input")->required();
  command->add_option("--kitchen", common.kitchen,
                      "Kitchen file; without it, the nearest kitchen.yaml beside or above the card");
  command->add_option("--altitude", common.altitude, "Where you can: 5,280 ft, 1600 m");
  command->add_option("--output", arguments->output, "Write it to this new file instead of standard output");
  command->add_option("--rules", common.rules, "Folder or file of further rules (YAML)");
  command->footer(
      "No file is ever written over. Exit status: 0 the suggested card is tested; 1 it is not (what is open "
      "is "
      "told);\n"
      "2 nothing could be suggested.");
  command->callback([arguments, &status] { status = run(*arguments); });
}

}  // namespace sealworthy::cli
