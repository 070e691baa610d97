#include "quantity/amount_reader.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "quantity/lexicon.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

/// "a little salt" is not one of something.
constexpr std::array<std::string_view, 14> not_one_of{"little",   "few",   "bit",        "lot",    "some",
                                                      "sprinkle", "touch", "sprinkling", "mix",    "day",
                                                      "mixture",  "total", "variety",    "drizzle"};

template <class T>
Interval<T> interval_of(const Interval<double>& si) {
  return {T::from_si(si.low), T::from_si(si.high)};
}

Amount::Measure measure_of(Kind kind, const Interval<double>& si) {
  switch (kind) {
    case Kind::mass:
      return interval_of<Mass>(si);
    case Kind::volume:
      return interval_of<Volume>(si);
    case Kind::piece:
    case Kind::package:
    case Kind::dozen:
      return interval_of<Count>(si);
    case Kind::imprecise:
      break;
  }
  return {};
}

}  // namespace

Interval<double> Measured::si() const {
  const auto one = unit->one(units);
  return {value.low * one.low, value.high * one.high};
}

Amount::Measure Measured::measure() const { return measure_of(unit->kind, si()); }

std::optional<Range> range_at(std::string_view text, std::size_t at, bool between) {
  const auto first = read_number(text, at);
  if (!first) return std::nullopt;
  Range range;
  range.value = {first->value, first->value};
  range.end = range.first_end = first->end;
  range.whole = first->whole;
  range.article = first->article;
  if (range.article) return range;
  auto mark = range_mark(text, first->end);
  if (!mark && between)
    if (const auto both = phrase_at(text, first->end, "and")) mark = skip_space(text, *both);
  const auto second = mark ? read_number(text, *mark) : std::nullopt;
  if (!second || second->article) return range;
  range.value = {std::min(first->value, second->value), std::max(first->value, second->value)};
  range.turned = first->value > second->value;
  range.second_at = *mark;
  range.end = second->end;
  return range;
}

std::optional<Measured> measured_at(std::string_view text, std::size_t at, Units units) {
  const auto range = range_at(text, at);
  if (!range || range->article) return std::nullopt;
  const auto match = unit_at(text, past_hyphen(text, range->end), letter_at(text, range->end));
  if (!match || !match->unit->measures()) return std::nullopt;
  return Measured{range->value, text.substr(at, range->end - at), match->unit, match->said.value_or(units),
                  match->end};
}

std::size_t skip_equal_sizes(std::string_view text, std::size_t at, Units units) {
  for (int i = 0; i < 3; ++i) {
    const auto next = skip_space(text, at);
    const bool bracket = char_at(text, next, '(') || char_at(text, next, '[');
    const bool inside = bracket || char_at(text, next, '/');
    const auto other = measured_at(text, inside ? skip_space(text, next + 1) : next, units);
    if (!other) return at;
    const auto close = bracket ? past_bracket(text, other->end) : other->end;
    if (!close) return at;
    at = *close;
  }
  return at;
}

std::optional<std::size_t> past_bracket(std::string_view text, std::size_t at) {
  constexpr std::size_t near = 80;
  const auto close = text.substr(0, std::min(text.size(), at + near)).find_first_of(")]", at);
  if (close == std::string_view::npos) return std::nullopt;
  return close + 1;
}

/// "5% vinegar", "100 percent juice": a strength, no amount.
bool is_percent(std::string_view text, std::size_t at) {
  const auto next = skip_space(text, at);
  return char_at(text, next, '%') || phrase_at(text, next, "percent") || phrase_at(text, next, "per cent");
}

/// "5-spice powder", "3-bean salad": a figure of the name. "2-onions" is a slip of the keyboard for "2
/// onions".
bool AmountReader::is_part_of_name(const Range& range) const {
  const auto dash = dash_at(text_, range.end);
  if (dash == 0 || unit_ != nullptr || end_ != range.end || range.value.low < 2) return false;
  const Letters word(text_, range.end + dash);
  return word.end() > word.begin() && text_[word.end() - 1] != 's' && out_.noun_end == 0;
}

std::optional<Amount> AmountReader::read(std::size_t at) {
  out_.begin = at;
  at = read_leads(at);
  if (read_without_figure(at)) {
    finish();
    return std::move(out_);
  }
  auto range = range_at(text_, at, between_);
  if (!range || range->value.high <= 0 || is_percent(text_, range->end)) return std::nullopt;
  if (const auto count = split_package(*range)) range = count;
  out_.stated = range->value;
  end_ = range->end;
  // the usual case first: the next word is a unit
  const bool unit_next = meaning(next_word(text_, range->end)).role == Role::unit;
  if (unit_next || (!read_dimension(*range) && !read_package_before(*range))) read_unit(range->end, false);
  if (unit_ == nullptr && end_ == range->end && range->article) {
    const Letters next(text_, skip_space(text_, range->end));
    if (next.empty() || std::find(not_one_of.begin(), not_one_of.end(), next.view()) != not_one_of.end())
      return std::nullopt;
  }
  read_what_follows();
  if (is_part_of_name(*range)) return std::nullopt;
  finish();
  return std::move(out_);
}

/// Most lines go on with the name: then nothing here is tried.
void AmountReader::read_what_follows() {
  const auto at = skip_space(text_, end_);
  if (letter_at(text_, at)) {
    const auto role = meaning({text_, at}).role;
    const bool goes_on = role == Role::joint || role == Role::unit || role == Role::number ||
                         role == Role::fraction || role == Role::lead;
    if (!goes_on) {
      read_noun_behind();
      read_each_behind();
      return;
    }
  }
  read_package_after();
  read_second_half_of_range();
  read_sums();
  skip_repeats();
  skip_container();
  read_noun_behind();
  read_each_behind();
  read_trailing_words();
}

void AmountReader::finish() {
  if (out_.at_most) out_.stated.low = 0;
  if (unit_ != nullptr) out_.unit = unit_->name;
  out_.end = end_;
  if (!out_.stated_any()) return;
  const auto one = unit_ == nullptr ? Interval<double>{1, 1} : unit_->one(unit_units_);
  const auto kind = unit_ == nullptr ? Kind::piece : unit_->kind;
  out_.measure = measure_of(kind, {out_.stated.low * one.low, out_.stated.high * one.high});
}

}  // namespace sealworthy::quantity
