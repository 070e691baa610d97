#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "quantity/amount.hpp"
#include "quantity/figures.hpp"
#include "quantity/numbers.hpp"
#include "quantity/unit_table.hpp"

namespace sealworthy::quantity {
namespace {

constexpr std::string_view jar_advice =
    "write a jar size like \"pint\", \"half-pint\", \"12-oz\", \"quart\" or \"500 ml\"";

bool is(std::string_view text, std::size_t at, char c) { return at < text.size() && text[at] == c; }

std::size_t unit_place(std::string_view text, std::size_t at) {
  auto next = skip_space(text, at);
  if (const auto dash = dash_at(text, next)) next = skip_space(text, next + dash);
  return next;
}

struct Jar {
  JarText text;
  std::size_t end = 0;
  bool said_jar = false;
};

/// Words around a size that don't change it.
constexpr std::array<std::string_view, 13> noise{"jar", "jars",  "canning", "preserving", "jelly",
                                                 "jam", "glass", "mason",   "size",       "sized",
                                                 "of",  "each",  "bottles"};

/// Past noise and mouth words; notes the mouth.
std::size_t skip_words(std::string_view text, std::size_t at, Jar& jar) {
  for (;;) {
    auto next = unit_place(text, at);
    if (is(text, next, ',') || is(text, next, '(') || is(text, next, ')')) next = skip_space(text, next + 1);
    const Letters word(text, next);
    if (word.empty()) return next > at && next >= text.size() ? next : at;
    if (word.is("wide") || word.is("regular") || word.is("narrow") || word.is("standard")) {
      jar.text.mouth = word.is("wide") ? "wide" : "regular";
      const Letters mouth(text, unit_place(text, word.end()));
      at = mouth.is("mouth") || mouth.is("mouthed") ? mouth.end() : word.end();
      continue;
    }
    if (word.is("widemouth")) {
      jar.text.mouth = "wide";
      at = word.end();
      continue;
    }
    if (std::find(noise.begin(), noise.end(), word.view()) == noise.end()) return at;
    if (word.is("jar") || word.is("jars")) jar.said_jar = true;
    at = word.end();
  }
}

/// How a size of this unit is called: "pint", "half-pint", "12-oz", "500 ml".
std::string name_of(double figure, const Unit& unit) {
  if (unit.name == "fl oz" || unit.name == "oz") return kitchen_number(figure) + "-oz";
  if (unit.metric_system) return kitchen_number(figure) + " " + std::string(unit.name);
  if (figure == 1) return std::string(unit.name);
  if (unit.name == "pint") {
    if (figure == 0.25) return "quarter-pint";
    if (figure == 0.5) return "half-pint";
    if (figure == 1.5) return "pint-and-a-half";
  }
  if (unit.name == "gallon" && figure == 0.5) return "half-gallon";
  return kitchen_number(figure) + " " + std::string(unit.name);
}

/// "and a half" behind a unit: "pint-and-a-half", "pint and a half".
std::optional<std::size_t> and_a_half(std::string_view text, std::size_t at) {
  for (const std::string_view word : {"and", "a", "half"}) {
    const Letters next(text, unit_place(text, at));
    if (!next.is(word)) return std::nullopt;
    at = next.end();
  }
  return at;
}

/// The jar size at `at`. `figure`: the number before its unit if it was read already.
std::optional<Jar> jar_at(std::string_view text, std::size_t at, Units units, std::optional<Number> figure) {
  Jar jar;
  at = skip_words(text, at, jar);
  at = unit_place(text, at);
  if (is(text, at, '(')) at = skip_space(text, at + 1);
  auto unit_from = at;
  double number = 1;
  auto match = unit_at(text, at);
  if (!figure && (!match || !(match->unit->kind == Kind::volume || match->unit->kind == Kind::mass))) {
    const Letters quarter(text, at);
    figure = read_number(text, at);
    if (!figure) return std::nullopt;
    if (figure->in_words && (quarter.is("a") || quarter.is("an"))) return std::nullopt;
  }
  if (figure) {
    number = figure->value;
    unit_from = unit_place(text, figure->end);
    match = unit_at(text, unit_from);
  }
  if (!match) return std::nullopt;
  const auto* unit = match->unit;
  const bool ounces = unit->name == "oz";
  if (ounces) unit = unit_named("fl oz");
  if (unit->kind != Kind::volume) return std::nullopt;
  jar.end = match->end;
  if (number == 1 && unit->name == "pint")
    if (const auto half = and_a_half(text, jar.end)) {
      number = 1.5;
      jar.end = *half;
    }
  const auto said = match->said.value_or(units);
  jar.text.metric = unit->metric_system;
  jar.text.imperial = said == Units::imperial && !unit->metric_system;
  // Jars sold by the pint where people cook in metric are US-sized (common practice).
  const auto kitchen = said == Units::imperial ? Units::imperial : Units::us;
  jar.text.volume = Volume::from_si(number * unit->one(kitchen).high);
  jar.text.name = name_of(number, *unit);
  if (match->said == Units::imperial) jar.text.name = "imperial " + jar.text.name;
  jar.end = skip_words(text, jar.end, jar);
  return jar;
}

FigureError jar_error(std::string_view text, std::string_view what) {
  return {"\"" + std::string(text) + "\" " + std::string(what), std::string(jar_advice)};
}

bool sensible(Volume volume) { return in_millilitres(volume) >= 20 && in_millilitres(volume) <= 20000; }

}  // namespace

Figure<JarText> read_jar(std::string_view text, Units units) {
  if (skip_space(text, 0) >= text.size()) return FigureError{"no jar size is given", std::string(jar_advice)};
  const auto jar = jar_at(text, 0, units, std::nullopt);
  if (!jar) return jar_error(text, "is not a jar size that is known");
  if (skip_space(text, jar->end) < text.size())
    return jar_error(
        text, "holds more than a jar size: \"" + std::string(text.substr(skip_space(text, jar->end))) + "\"");
  if (!sensible(jar->text.volume))
    return jar_error(text, "can't be right for a canning jar: sizes from 20 ml to 20 litres are read");
  return jar->text;
}

Figure<Yield> read_yield(std::string_view text, Units units) {
  static constexpr std::string_view advice =
      "write how many of which jar, like \"7 quart jars\", \"about 9 pints\" or \"6 half-pints\"";
  const auto refuse = [&](std::string_view what) {
    return FigureError{"\"" + std::string(text) + "\" " + std::string(what), std::string(advice)};
  };
  auto at = skip_space(text, 0);
  if (at >= text.size()) return FigureError{"no yield is given", std::string(advice)};
  for (bool more = true; more;) {
    more = false;
    const Letters word(text, at);
    for (const std::string_view lead :
         {"makes", "yields", "yield", "about", "approximately", "approx", "around", "roughly"})
      if (word.is(lead)) {
        at = skip_space(text, is(text, word.end(), '.') ? word.end() + 1 : word.end());
        more = true;
      }
  }
  const auto first = read_number(text, at);
  if (!first) return refuse("does not say how many jars");
  Interval<double> number{first->value, first->value};
  auto end = first->end;
  Yield yield;
  std::optional<Jar> jar;
  if (const auto mark = range_mark(text, end, true); mark && read_number(text, *mark)) {
    const auto second = read_number(text, *mark);
    number.high = second->value;
    end = second->end;
  }
  const Letters dozen(text, skip_space(text, end));
  if (dozen.is("dozen")) {
    number = number * 12;
    end = dozen.end();
  }
  if (const Letters times(text, skip_space(text, end)); times.is("x")) end = times.end();
  if (text.substr(std::min(skip_space(text, end), text.size())).starts_with("\xC3\x97"))
    end = skip_space(text, end) + 2;
  // "4 1/2-pint jars" are four jars of half a pint; "4 1/2 pints" is four pints and a half
  const bool hyphen = dash_at(text, end) != 0;
  if (first->fraction_at != 0 && number.exact() && hyphen) {
    number = Interval<double>::exactly(first->whole_part);
    jar = jar_at(text, first->fraction_at, units, read_figure(text, first->fraction_at));
  } else {
    jar = jar_at(text, end, units, std::nullopt);
  }
  if (jar) {
    end = jar->end;
    yield.jar = jar->text;
  } else {
    Jar words;
    end = skip_words(text, end, words);
  }
  if (skip_space(text, end) < text.size())
    return refuse("holds more than a number of jars: \"" + std::string(text.substr(skip_space(text, end))) +
                  "\"");
  if (number.low > number.high) return refuse("goes from the greater figure to the less");
  if (number.low <= 0 || number.high > 10000) return refuse("can't be right: 1 to 10,000 jars are read");
  if (yield.jar && !sensible(yield.jar->volume))
    return refuse("can't be right for a canning jar: sizes from 20 ml to 20 litres are read");
  yield.count = {count(number.low), count(number.high)};
  return yield;
}

}  // namespace sealworthy::quantity
