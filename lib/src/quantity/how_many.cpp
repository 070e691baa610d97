#include "quantity/how_many.hpp"

#include "quantity/figures.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

std::size_t past_times(std::string_view text, std::size_t at) {
  const auto next = skip_space(text, at);
  if (const auto end = phrase_at(text, next, "x")) return *end;
  return starts_at(text, next, "\xC3\x97") ? next + 2 : at;
}

}  // namespace

std::optional<HowMany> how_many(std::string_view text, std::size_t at) {
  const auto first = read_number(text, at);
  if (!first) return std::nullopt;
  HowMany found{{first->value, first->value}, first->end, std::nullopt};
  const auto mark = range_mark(text, first->end);
  if (const auto second = mark ? read_number(text, *mark) : std::nullopt; second && !second->article) {
    found.number.high = second->value;
    found.end = second->end;
    found.counts = true;
  } else if (first->fraction_at != 0 && dash_at(text, first->end) != 0) {
    // "4 1/2-pint jars" are four jars of half a pint; "4 1/2 pints" is four pints and a half
    found.number = Interval<double>::exactly(first->whole_part);
    found.end = first->fraction_at;
    found.size = read_figure(text, first->fraction_at);
    found.counts = true;
    return found;
  }
  if (const auto dozen = phrase_at(text, found.end, "dozen")) {
    found.number = found.number * 12;
    found.end = *dozen;
    found.counts = true;
  }
  const auto times = past_times(text, found.end);
  found.counts = found.counts || times != found.end;
  found.end = times;
  return found;
}

}  // namespace sealworthy::quantity
