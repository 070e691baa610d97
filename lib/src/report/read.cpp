#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <sealworthy/read.hpp>

#include "knowledge/knowledge.hpp"
#include "knowledge/recipes.hpp"
#include "quantity/figures.hpp"
#include "reading/build.hpp"
#include "recipe/write_card.hpp"
#include "report/understood.hpp"
#include "report/wrap.hpp"
#include "text/one_line.hpp"

namespace sealworthy {
namespace {

using Json = nlohmann::ordered_json;
using report::wrap;

std::string dumped(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

/// Figures of at most four decimals: thirds are rounded, not spun out.
double rounded(double value) { return std::round(value * 10000) / 10000; }

std::string_view food_id(const foods::Named& named) {
  return named.food == nullptr ? std::string_view() : named.food->id;
}

Json of(const reading::Ingredient& ingredient) {
  const auto& read = ingredient.read;
  const auto& amount = read.amount;
  Json json{{"line", ingredient.line->at.line}, {"text", ingredient.line->text}};
  json["low"] = amount.stated_any() ? Json(rounded(amount.stated.low)) : Json(nullptr);
  json["high"] = amount.stated_any() ? Json(rounded(amount.stated.high)) : Json(nullptr);
  json["unit"] = amount.unit;
  json["food"] = read.foods.empty() || read.foods.front().food == nullptr ? Json(nullptr)
                                                                          : Json(food_id(read.foods.front()));
  json["name"] = read.name;
  json["state"] = read.states;
  json["per_jar"] = read.per_jar || ingredient.line->per_jar;
  json["grams"] = read.weight
                      ? Json{std::round(in_grams(read.weight->low)), std::round(in_grams(read.weight->high))}
                      : Json(nullptr);
  if (!amount.size.empty()) json["size"] = amount.size;
  if (read.foods.size() > 1) {
    auto& others = json[read.all_of ? "and" : "or"] = Json::array();
    for (const auto& named : read.foods) others.push_back(food_id(named));
  }
  if (read.optional) json["optional"] = true;
  if (read.not_eaten) json["not_eaten"] = true;
  if (read.strength_percent) json["strength_percent"] = *read.strength_percent;
  if (!read.unknown.empty()) json["unknown"] = read.unknown;
  return json;
}

Json of(const reading::Match& match) {
  if (match.product == nullptr) return Json{{"id", nullptr}};
  Json json{{"id", match.product->id}, {"by", match.by == reading::Match::By::follows ? "follows" : "found"}};
  if (match.doubtful) json["doubt"] = match.doubt;
  return json;
}

std::string amount_words(const quantity::Amount& amount) {
  if (!amount.stated_any()) return amount.unit.empty() ? "no amount" : amount.unit;
  auto words = quantity::kitchen_number(amount.stated.low);
  if (!amount.stated.exact()) words += " to " + quantity::kitchen_number(amount.stated.high);
  if (!amount.size.empty()) words += " " + amount.size;
  return amount.unit.empty() ? words : words + " " + amount.unit;
}

std::string ingredient_text(const reading::Ingredient& ingredient, const TextStyle& style) {
  const auto& read = ingredient.read;
  std::vector<std::string> foods;
  for (const auto& named : read.foods)
    foods.push_back(named.food == nullptr
                        ? "unknown food '" + named.name + "'"
                        : named.food->id + (named.slip ? " (taken for a slip of the pen)" : ""));
  std::string understood = amount_words(read.amount);
  if (!foods.empty()) understood += fmt::format(" | {}", fmt::join(foods, read.all_of ? " and " : " or "));
  if (!read.states.empty()) understood += fmt::format(" | {}", fmt::join(read.states, ", "));
  if (read.weight)
    understood +=
        fmt::format(" | {} g", read.weight->exact() ? quantity::grouped(in_grams(read.weight->low))
                                                    : quantity::grouped(in_grams(read.weight->low)) + " to " +
                                                          quantity::grouped(in_grams(read.weight->high)));
  if (read.per_jar || ingredient.line->per_jar) understood += " | each jar";
  if (read.optional) understood += " | optional";
  if (read.not_eaten) understood += " | not in the jar";
  if (!read.unknown.empty())
    understood += fmt::format(" | not understood: {}", fmt::join(read.unknown, ", "));
  const int width = std::clamp(style.width, 40, 100);
  return report::cut(fmt::format("{:>6} | {}", ingredient.line->at.line, ingredient.line->text), width) +
         "\n" + wrap("         ", understood, 11, width);
}

/// What the card or the directions say beside the ingredients, with the words that it came from.
std::string understood_text(const recipe::Recipe& recipe, int width) {
  std::string out;
  for (const auto& line : report::understood_lines(recipe))
    out += report::cut(fmt::format("{:>6} | {}: {} | {}", line.at.line, line.what, line.value,
                                   text::one_line(line.words)),
                       width) +
           "\n";
  for (const auto& doubt : recipe.doubts)
    out += wrap(fmt::format("{:>6} | ", doubt.at.line),
                fmt::format("not clear: {} ({})", text::one_line(doubt.text), doubt.reason), 11, width);
  if (recipe.prose)
    for (const auto& missing : report::not_found(recipe)) out += "       | " + missing + ": not found\n";
  return out;
}

Json recipe_json(std::string_view path, int document, const reading::Reading& reading) {
  Json json{{"path", path},
            {"document", document},
            {"title", reading.recipe->title.value},
            {"matched", of(reading.match)},
            {"ingredients", Json::array()},
            {"understood", Json::array()}};
  for (const auto& ingredient : reading.ingredients) json["ingredients"].push_back(of(ingredient));
  for (const auto& line : report::understood_lines(*reading.recipe))
    json["understood"].push_back(Json{{"what", line.what},
                                      {"value", line.value},
                                      {"words", line.words},
                                      {"line", line.at.line},
                                      {"column", line.at.column}});
  if (!reading.recipe->doubts.empty()) {
    auto& doubts = json["not_clear"] = Json::array();
    for (const auto& doubt : reading.recipe->doubts)
      doubts.push_back(Json{{"words", doubt.text},
                            {"reason", doubt.reason},
                            {"line", doubt.at.line},
                            {"column", doubt.at.column}});
  }
  if (reading.recipe->prose) json["not_found"] = report::not_found(*reading.recipe);
  return json;
}

std::string recipe_text(const reading::Reading& reading, const TextStyle& style) {
  const int width = std::clamp(style.width, 40, 100);
  std::string out = wrap("  ", reading.recipe->title.value, 4, width);
  for (const auto& ingredient : reading.ingredients) out += ingredient_text(ingredient, style);
  out += understood_text(*reading.recipe, width);
  const auto& match = reading.match;
  if (match.product == nullptr) return out + "  no tested process was found for it\n";
  out += wrap(
      "  ",
      fmt::format("{} {} ({})", match.by == reading::Match::By::follows ? "says it follows" : "nearest to",
                  match.product->title, match.product->id),
      4, width);
  if (match.doubtful) out += wrap("  ", match.doubt, 4, width);
  return out;
}

}  // namespace

ReadRecipes read_recipes(const Checker& checker, std::string_view path, std::string_view text,
                         ReadFormat format, const TextStyle& style, bool all) {
  ReadRecipes out;
  const auto error = [&](int document, const yaml::Error& e) {
    out.unreadable = true;
    if (format != ReadFormat::json) {
      out.recipes.push_back(wrap(format == ReadFormat::card ? "# " : "  ",
                                 fmt::format("{}:{}: {} {}", e.at.line, e.at.column, e.message, e.suggestion),
                                 4, std::clamp(style.width, 40, 100)));
      return;
    }
    out.recipes.push_back(dumped(Json{{"path", path},
                                      {"document", document},
                                      {"title", ""},
                                      {"matched", {{"id", nullptr}}},
                                      {"ingredients", Json::array()},
                                      {"error",
                                       {{"line", e.at.line},
                                        {"column", e.at.column},
                                        {"message", e.message},
                                        {"suggestion", e.suggestion}}}}));
  };
  const auto found = knowledge::find_recipes(path, text, checker.knowledge(), {all, all});
  out.skipped = found.skipped;
  if (found.recipes.empty() && found.skipped == 0) error(1, {{1, 1}, "There is no recipe in this file.", ""});
  for (const auto& one : found.recipes) {
    if (const auto* e = std::get_if<yaml::Error>(&one.recipe)) {
      error(one.number, *e);
      continue;
    }
    const auto& recipe = std::get<recipe::Recipe>(one.recipe);
    if (format == ReadFormat::card) {
      out.recipes.push_back(recipe::write_card(recipe));
      continue;
    }
    const auto reading = reading::build(recipe, {}, checker.knowledge());
    if (format == ReadFormat::text) {
      out.recipes.push_back(recipe_text(reading, style));
      continue;
    }
    out.recipes.push_back(dumped(recipe_json(path, one.number, reading)));
  }
  return out;
}

}  // namespace sealworthy
