#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <sealworthy/lookup_report.hpp>
#include <sealworthy/values.hpp>

#include "commands.hpp"
#include "kitchens.hpp"
#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

struct LookupArguments {
  Common common;
  std::vector<std::string> words;
  std::string jar;
  std::string pack;
  std::string method;
};

int run(const LookupArguments& arguments) {
  const auto checker = make_checker(arguments.common);
  if (!checker) return unreadable;
  LookupQuery query{fmt::format("{}", fmt::join(arguments.words, " ")),
                    arguments.jar,
                    arguments.pack,
                    arguments.method,
                    {},
                    {}};
  if (!arguments.common.altitude.empty()) {
    const auto altitude = read_altitude_option(arguments.common.altitude);
    if (!altitude) return unreadable;
    query.altitude = altitude->high;  // the worse end of a range
  }
  if (!arguments.common.kitchen.empty()) {
    Kitchens kitchens(*checker, {}, [](const InputError& error) { tell(error); });
    if (!kitchens.use_for_all(arguments.common.kitchen)) return unreadable;
    query.kitchen = kitchens.of(arguments.common.kitchen);
  }
  auto result = lookup(*checker, query);
  if (const auto* error = std::get_if<InputError>(&result)) {
    tell(*error);
    return unreadable;
  }
  const auto& found_ones = std::get<LookupResult>(result);
  Output output("");
  const TextStyle style{terminal_width(Stream::out),
                        use_color(arguments.common.color, is_terminal(Stream::out))};
  output.write(arguments.common.format == "json" ? lookup_json(found_ones) : lookup_text(found_ones, style));
  return fine;
}

}  // namespace

void add_lookup(CLI::App& app, int& status) {
  auto arguments = std::make_shared<LookupArguments>();
  auto& a = *arguments;
  auto* command = app.add_subcommand(
      "lookup", "The tested processes for a food, worked out for your altitude, jar and canner");
  command
      ->add_option("WORDS", a.words,
                   "A food, a form, a title or an id: green beans; tomatoes crushed; choice salsa")
      ->required();
  command->add_option("--jar", a.jar, "Only for this jar: pint, quart, 500 ml");
  command->add_option("--pack", a.pack, "Only for this pack")->check(CLI::IsMember({"hot", "raw"}));
  command->add_option("--method", a.method, "Only by this method: boiling water, pressure canner");
  command->add_option("--kitchen", a.common.kitchen, "Kitchen file, for its altitude and canners");
  command->add_option("--altitude", a.common.altitude, "Where you can: 5,280 ft, 1600 m");
  command->add_option("--format", a.common.format, "text for people, json for programs")
      ->check(CLI::IsMember({"text", "json"}))
      ->capture_default_str();
  command->add_option("--rules", a.common.rules, "Folder or file of further rules (YAML)")
      ->allow_extra_args(false);
  command->add_option("--color", a.common.color, "Colour in text output")
      ->check(CLI::IsMember({"auto", "always", "never"}));
  command->callback([arguments, &status] { status = run(*arguments); });
}

}  // namespace sealworthy::cli
