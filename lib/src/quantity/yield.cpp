#include <array>
#include <utility>

#include "quantity/amount.hpp"
#include "quantity/figure_errors.hpp"
#include "quantity/jar.hpp"
#include "quantity/lexicon.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

constexpr std::string_view advice =
    "write how many of which jar, like \"7 quart jars\", \"about 9 pints\" or \"6 half-pints\"";

struct HowMany {
  Interval<double> number;
  std::size_t end = 0;
  /// Of "4 1/2-pint jars": the size that stands in the figure's fraction.
  std::optional<Number> size;
};

std::size_t skip_leads(std::string_view text, std::size_t at) {
  for (;;) {
    const Letters word(text, skip_space(text, at));
    const bool lead = word.is("makes") || word.is("make") || word.is("yields") || word.is("yield");
    if (!lead && meaning(word).role != Role::about) return skip_space(text, at);
    at = char_at(text, word.end(), '.') || char_at(text, word.end(), ':') ? word.end() + 1 : word.end();
  }
}

std::size_t past_times(std::string_view text, std::size_t at) {
  const auto next = skip_space(text, at);
  if (const auto end = phrase_at(text, next, "x")) return *end;
  return starts_at(text, next, "\xC3\x97") ? next + 2 : at;
}

std::optional<HowMany> how_many(std::string_view text, std::size_t at) {
  const auto first = read_number(text, at);
  if (!first) return std::nullopt;
  HowMany found{{first->value, first->value}, first->end, std::nullopt};
  const auto mark = range_mark(text, first->end);
  if (const auto second = mark ? read_number(text, *mark) : std::nullopt; second && !second->article) {
    found.number.high = second->value;
    found.end = second->end;
  } else if (first->fraction_at != 0 && dash_at(text, first->end) != 0) {
    // "4 1/2-pint jars" are four jars of half a pint; "4 1/2 pints" is four pints and a half
    found.number = Interval<double>::exactly(first->whole_part);
    found.end = first->fraction_at;
    found.size = read_figure(text, first->fraction_at);
    return found;
  }
  if (const auto dozen = phrase_at(text, found.end, "dozen")) {
    found.number = found.number * 12;
    found.end = *dozen;
  }
  found.end = past_times(text, found.end);
  return found;
}

}  // namespace

Figure<Yield> read_yield(std::string_view text, Units units) {
  const auto refuse = [&](std::string_view what) { return refusal(text, what, std::string(advice)); };
  if (at_end(text, 0)) return FigureError{"no yield is given", std::string(advice)};
  const auto many = how_many(text, skip_leads(text, 0));
  if (!many) return refuse("does not say how many jars");
  Yield yield;
  auto end = many->end;
  if (const auto jar = jar_at(text, end, units, many->size)) {
    yield.jar = jar->text;
    end = jar->end;
  } else {
    JarText unsaid;
    end = skip_jar_words(text, end, unsaid);
  }
  if (const auto rest = skip_space(text, end); rest < text.size())
    return refuse("holds more than a number of jars: " + quoted(text.substr(rest)));
  if (many->number.low > many->number.high) return refuse("goes from the greater figure to the less");
  if (many->number.low <= 0 || many->number.high > 10000)
    return refuse("is out of range: anything above 0 and up to 10,000 jars is accepted");
  if (yield.jar && !sensible_jar(yield.jar->volume))
    return refuse("is out of range for a canning jar: 20 ml to 20 litres is accepted");
  yield.count = {count(many->number.low), count(many->number.high)};
  return yield;
}

}  // namespace sealworthy::quantity
