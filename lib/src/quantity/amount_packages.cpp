#include <array>
#include <utility>

#include "quantity/amount_reader.hpp"
#include "quantity/lexicon.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

struct Inexact {
  bool about = false;
  std::size_t at = 0;
};

/// Past "about" and "each" in front of a size.
Inexact skip_about(std::string_view text, std::size_t at) {
  Inexact found{false, skip_space(text, at)};
  for (;;) {
    const Letters word(text, found.at);
    const bool about = meaning(word).role == Role::about;
    if (!about && !word.is("each")) return found;
    found.about = found.about || about;
    found.at = skip_space(text, char_at(text, word.end(), '.') ? word.end() + 1 : word.end());
  }
}

/// Past "each" or "ea." behind a size; nullopt where it is not said.
std::optional<std::size_t> past_each(std::string_view text, std::size_t at) {
  static constexpr std::array<std::string_view, 3> words{"each", "ea", "apiece"};
  for (const auto word : words)
    if (const auto end = phrase_at(text, at, word)) return char_at(text, *end, '.') ? *end + 1 : *end;
  return std::nullopt;
}

/// Past the unit of a length; nullopt where none stands. "in" is one only behind a hyphen.
std::optional<std::size_t> length_unit(std::string_view text, std::size_t at) {
  const auto place = past_hyphen(text, at);
  if (const auto mark = inch_mark_at(text, place)) return place + mark;
  if (!may_begin(text, place, 'i') && !may_begin(text, place, 'c') && !may_begin(text, place, 'm'))
    return std::nullopt;
  const Letters word(text, place);
  const bool hyphened = place > at && dash_at(text, skip_space(text, at)) != 0;
  static constexpr std::array<std::string_view, 8> units{"inch", "inches",     "cm",         "mm",
                                                         "ins",  "centimeter", "centimetre", "millimeter"};
  bool known = word.is("in") && hyphened;
  for (const auto unit : units) known = known || word.is(unit);
  if (!known) return std::nullopt;
  return char_at(text, word.end(), '.') ? word.end() + 1 : word.end();
}

/// Past a length and what goes with it: "8-inch-long", "1-inch/2.5cm".
std::optional<std::size_t> past_length(std::string_view text, std::size_t at) {
  const auto figure = read_figure(text, at);
  if (!figure) return std::nullopt;
  auto end = length_unit(text, figure->end);
  if (!end) return std::nullopt;
  if (const auto slash = skip_space(text, *end); char_at(text, slash, '/'))
    if (const auto other = read_figure(text, skip_space(text, slash + 1)))
      if (const auto other_end = length_unit(text, other->end)) end = other_end;
  const auto way = next_word(text, *end);
  return way.is("long") || way.is("thick") || way.is("wide") ? way.end() : *end;
}

/// Past the number of a trade can: "#10", "No. 2".
std::optional<std::size_t> past_can_number(std::string_view text, std::size_t at) {
  auto figure_at = at;
  if (char_at(text, at, '#')) {
    figure_at = at + 1;
  } else if (const auto no = phrase_at(text, at, "no"); no && char_at(text, *no, '.')) {
    figure_at = skip_space(text, *no + 1);
  } else {
    return std::nullopt;
  }
  const auto figure = read_figure(text, figure_at);
  return figure ? std::optional(figure->end) : std::nullopt;
}

std::size_t past_times(std::string_view text, std::size_t at) {
  at = skip_space(text, at);
  if (phrase_at(text, at, "x")) return skip_space(text, at + 1);
  return starts_at(text, at, "\xC3\x97") ? skip_space(text, at + 2) : at;
}

}  // namespace

void AmountReader::take_size(const Measured& size) {
  out_.size.assign(size.figure).append(" ").append(size.unit->name);
  out_.each = size.measure();
}

/// "2½-inch piece of ginger", "3 inches stick cinnamon": one piece of that length.
bool AmountReader::read_dimension(const Range& range) {
  if (range.second_at != 0) return false;
  const auto end = length_unit(text_, range.end);
  if (!end) return false;
  out_.stated = {1, 1};
  end_ = *end;
  read_unit(*end, true);
  return true;
}

/// "1-28 oz can", "2 - 6 oz cans": a count and a size joined by a dash. Told from a range by the package that
/// follows: several of them, or figures that make no range (turned, or four times apart and more).
std::optional<Range> AmountReader::split_package(const Range& range) const {
  if (range.second_at == 0 || !range.whole || dash_at(text_, skip_space(text_, range.first_end)) == 0)
    return std::nullopt;
  const auto size = measured_at(text_, range.second_at, units_);
  if (!size) return std::nullopt;
  const auto behind = unit_at(text_, past_hyphen(text_, skip_equal_sizes(text_, size->end, units_)));
  if (!behind || behind->unit->kind != Kind::package) return std::nullopt;
  const auto last = behind->end - (char_at(text_, behind->end - 1, '.') ? 2 : 1);
  const bool several = char_at(text_, last, 's');
  if (!several && !range.turned && range.value.high < 4 * range.value.low) return std::nullopt;
  Range count = range;
  count.value = Interval<double>::exactly(range.turned ? range.value.high : range.value.low);
  count.end = range.second_at;
  count.second_at = 0;
  return count;
}

/// "1 28-oz can", "2 (14.5 oz) cans", "2 x 400g tins", "four 6-ounce fillets", "2 8-inch-long eggplants", "1
/// #10 can".
bool AmountReader::read_package_before(const Range& range) {
  auto at = past_times(text_, range.end);
  if (letter_at(text_, at) && at == skip_space(text_, range.end)) {
    // the usual case: a unit or a name follows at once
    const auto role = meaning({text_, at}).role;
    const bool figure =
        role == Role::number || (role == Role::fraction && !unit_at(text_, at));  // "2 half-pints"
    if (!figure && !phrase_at(text_, at, "no")) return false;
  }
  if (const auto number_end = past_can_number(text_, at)) {
    if (!read_unit(*number_end, true)) return false;
    out_.size.assign(text_.substr(at, *number_end - at));
    return true;
  }
  const bool bracket = char_at(text_, at, '(') || char_at(text_, at, '[');
  const auto inexact = bracket ? skip_about(text_, at + 1) : Inexact{false, at};
  const auto size = measured_at(text_, inexact.at, units_);
  const auto size_end =
      size ? std::optional(skip_equal_sizes(text_, size->end, units_)) : past_length(text_, inexact.at);
  if (!size_end) return false;
  auto behind = *size_end;
  if (bracket) {
    const bool each = past_each(text_, behind).has_value();
    const auto close = past_bracket(text_, behind);
    if (!close) return false;
    behind = *close;
    while (char_at(text_, behind, ')') || char_at(text_, behind, ']')) ++behind;
    const auto unit = unit_at(text_, past_hyphen(text_, behind));
    if (unit && unit->unit->measures()) return read_unit(behind, false);          // "1/2 (2 mL) teaspoon"
    if (inexact.about && !each && !(unit && unit->unit->counts())) return false;  // "6 (about 2 lb) tomatoes"
  }
  end_ = behind;
  read_unit(behind, true);
  if (size) take_size(*size);
  return true;
}

/// "cans (28 oz each)", "can (28 oz)", "box - 1 3/4 oz", "4 slices (2 oz each)".
void AmountReader::read_package_after() {
  if (unit_ == nullptr || !unit_->counts()) return;
  const auto mark = skip_space(text_, end_);
  const bool bracket = char_at(text_, mark, '(') || char_at(text_, mark, '[');
  const bool comma = char_at(text_, mark, ',');
  const auto dash = dash_at(text_, mark);
  if (!bracket && !comma && dash == 0) return;
  const auto size = measured_at(text_, skip_about(text_, mark + (dash != 0 ? dash : 1)).at, units_);
  if (!size) return;
  auto end = std::optional(skip_equal_sizes(text_, size->end, units_));
  const auto each = past_each(text_, *end);
  if (!each && (comma || unit_->kind == Kind::piece)) return;
  if (each) end = each;
  if (bracket) end = past_bracket(text_, *end);
  if (!end) return;
  if (out_.each.index() == 0) take_size(*size);
  end_ = *end;
}

/// "4 cans tomato paste (12 oz each)", "6 catfish fillets (6 to 8 ounces each)": behind the name, so not a
/// part of the amount's bytes.
void AmountReader::read_each_behind() {
  if (out_.each.index() != 0 || (unit_ != nullptr && !unit_->counts())) return;
  constexpr std::size_t near = 80;
  const auto bracket = text_.substr(0, std::min(text_.size(), end_ + near)).find('(', end_);
  if (bracket == std::string_view::npos) return;
  const auto size = measured_at(text_, skip_about(text_, bracket + 1).at, units_);
  if (size && past_each(text_, skip_equal_sizes(text_, size->end, units_))) out_.each = size->measure();
}

/// "16-ounce package split peas", "2 quart jars": the amount is the weight or volume; the vessel is not a
/// food.
void AmountReader::skip_container() {
  if (unit_ == nullptr || !unit_->measures()) return;
  const auto match = unit_at(text_, past_hyphen(text_, skip_equal_sizes(text_, end_, units_)));
  if (match && match->unit->kind == Kind::package) end_ = match->end;
}

}  // namespace sealworthy::quantity
