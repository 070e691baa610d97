#include <algorithm>
#include <cmath>
#include <utility>

#include "quantity/figure_errors.hpp"
#include "quantity/how_many.hpp"
#include "quantity/jar.hpp"
#include "quantity/lexicon.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

constexpr std::string_view advice =
    "write a jar size like \"pint\", \"half-pint\", \"12-oz\", \"quart\" or \"500 ml\", several as a list: "
    "[pint, "
    "quart]";

struct JarsAt {
  JarsText jars;
  std::size_t end = 0;
};

/// Past "about" and its like.
std::size_t skip_about(std::string_view text, std::size_t at) {
  for (;;) {
    const Letters word(text, skip_space(text, at));
    if (meaning(word).role != Role::about) return skip_space(text, at);
    at = word.end();
  }
}

/// Whether the words of a jar, up to `end`, speak of more than one: "quarts", "quart jars".
bool several(std::string_view text, const UnitMatch& unit, std::size_t end) {
  std::size_t last = unit.end;
  while (last > unit.begin && !letter_at(text, last - 1)) --last;
  if (last > unit.begin && (text[last - 1] | 0x20) == 's') return true;
  for (std::size_t at = unit.end; at < end;) {
    const auto word = next_word(text, at);
    if (word.is("jars") || word.is("bottles")) return true;
    if (word.empty()) return false;
    at = word.end();
  }
  return false;
}

/// Whether a figure right before a unit tells how many: nobody has a jar of seven quarts, but "2 quart" may
/// be the half-gallon's size.
bool tells_how_many(std::string_view text, const HowMany& many, std::size_t end) {
  if (dash_at(text, skip_space(text, many.end)) != 0) return false;
  const double number = many.number.low;
  const auto unit = unit_at(text, skip_space(text, many.end));
  if (!unit || unit->unit->kind != Kind::volume || unit->unit->metric_system) return false;
  if (unit->unit->name == "oz" || unit->unit->name == "fl oz") return false;
  if (number < 2 || number != std::round(number)) return false;
  constexpr double never_a_size = 3;
  return number >= never_a_size || unit->unit->name == "half-pint" || several(text, *unit, end);
}

/// "7 quarts", "4 12-oz jars", "6 x 500 ml".
std::optional<JarsAt> counted_jars(std::string_view text, std::size_t at, Units units) {
  const auto from = skip_about(text, at);
  auto many = how_many(text, from);
  if (!many || many->number.low < 1 || many->number.low > many->number.high) return std::nullopt;
  if (many->size && many->number.low < 2) return std::nullopt;  // "1 1/2-pint" is a size
  const auto jar = jar_at(text, many->end, units, many->size);
  if (!jar) return std::nullopt;
  auto next = skip_space(text, many->end);
  if (char_at(text, next, '(')) next = skip_space(text, next + 1);
  const bool counts = many->counts || from != skip_space(text, at) || digit_at(text, next) ||
                      tells_how_many(text, *many, jar->end);
  if (!counts) return std::nullopt;
  return JarsAt{{jar->text, Interval<Count>{count(many->number.low), count(many->number.high)}}, jar->end};
}

/// Past what stands between two sizes: "or", "and", a comma, a slash.
std::size_t past_joint(std::string_view text, std::size_t at) {
  auto next = skip_space(text, at);
  bool joined = false;
  while (next < text.size() && std::string_view(",;/+&").find(text[next]) != std::string_view::npos) {
    next = skip_space(text, next + 1);
    joined = true;
  }
  for (const std::string_view word : {"or", "and"})
    if (const auto end = phrase_at(text, next, word)) return skip_space(text, *end);
  return joined ? next : at;
}

}  // namespace

Figure<std::vector<JarsText>> read_jars(std::string_view text, Units units) {
  if (at_end(text, 0)) return FigureError{"no jar size is given", std::string(advice)};
  const auto refuse = [&](std::string_view what) { return refusal(text, what, std::string(advice)); };
  std::vector<JarsText> found;
  if (dash_at(text, skip_space(text, 0)) != 0) return refuse("is not a jar size that is known here");
  for (std::size_t at = 0;;) {
    auto jars = counted_jars(text, at, units);
    if (!jars)
      if (auto jar = jar_at(text, at, units)) jars = JarsAt{{std::move(jar->text), std::nullopt}, jar->end};
    if (!jars && found.empty()) return refuse("is not a jar size that is known here");
    if (!jars) return refuse("holds more than jar sizes: " + quoted(text.substr(at)));
    if (!sensible_jar(jars->jars.jar.volume))
      return refuse("is out of range for a canning jar: 20 ml to 20 litres is accepted");
    found.push_back(std::move(jars->jars));
    const auto end = skip_space(text, jars->end);
    if (end >= text.size()) return found;
    at = past_joint(text, jars->end);
    if (at == jars->end || at >= text.size())
      return refuse("holds more than jar sizes: " + quoted(text.substr(end)));
  }
}

}  // namespace sealworthy::quantity
