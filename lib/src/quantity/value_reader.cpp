#include "quantity/value_reader.hpp"

#include <algorithm>
#include <cmath>

#include "quantity/figure_errors.hpp"
#include "quantity/lexicon.hpp"
#include "quantity/numbers.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

/// The place after the first of these phrases that stands at `at`.
template <std::size_t N>
std::optional<std::size_t> any_at(std::string_view text, std::size_t at,
                                  const std::array<std::string_view, N>& phrases) {
  const auto place = skip_space(text, at);
  if (!letter_at(text, place)) return std::nullopt;
  for (const auto phrase : phrases)
    if (!phrase.empty() && may_begin(text, place, phrase[0]))
      if (const auto end = phrase_at(text, place, phrase)) return end;
  return std::nullopt;
}

constexpr std::array<std::string_view, 7> below_before{"up to",        "below",   "under",     "less than",
                                                       "no more than", "at most", "lower than"};
constexpr std::array<std::string_view, 5> above_before{"above", "over", "more than", "at least",
                                                       "higher than"};
constexpr std::array<std::string_view, 5> below_after{"or less", "or below", "and below", "or lower",
                                                      "and lower"};
constexpr std::array<std::string_view, 8> above_after{"and up",  "and above", "and over", "and higher",
                                                      "or more", "or above",  "or over",  "or higher"};

std::optional<int> two_digits(std::string_view text, std::size_t from, std::size_t to) {
  int value = 0;
  if (from == to || to - from > 2) return std::nullopt;
  for (auto at = from; at < to; ++at) {
    if (!digit_at(text, at)) return std::nullopt;
    value = value * 10 + (text[at] - '0');
  }
  return value;
}

}  // namespace

FigureError ValueReader::refuse(std::string_view what) const {
  return refusal(text_, what,
                 "write " + std::string(wanted_.name) + " like " + std::string(wanted_.examples));
}

bool ValueReader::fits(Dimension dimension) const {
  return dimension == wanted_.dimension ||
         (dimension == Dimension::pounds && wanted_.dimension == Dimension::pressure);
}

std::size_t ValueReader::skip_nouns(std::size_t at) const {
  while (const auto end = any_at(text_, at, wanted_.nouns)) at = *end;
  return at;
}

std::size_t ValueReader::skip_bounds_before(std::size_t at) {
  if (const auto below = any_at(text_, at, below_before)) {
    below_ = true;
    return *below;
  }
  if (const auto above = any_at(text_, at, above_before)) {
    above_ = true;
    return *above;
  }
  static constexpr std::array<std::string_view, 3> nothing{"between", "from", "at"};
  return any_at(text_, at, nothing).value_or(at);
}

std::size_t ValueReader::skip_bounds_after(std::size_t at) {
  if (const auto above = any_at(text_, at, above_after)) {
    above_ = true;
    return *above;
  }
  if (const auto below = any_at(text_, at, below_after)) {
    below_ = true;
    return *below;
  }
  const auto next = skip_space(text_, at);
  if (!char_at(text_, next, '+')) return at;
  above_ = true;
  return next + 1;
}

const ValueUnit* ValueReader::unit_after(std::size_t at, std::size_t& end) const {
  const auto next = skip_space(text_, at);
  const auto dash = dash_at(text_, next);
  const auto* unit = value_unit_at(text_, next + dash, end);  // "1-inch"
  // in a process time "m" can only be minutes
  static constexpr ValueUnit minutes{"min", Dimension::time, unit::minute};
  if (unit != nullptr && unit->word == "m" && Letters(text_, next + dash).is("m") &&
      wanted_.dimension == Dimension::time)
    return &minutes;
  return unit;
}

/// "1:15 h". Without the "h" it may as well be minutes and seconds.
std::optional<ValueReader::Value> ValueReader::clock_at(std::size_t at) const {
  if (wanted_.dimension != Dimension::time) return std::nullopt;
  const auto colon = text_.find(':', at);
  if (colon == std::string_view::npos || colon + 3 > text_.size()) return std::nullopt;
  const auto hours = two_digits(text_, at, colon);
  const auto minutes = two_digits(text_, colon + 1, colon + 3);
  std::size_t end = 0;
  const auto* unit = unit_after(colon + 3, end);
  if (!hours || !minutes || *minutes > 59 || unit == nullptr || unit->word != "h") return std::nullopt;
  return Value{static_cast<double>(*hours), unit, *minutes * unit::minute, end};
}

std::optional<ValueReader::Value> ValueReader::term_at(std::size_t at) {
  const auto number = read_number(text_, at);
  if (!number) return std::nullopt;
  Value value;
  value.figure = number->value;
  value.end = number->end;
  if (char_at(text_, value.end, '+')) {  // "6001+ ft"
    above_ = true;
    ++value.end;
  }
  std::size_t end = 0;
  const auto* unit = unit_after(value.end, end);
  if (unit == nullptr) return value;
  if (!fits(unit->dimension)) {
    if (!strange_) strange_ = unit->dimension;
    return value;
  }
  value.unit = unit;
  value.end = end;
  return value;
}

/// "1 hr 15 min", "1 hour and 15 minutes", "1 hr 15".
void ValueReader::add_smaller_units(Value& value) {
  while (value.unit != nullptr && wanted_.dimension == Dimension::time) {
    auto next = skip_space(text_, value.end);
    if (char_at(text_, next, ',')) ++next;
    next = skip_space(text_, phrase_at(text_, next, "and").value_or(next));
    const auto smaller = term_at(next);
    if (!smaller) return;
    const bool bare_minutes = smaller->unit == nullptr && value.unit->word == "h" && value.more == 0 &&
                              smaller->figure < 60 && at_end(text_, smaller->end);
    if (!bare_minutes && (smaller->unit == nullptr || smaller->unit->factor >= value.unit->factor)) return;
    value.more += smaller->si({"min", Dimension::time, unit::minute});
    value.end = smaller->end;
  }
}

std::optional<ValueReader::Value> ValueReader::value_at(std::size_t at) {
  at = skip_space(text_, at);
  if (const auto clock = clock_at(at)) return clock;
  const auto sign = dash_at(text_, at);
  auto value = term_at(skip_space(text_, at + sign));
  if (!value) return std::nullopt;
  if (sign != 0) value->figure = -value->figure;
  add_smaller_units(*value);
  return value;
}

std::optional<FigureError> ValueReader::refuse_rest(const Value& last, std::size_t at) const {
  at = skip_space(text_, at);
  if (at >= text_.size()) return std::nullopt;
  if (phrase_at(text_, at, "or so")) return refuse("is not exact; a figure that can be compared is wanted");
  if (char_at(text_, at, ':') && wanted_.dimension == Dimension::time)
    return refuse("may be hours and minutes or minutes and seconds");
  const Letters word(text_, past_hyphen(text_, last.end));
  if (last.unit == nullptr && word.begin() == past_hyphen(text_, at) && word.end() > word.begin())
    return refuse("has a unit that is not known here, " +
                  quoted(text_.substr(word.begin(), word.end() - word.begin())) + "; known are " +
                  std::string(wanted_.units));
  return refuse("holds more than " + std::string(wanted_.name) + ": " + quoted(text_.substr(at)));
}

std::optional<FigureError> ValueReader::refuse_range(const Interval<double>& range) const {
  if (range.low > range.high) return refuse("goes from the greater figure to the less");
  const double slack = 1e-9 * std::max(std::abs(wanted_.low), std::abs(wanted_.high));
  const bool low = wanted_.above_low ? range.low <= wanted_.low : range.low < wanted_.low - slack;
  if (!low && range.high <= wanted_.high + slack) return std::nullopt;
  return refuse("is out of range for " + std::string(wanted_.name) + ": " + std::string(wanted_.accepted) +
                " is accepted");
}

std::variant<Interval<double>, FigureError> ValueReader::read() {
  if (at_end(text_, 0)) return FigureError{"no figure is given", refuse("").suggestion};
  auto at = skip_nouns(0);
  const bool between = phrase_at(text_, at, "between").has_value();
  if (meaning({text_, skip_space(text_, at)}).role == Role::about)
    return refuse("is not exact; a figure that can be compared is wanted");
  at = skip_bounds_before(at);
  const auto first = value_at(at);
  if (!first) return refuse("holds no figure where one is wanted");
  auto last = first;
  auto mark = range_mark(text_, first->end);
  if (!mark && between) mark = phrase_at(text_, first->end, "and");
  if (mark)
    if (const auto second = value_at(*mark)) last = second;
  if (strange_) return refuse("is " + std::string(name_of(*strange_)) + ", not " + std::string(wanted_.name));
  at = skip_bounds_after(skip_nouns(skip_bounds_after(last->end)));
  if (auto error = refuse_rest(*last, at)) return *std::move(error);
  if (last->unit == nullptr && wanted_.bare == 0)
    return refuse("has no unit; known are " + std::string(wanted_.units));
  const ValueUnit bare{"", wanted_.dimension, wanted_.bare};
  const auto& unsaid = last->unit != nullptr ? *last->unit : bare;
  const Interval<double> range{first->si(unsaid), last->si(unsaid)};
  if (auto error = refuse_range(range)) return *std::move(error);
  return range;
}

}  // namespace sealworthy::quantity
