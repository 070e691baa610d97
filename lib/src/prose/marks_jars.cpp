#include <optional>

#include "phrases/figures.hpp"
#include "prose/marks.hpp"
#include "quantity/jar.hpp"

namespace sealworthy::prose {
namespace {

bool measure(std::string_view word) {
  return one_of(
      word, {"pint",       "pints",       "quart", "quarts", "pt",    "pts",    "qt",         "qts",
             "gallon",     "gallons",     "ounce", "ounces", "oz",    "ml",     "millilitre", "millilitres",
             "milliliter", "milliliters", "litre", "litres", "liter", "liters", "l"});
}
bool several(std::string_view word) { return one_of(word, {"pints", "quarts", "pts", "qts"}); }

class JarFinder {
 public:
  JarFinder(const Sentence& sentence, const std::vector<bool>& taken, quantity::Units units)
      : s_(sentence), taken_(taken), units_(units) {}

  std::optional<Mark> at(std::size_t i) const {
    std::size_t unit = i;
    const bool counted = s_.tokens[i].number;
    if (counted) {
      ++unit;
    } else if (one_of(text(i), {"half", "quarter"})) {
      ++unit;
      if (text(unit) == "a") ++unit;
    } else if (!measure(text(i))) {
      return std::nullopt;
    }
    if (!measure(text(unit)) || (unit > i && s_.tokens[unit].before != 0)) return std::nullopt;
    std::size_t last = unit + 1;
    const auto size_unit = text(unit);
    const bool by_the_jar = one_of(size_unit, {"pint", "pints", "quart", "quarts", "pt", "pts", "qt", "qts"});
    const auto figure = counted ? phrases::number(text(i)) : std::nullopt;
    if (one_of(text(last), {"of"})) return std::nullopt;
    if (counted) {
      if (!figure) return std::nullopt;
      const bool part = *figure < 1 || *figure == 1.5;
      if (by_the_jar && *figure >= 1 && *figure != 1.5) {
        // "7 pint jars" are pints; "7 pints" is an amount or a yield.
        if (!jars_follow(last) && !(s_.tokens[unit].hyphened && jars_follow(last))) return std::nullopt;
        i = unit;
      } else if (!jars_follow(last) && !(part && by_the_jar && several(size_unit))) {
        return std::nullopt;
      }
    } else if (unit == i) {
      const bool alone = several(size_unit) || jars_follow(last) || ends_before(s_, i, Sense::each);
      if (!by_the_jar || !alone ||
          (i > 0 && s_.tokens[i - 1].number && !taken_[i - 1] && s_.tokens[i].before != '('))
        return std::nullopt;
    } else if (!several(size_unit) && !jars_follow(last) && !ends_before(s_, i, Sense::each)) {
      return std::nullopt;
    }
    const auto words = s_.words(i, last);
    auto size = quantity::read_jar(words, units_);
    auto* read = std::get_if<quantity::JarText>(&size);
    if (read == nullptr) return std::nullopt;
    if (is(last, Sense::jar)) ++last;
    Mark found;
    found.kind = Mark::Kind::jar;
    found.first = i;
    found.last = last;
    found.denied = s_.denied(i);
    found.jar = std::move(*read);
    return found;
  }

 private:
  std::string_view text(std::size_t i) const {
    return i < s_.tokens.size() ? s_.tokens[i].text : std::string_view();
  }
  bool is(std::size_t i, Sense sense) const { return i < s_.tokens.size() && s_.senses[i].has(sense); }
  /// "jars" at `i`, or behind other sizes: "pint or quart jars".
  bool jars_follow(std::size_t i) const {
    for (std::size_t ahead = 0; ahead < 6 && i < s_.tokens.size(); ++i, ++ahead) {
      if (is(i, Sense::jar)) return true;
      if (!measure(text(i)) && !s_.tokens[i].number &&
          !one_of(text(i), {"or", "and", "half", "canning", "mason", "jelly", "jam", "size", "sized",
                            "preserving", "glass", "wide", "regular", "mouth", "hot", "clean", "sterilized"}))
        return false;
      if (i > 0 && ahead > 0 && s_.tokens[i].before != 0 && s_.tokens[i].before != ',') return false;
    }
    return false;
  }

  const Sentence& s_;
  const std::vector<bool>& taken_;
  quantity::Units units_;
};

}  // namespace

std::optional<Mark> jar_at(const Sentence& sentence, std::size_t i, const std::vector<bool>& taken,
                           quantity::Units units) {
  return JarFinder(sentence, taken, units).at(i);
}

}  // namespace sealworthy::prose
