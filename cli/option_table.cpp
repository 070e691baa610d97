#include "option_table.hpp"

#include <CLI/CLI.hpp>
#include <string_view>

namespace sealworthy::cli {
namespace {

/// The words in the braces of a type name: "TEXT:{auto,always,never}".
std::vector<std::string> choices_in(const std::string& type) {
  std::vector<std::string> choices;
  const auto open = type.find('{');
  const auto close = type.find('}');
  if (open == std::string::npos || close == std::string::npos) return choices;
  std::string_view rest = std::string_view(type).substr(open + 1, close - open - 1);
  while (!rest.empty()) {
    const auto comma = rest.find(',');
    choices.emplace_back(rest.substr(0, comma));
    rest = comma == std::string_view::npos ? std::string_view() : rest.substr(comma + 1);
  }
  return choices;
}

OptionRow row_of(const CLI::Option& option) {
  OptionRow row;
  for (const auto& name : option.get_lnames()) row.names.push_back("--" + name);
  for (const auto& name : option.get_snames()) row.names.push_back("-" + name);
  if (option.get_positional()) row.positional = option.get_name(true);
  if (option.get_items_expected_max() > 0) {
    const auto type = option.get_type_name();
    row.choices = choices_in(type);
    row.value = type.find("FILE") != std::string::npos ? type : type.substr(0, type.find_first_of(": "));
  }
  row.description = option.get_description();
  row.standard = option.get_default_str();
  row.required = option.get_required();
  return row;
}

CommandRow row_of(const CLI::App& app) {
  CommandRow row{app.get_name(), app.get_description(), app.get_footer(), {}};
  for (const auto* option : app.get_options()) row.options.push_back(row_of(*option));
  return row;
}

}  // namespace

OptionTable option_table(const CLI::App& app) {
  OptionTable table{row_of(app), {}};
  for (const auto* command : app.get_subcommands([](const CLI::App*) { return true; }))
    table.commands.push_back(row_of(*command));
  return table;
}

}  // namespace sealworthy::cli
