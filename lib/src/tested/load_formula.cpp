#include "tested/load_formula.hpp"

#include <algorithm>

namespace sealworthy::tested {
namespace {

const std::vector<std::string_view> roles{"acid",   "low-acid", "sugar",  "salt",
                                          "pectin", "fat",      "starch", "flavor"};

/// "red-bell-pepper" as people say it.
std::string spoken(std::string_view id) {
  std::string words(id);
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

void read_per(checks::Fields& fields, FormulaLine& line, const LoadContext& context) {
  const auto* per = fields.find("per");
  line.per_jar = per != nullptr;
  if (per != nullptr && per->text != "jar") line.per_jar_of = context.sizes.read(*per, context.sink);
}

void read_amounts(checks::Fields& fields, FormulaLine& line, const LoadContext& context) {
  const auto* node = fields.find("amount");
  if (node == nullptr) return;
  const auto take = [&](const yaml::Node& text) {
    if (auto amount = read_whole_amount(text, context)) line.amounts.push_back(*std::move(amount));
  };
  if (node->is_sequence())
    for (const auto& item : node->items) take(item);
  else
    take(*node);
}

/// "6 lb pickling cucumber, sliced (about 12)".
std::string line_text(std::string_view amount, std::string_view name, const FormulaLine& line,
                      std::string_view per, std::string_view note) {
  std::string text;
  constexpr std::size_t usual = 80;
  text.reserve(usual);
  text += amount;
  if (!text.empty()) text += ' ';
  text += name;
  for (const auto& state : line.states) text.append(", ").append(state);
  if (!per.empty()) text.append(" in each ").append(per);
  if (!note.empty()) text.append(" (").append(note).append(")");
  return text;
}

FormulaLine load_line(const yaml::Node& node, const LoadContext& context) {
  checks::Fields fields(node, "formula line", context.sink);
  FormulaLine line;
  const auto* one = fields.find("food");
  const auto* several = fields.find("foods");
  const auto* food = one != nullptr ? one : several;
  if (food != nullptr)
    context.read_foods(*food, line.foods);
  else
    context.add(node.at, "a formula line needs a food");
  const auto name = fields.text("name");
  read_amounts(fields, line, context);
  line.text = fields.text("text");
  read_per(fields, line, context);
  line.states = fields.list("state");
  if (const auto role = fields.choice("role", roles)) line.role = roles[*role];
  line.strength_percent = read_strength(fields, context);
  line.any_mix = fields.flag("any-mix");
  line.at_most = fields.flag("at-most");
  line.optional = fields.flag("optional");
  line.not_eaten = fields.flag("not-eaten");
  line.part = fields.text("part");
  const auto note = fields.text("note");
  fields.done();

  const auto* amount = node.find("amount");
  if (amount == nullptr && line.text.empty())
    context.add(node.at, "a formula line without an amount needs a text that says how much");
  if (line.text.empty() && food != nullptr) {
    if (amount != nullptr && amount->is_sequence() && !amount->items.empty()) amount = &amount->items.front();
    const auto* per = node.find("per");
    const auto spoken_name = name.empty() ? spoken(food->text) : name;
    const auto of_jar = per != nullptr ? per->text : std::string_view{};
    line.text =
        line_text(amount != nullptr ? amount->text : std::string_view{}, spoken_name, line, of_jar, note);
    line.what = line_text({}, spoken_name, line, of_jar, note);
  }
  if (line.what.empty()) line.what = line.text;
  return line;
}

void load_lines(const yaml::Node* lines, checks::Fields& fields, Formula& formula,
                const LoadContext& context) {
  if (lines == nullptr || lines->items.empty()) {
    context.add(fields.at(), "a formula needs lines");
    return;
  }
  formula.lines.reserve(lines->items.size());
  for (const auto& item : lines->items) formula.lines.push_back(load_line(item, context));
}

}  // namespace

std::optional<quantity::Amount> read_whole_amount(const yaml::Node& node, const LoadContext& context) {
  if (const auto known = context.amounts.find(node.text); known != context.amounts.end())
    return known->second;
  auto amount = quantity::read_amount(node.text, quantity::Units::us);
  if (amount && amount->end == node.text.size() && amount->stated_any()) {
    context.amounts.emplace(node.text, *amount);
    return amount;
  }
  context.add(node.at, "'" + std::string(node.text) + "' is no amount",
              "write a figure with a unit, like 2 1/2 cups, 3 to 4 lb or 6");
  return std::nullopt;
}

std::optional<double> read_strength(checks::Fields& fields, const LoadContext& context) {
  const auto* node = fields.find("strength");
  if (node == nullptr) return std::nullopt;
  auto text = node->text;
  if (text.ends_with('%')) text.remove_suffix(1);
  while (text.ends_with(' ')) text.remove_suffix(1);
  const auto percent = read_figure(text);
  if (percent && *percent > 0 && *percent <= 100) return percent;
  context.add(node->at, "'" + std::string(node->text) + "' is no strength in percent");
  return std::nullopt;
}

Formula load_formula(const yaml::Node& node, Read product_read, const LoadContext& context,
                     std::vector<Formula>& versions) {
  checks::Fields fields(node, "formula", context.sink);
  Formula formula;
  formula.name = fields.text("name");
  formula.yields = fields.text("yields");
  formula.read = read_mark(fields, product_read);
  load_lines(fields.find("lines"), fields, formula, context);
  formula.allowed = fields.list("allowed");
  formula.forbidden = fields.list("forbidden");
  formula.may = fields.list("may");
  formula.may_not = fields.list("may-not");
  if (const auto* list = fields.find("versions"))
    for (const auto& item : list->items) {
      checks::Fields one(item, "version", context.sink);
      Formula version;
      version.name = one.text("name", true);
      version.yields = one.text("yields");
      version.read = formula.read;
      load_lines(one.find("lines"), one, version, context);
      version.allowed = formula.allowed;
      version.forbidden = formula.forbidden;
      one.done();
      versions.push_back(std::move(version));
    }
  fields.done();
  return formula;
}

}  // namespace sealworthy::tested
