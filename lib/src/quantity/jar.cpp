#include "quantity/jar.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "quantity/figure_errors.hpp"
#include "quantity/figures.hpp"
#include "quantity/lexicon.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

constexpr std::string_view advice =
    "write a jar size like \"pint\", \"half-pint\", \"12-oz\", \"quart\" or \"500 ml\"";

constexpr std::array<std::string_view, 16> words_around{
    "jar",   "jars", "canning", "preserving", "preserve", "jelly",    "jam", "glass",
    "mason", "size", "sized",   "of",         "each",     "capacity", "in",  "bottles"};

/// How a size of this unit is called: "pint", "half-pint", "12-oz", "500 ml", "1 l".
std::string name_of(double figure, const Unit& unit, Volume volume, bool imperial) {
  if (unit.metric_system) {
    const double ml = in_millilitres(volume);
    const bool litres = ml >= 999.5 && std::abs(ml / 1000 - std::round(ml / 1000)) < 1e-6;
    return litres ? grouped(ml / 1000) + " l" : kitchen_number(ml) + " ml";
  }
  if (unit.name == "fl oz") return (imperial ? "imperial " : "") + kitchen_number(figure) + "-oz";
  std::string name = kitchen_number(figure) + " " + std::string(unit.name);
  if (figure == 1) name = unit.name;
  if (unit.name == "pint" && figure == 0.25) name = "quarter-pint";
  if (unit.name == "pint" && figure == 0.5) name = "half-pint";
  if (unit.name == "pint" && figure == 1.5) name = "pint-and-a-half";
  if (unit.name == "gallon" && figure == 0.5) name = "half-gallon";
  return (imperial ? "imperial " : "") + name;
}

/// "pint-and-a-half", "pint and a half".
std::optional<std::size_t> and_a_half(std::string_view text, std::size_t at) {
  static constexpr std::array<std::string_view, 3> words{"and", "a", "half"};
  for (const auto word : words) {
    const auto next = next_word(text, at);
    if (!next.is(word)) return std::nullopt;
    at = next.end();
  }
  return at;
}

std::optional<Number> figure_of_size(std::string_view text, std::size_t at) {
  if (const auto unit = unit_at(text, at))
    return std::nullopt;  // "half-pint" is a unit, "half a pint" a figure
  auto figure = read_number(text, at);
  return figure && figure->article ? std::nullopt : figure;
}

}  // namespace

bool sensible_jar(Volume volume) { return in_millilitres(volume) >= 20 && in_millilitres(volume) <= 20000; }

std::size_t skip_jar_words(std::string_view text, std::size_t at, JarText& jar) {
  for (;;) {
    auto next = past_hyphen(text, at);
    while (char_at(text, next, ',') || char_at(text, next, '(') || char_at(text, next, ')'))
      next = past_hyphen(text, next + 1);
    const Letters word(text, next);
    if (word.empty()) return next >= text.size() ? next : at;
    if (word.is("wide") || word.is("widemouth") || word.is("regular") || word.is("narrow") ||
        word.is("standard")) {
      jar.mouth = word.is("wide") || word.is("widemouth") ? "wide" : "regular";
      const auto mouth = next_word(text, word.end());
      at = mouth.is("mouth") || mouth.is("mouthed") ? mouth.end() : word.end();
    } else if (std::find(words_around.begin(), words_around.end(), word.view()) != words_around.end()) {
      at = word.end();
    } else {
      return at;
    }
  }
}

std::optional<JarAt> jar_at(std::string_view text, std::size_t at, Units units,
                            std::optional<Number> figure) {
  JarAt jar;
  at = past_hyphen(text, skip_jar_words(text, at, jar.text));
  if (char_at(text, at, '(')) at = skip_space(text, at + 1);
  if (!figure) figure = figure_of_size(text, at);
  const auto match = unit_at(text, figure ? past_hyphen(text, figure->end) : at);
  if (!match) return std::nullopt;
  // a jar's ounces are fluid ounces
  const auto* unit = match->unit->name == "oz" ? unit_named("fl oz") : match->unit;
  if (unit->kind != Kind::volume) return std::nullopt;
  double number = figure ? figure->value : 1;
  jar.end = match->end;
  if (number == 1)
    if (const auto half = and_a_half(text, jar.end)) {
      number = 1.5;
      jar.end = *half;
    }
  // Jars sold by the pint where people cook in metric are of US sizes (common practice).
  const bool imperial = match->said.value_or(units) == Units::imperial && !unit->metric_system;
  const auto one = unit->one(imperial ? Units::imperial : Units::us);
  jar.text.volume = Volume::from_si(number * one.low);
  jar.text.metric = unit->metric_system;
  jar.text.imperial = imperial;
  jar.text.name = name_of(number, *unit, jar.text.volume, imperial);
  jar.end = skip_jar_words(text, jar.end, jar.text);
  return jar;
}

Figure<JarText> read_jar(std::string_view text, Units units) {
  if (at_end(text, 0)) return FigureError{"no jar size is given", std::string(advice)};
  const bool below_zero = dash_at(text, skip_space(text, 0)) != 0;
  const auto jar = below_zero ? std::nullopt : jar_at(text, 0, units);
  if (!jar) return refusal(text, "is not a jar size that is known here", std::string(advice));
  const auto rest = skip_space(text, jar->end);
  if (rest < text.size())
    return refusal(text, "holds more than a jar size: " + quoted(text.substr(rest)), std::string(advice));
  if (!sensible_jar(jar->text.volume))
    return refusal(text, "is out of range for a canning jar: 20 ml to 20 litres is accepted",
                   std::string(advice));
  return jar->text;
}

}  // namespace sealworthy::quantity
