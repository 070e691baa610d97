#include "phrases/figures.hpp"

#include <algorithm>

#include "quantity/numbers.hpp"

namespace sealworthy::phrases {
namespace {

constexpr std::array units{UnitWord{"minute", Dimension::minutes, 1},
                           UnitWord{"minutes", Dimension::minutes, 1},
                           UnitWord{"min", Dimension::minutes, 1},
                           UnitWord{"mins", Dimension::minutes, 1},
                           UnitWord{"second", Dimension::minutes, 1. / 60},
                           UnitWord{"seconds", Dimension::minutes, 1. / 60},
                           UnitWord{"sec", Dimension::minutes, 1. / 60},
                           UnitWord{"hour", Dimension::minutes, 60},
                           UnitWord{"hours", Dimension::minutes, 60},
                           UnitWord{"hr", Dimension::minutes, 60},
                           UnitWord{"hrs", Dimension::minutes, 60},
                           UnitWord{"h", Dimension::minutes, 60},
                           UnitWord{"day", Dimension::minutes, 1440},
                           UnitWord{"days", Dimension::minutes, 1440},
                           UnitWord{"night", Dimension::minutes, 1440},
                           UnitWord{"nights", Dimension::minutes, 1440},
                           UnitWord{"week", Dimension::minutes, 10080},
                           UnitWord{"weeks", Dimension::minutes, 10080},
                           UnitWord{"month", Dimension::minutes, 43200},
                           UnitWord{"months", Dimension::minutes, 43200},
                           UnitWord{"year", Dimension::minutes, 525600},
                           UnitWord{"years", Dimension::minutes, 525600},
                           UnitWord{"decade", Dimension::minutes, 5256000},
                           UnitWord{"decades", Dimension::minutes, 5256000},
                           UnitWord{"\xC2\xB0", Dimension::fahrenheit, 1},
                           UnitWord{"f", Dimension::fahrenheit, 1},
                           UnitWord{"degree", Dimension::fahrenheit, 1},
                           UnitWord{"degrees", Dimension::fahrenheit, 1},
                           UnitWord{"deg", Dimension::fahrenheit, 1},
                           UnitWord{"fahrenheit", Dimension::fahrenheit, 1},
                           UnitWord{"c", Dimension::fahrenheit, 1},
                           UnitWord{"celsius", Dimension::fahrenheit, 1},
                           UnitWord{"inch", Dimension::inches, 1},
                           UnitWord{"inches", Dimension::inches, 1},
                           UnitWord{"\"", Dimension::inches, 1},
                           UnitWord{"cm", Dimension::inches, 1 / 2.54},
                           UnitWord{"centimeters", Dimension::inches, 1 / 2.54},
                           UnitWord{"mm", Dimension::inches, 1 / 25.4},
                           UnitWord{"pound", Dimension::pounds, 1},
                           UnitWord{"pounds", Dimension::pounds, 1},
                           UnitWord{"lb", Dimension::pounds, 1},
                           UnitWord{"lbs", Dimension::pounds, 1},
                           UnitWord{"psi", Dimension::pounds, 1},
                           UnitWord{"cup", Dimension::cups, 1},
                           UnitWord{"cups", Dimension::cups, 1},
                           UnitWord{"pint", Dimension::cups, 2},
                           UnitWord{"pints", Dimension::cups, 2},
                           UnitWord{"quart", Dimension::cups, 4},
                           UnitWord{"quarts", Dimension::cups, 4},
                           UnitWord{"gallon", Dimension::cups, 16},
                           UnitWord{"gallons", Dimension::cups, 16},
                           UnitWord{"tablespoon", Dimension::cups, 1. / 16},
                           UnitWord{"tablespoons", Dimension::cups, 1. / 16},
                           UnitWord{"teaspoon", Dimension::cups, 1. / 48},
                           UnitWord{"feet", Dimension::feet, 1},
                           UnitWord{"ft", Dimension::feet, 1},
                           UnitWord{"foot", Dimension::feet, 1}};

struct NumberWord {
  std::string_view word;
  double low, high;
};
constexpr std::array number_words{
    NumberWord{"a", 1, 1},           NumberWord{"an", 1, 1},        NumberWord{"half", .5, .5},
    NumberWord{"quarter", .25, .25}, NumberWord{"one", 1, 1},       NumberWord{"two", 2, 2},
    NumberWord{"three", 3, 3},       NumberWord{"four", 4, 4},      NumberWord{"five", 5, 5},
    NumberWord{"six", 6, 6},         NumberWord{"seven", 7, 7},     NumberWord{"eight", 8, 8},
    NumberWord{"nine", 9, 9},        NumberWord{"ten", 10, 10},     NumberWord{"eleven", 11, 11},
    NumberWord{"twelve", 12, 12},    NumberWord{"fifteen", 15, 15}, NumberWord{"twenty", 20, 20},
    NumberWord{"thirty", 30, 30},    NumberWord{"forty", 40, 40},   NumberWord{"fifty", 50, 50},
    NumberWord{"sixty", 60, 60},     NumberWord{"ninety", 90, 90},  NumberWord{"couple", 2, 2},
    NumberWord{"few", 2, 5},         NumberWord{"several", 3, 9},   NumberWord{"dozen", 12, 12},
    NumberWord{"hundred", 100, 100}};

class Reader {
 public:
  Reader(std::span<const Token> tokens, std::span<Figure, most_figures> out) : tokens_(tokens), out_(out) {}

  std::size_t run() {
    for (std::size_t i = 0; i < tokens_.size() && count_ < out_.size();) {
      Figure figure;
      figure.first = i;
      auto j = quantity(i, figure.low, figure.high);
      if (j == i) {
        ++i;
        continue;
      }
      j = range(j, figure);
      i = unit(j, figure) ? figure.last : j;
    }
    return count_;
  }

 private:
  [[nodiscard]] std::string_view text(std::size_t i) const {
    return i < tokens_.size() ? tokens_[i].text : std::string_view();
  }

  /// A number at i, "1 1/2" and "two and a half" in one; returns the word after it, i if there is none.
  std::size_t quantity(std::size_t i, double& low, double& high) const {
    if (i >= tokens_.size()) return i;
    if (tokens_[i].number) {
      const auto value = number(text(i));
      if (!value) return i;
      low = high = *value;
      if (i + 1 < tokens_.size() && tokens_[i + 1].number && tokens_[i + 1].before == 0) {
        const auto part = number(text(i + 1));
        if (part && *part < 1 && *value == static_cast<double>(static_cast<long>(*value))) {
          low = high = *value + *part;
          return i + 2;
        }
      }
      return i + 1;
    }
    if ((tokens_[i].grammar & (number_word | determiner)) == 0) return i;
    const auto* found = std::find_if(number_words.begin(), number_words.end(),
                                     [&](const NumberWord& n) { return n.word == text(i); });
    if (found == number_words.end()) return i;
    low = found->low;
    high = found->high;
    auto next = i + 1;
    if (text(i) == "a" || text(i) == "an") {  // "a few", "a dozen", "a half"
      double low2 = 0, high2 = 0;
      const auto more = text(next) == "a" ? next : quantity(next, low2, high2);
      if (more != next) {
        low = low2;
        high = high2;
        next = more;
      }
    }
    if (text(next) == "of") ++next;
    if ((text(i) == "half" || text(i) == "quarter") && (text(next) == "a" || text(next) == "an")) ++next;
    if (text(next) == "and" && text(next + 1) == "a" && text(next + 2) == "half") {
      low += .5;
      high += .5;
      next += 3;
    }
    return next;
  }

  /// "3 to 4", "3-4", "two or three" after the first number.
  std::size_t range(std::size_t j, Figure& figure) const {
    double low = 0, high = 0;
    const bool word_between = text(j) == "to" || text(j) == "or" || text(j) == "through";
    const auto second = word_between ? j + 1 : j;
    const bool hyphen = !word_between && j < tokens_.size() && tokens_[j].number && tokens_[j].hyphened;
    if (!word_between && !hyphen) return j;
    const auto after = quantity(second, low, high);
    if (after == second || text(second) == "a" || text(second) == "an") return j;
    figure.high = std::max(figure.high, high);
    return after;
  }

  bool unit(std::size_t j, Figure& figure) {
    while (text(j) == "more" || text(j) == "full" || text(j) == "whole" || text(j) == "extra" ||
           text(j) == "long" || text(j) == "solid")
      ++j;
    const auto* found = j < tokens_.size() && tokens_[j].before == 0 ? unit_word(text(j)) : nullptr;
    if (found == nullptr) return bare(j, figure);
    figure.dimension = found->dimension;
    figure.low *= found->size;
    figure.high *= found->size;
    if (found->dimension == Dimension::fahrenheit) {
      while (j + 1 < tokens_.size() && unit_word(text(j + 1)) != nullptr &&
             unit_word(text(j + 1))->dimension == Dimension::fahrenheit)
        ++j;
      if (text(j) == "c" || text(j) == "celsius") {
        figure.low = figure.low * 1.8 + 32;
        figure.high = figure.high * 1.8 + 32;
      }
    }
    return keep(j + 1, figure);
  }

  /// "bake at 350": a number without a unit, read as a temperature if it can be nothing else.
  bool bare(std::size_t j, Figure& figure) {
    if (figure.first == 0 || figure.low < 100 || figure.high > 600) return false;
    const auto before = text(figure.first - 1);
    if (before != "at" && before != "to" && before != "around" && before != "about") return false;
    figure.dimension = Dimension::fahrenheit;
    return keep(j, figure);
  }

  bool keep(std::size_t last, Figure& figure) {
    figure.last = last;
    out_[count_++] = figure;
    return true;
  }

  std::span<const Token> tokens_;
  std::span<Figure, most_figures> out_;
  std::size_t count_ = 0;
};

}  // namespace

std::size_t read_figures(std::span<const Token> tokens, std::span<Figure, most_figures> out) {
  return Reader(tokens, out).run();
}

const UnitWord* unit_word(std::string_view word) {
  const auto* found =
      std::find_if(units.begin(), units.end(), [&](const UnitWord& u) { return u.word == word; });
  return found == units.end() ? nullptr : found;
}

std::optional<double> number(std::string_view text) {
  const auto read = quantity::read_figure(text, 0);
  if (!read || read->end != text.size()) return std::nullopt;
  return read->value;
}

}  // namespace sealworthy::phrases
