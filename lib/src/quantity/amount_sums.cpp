#include <algorithm>

#include "quantity/amount_reader.hpp"
#include "quantity/lexicon.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {

/// An amount of the same dimension, counted in the unit of this one.
Interval<double> AmountReader::in_first_unit(const Measured& other) const {
  const auto mine = unit_->one(unit_units_);
  const auto theirs = other.unit->one(other.units);
  return {other.value.low * theirs.low / mine.low, other.value.high * theirs.high / mine.high};
}

/// "1 cup to 2 cups", "250g-300g", "2 tablespoons to 1/4 cup".
void AmountReader::read_second_half_of_range() {
  if (unit_ == nullptr || !unit_->measures() || !out_.stated.exact()) return;
  const auto mark = range_mark(text_, end_);
  if (!mark) return;
  const auto other = measured_at(text_, *mark, units_);
  if (!other || other->unit->kind != unit_->kind) return;
  // "8 oz or 225 g" is one amount said twice
  const bool said_or = phrase_at(text_, end_, "or").has_value();
  if (said_or ? other->unit != unit_ : other->unit->metric_system != unit_->metric_system) return;
  const double bound = in_first_unit(*other).high;
  out_.stated = {std::min(out_.stated.low, bound), std::max(out_.stated.high, bound)};
  end_ = other->end;
}

/// "2 lb. + 4 oz", "1 cup plus 2 tablespoons", "1 lb 4 oz", "1 cup minus 1 tablespoon".
void AmountReader::read_sums() {
  while (unit_ != nullptr && unit_->measures()) {
    auto at = skip_space(text_, end_);
    if (char_at(text_, at, ',')) at = skip_space(text_, at + 1);
    const Letters word(text_, at);
    const bool less = word.is("minus") || word.is("less");
    const bool sign = char_at(text_, at, '+') || char_at(text_, at, '&');
    const bool joined = less || sign || word.is("plus") || word.is("and");
    if (joined) at = skip_space(text_, sign ? at + 1 : word.end());
    const auto other = measured_at(text_, at, units_);
    if (!other || other->unit->kind != unit_->kind) return;
    // a metric cook's gallon is US or imperial: the greater it is, the less of it is a teaspoon
    const auto part = in_first_unit(*other);
    const Interval<double> more{std::min(part.low, part.high), std::max(part.low, part.high)};
    const bool smaller =
        other->unit->metric_system == unit_->metric_system && other->unit != unit_ && more.high < 1;
    if (!joined && !smaller) return;
    if (less && more.high >= out_.stated.low) return;
    out_.stated = less ? Interval<double>{out_.stated.low - more.high, out_.stated.high - more.low}
                       : out_.stated + more;
    end_ = other->end;
  }
}

/// Web pages double amounts: "4 lb 4lb(1.8 kg)", "2 2oniononions".
void AmountReader::skip_repeats() {
  const auto at = skip_space(text_, end_);
  const auto again = digit_at(text_, at) ? read_figure(text_, at) : std::nullopt;
  if (!again || again->value != out_.stated.low) return;
  const bool glued = letter_at(text_, again->end);
  if (unit_ == nullptr) {
    if (glued) end_ = again->end;
    return;
  }
  const auto match = unit_at(text_, past_hyphen(text_, again->end), glued);
  if (match && match->unit == unit_) end_ = match->end;
}

}  // namespace sealworthy::quantity
