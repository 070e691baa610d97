#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "quantity/amount.hpp"
#include "quantity/figures.hpp"
#include "quantity/numbers.hpp"

// The figures of a card: pressure, time, altitude, headspace, piece size, temperature. One grammar reads them
// all: [words] value [range mark value] [words], a value being figures with units, the greater unit first
// ("1 hr 15 min"). Each reader brings what is its own as data.

namespace sealworthy::quantity {
namespace {

enum class Dimension { pressure, time, length, temperature, weight, volume, number };

struct ValueUnit {
  std::string_view word;
  Dimension dimension;
  double factor;
  double offset = 0;  ///< added before the factor; temperatures only
};

constexpr double second = 1;
constexpr double metre = 1;
constexpr double pascal = 1;
constexpr double kelvin = 1;

constexpr std::array value_units{
    ValueUnit{"psi", Dimension::pressure, unit::psi},
    ValueUnit{"psig", Dimension::pressure, unit::psi},
    ValueUnit{"kpa", Dimension::pressure, 1000 * pascal},
    ValueUnit{"bar", Dimension::pressure, 1e5 * pascal},
    ValueUnit{"bars", Dimension::pressure, 1e5 * pascal},
    ValueUnit{"mbar", Dimension::pressure, 100 * pascal},
    ValueUnit{"kilopascal", Dimension::pressure, 1000 * pascal},
    ValueUnit{"kilopascals", Dimension::pressure, 1000 * pascal},
    ValueUnit{"min", Dimension::time, unit::minute},
    ValueUnit{"mins", Dimension::time, unit::minute},
    ValueUnit{"minute", Dimension::time, unit::minute},
    ValueUnit{"minutes", Dimension::time, unit::minute},
    ValueUnit{"h", Dimension::time, 60 * unit::minute},
    ValueUnit{"hr", Dimension::time, 60 * unit::minute},
    ValueUnit{"hrs", Dimension::time, 60 * unit::minute},
    ValueUnit{"hour", Dimension::time, 60 * unit::minute},
    ValueUnit{"hours", Dimension::time, 60 * unit::minute},
    ValueUnit{"s", Dimension::time, second},
    ValueUnit{"sec", Dimension::time, second},
    ValueUnit{"secs", Dimension::time, second},
    ValueUnit{"second", Dimension::time, second},
    ValueUnit{"seconds", Dimension::time, second},
    ValueUnit{"day", Dimension::time, 1440 * unit::minute},
    ValueUnit{"days", Dimension::time, 1440 * unit::minute},
    ValueUnit{"in", Dimension::length, unit::inch},
    ValueUnit{"ins", Dimension::length, unit::inch},
    ValueUnit{"inch", Dimension::length, unit::inch},
    ValueUnit{"inches", Dimension::length, unit::inch},
    ValueUnit{"ft", Dimension::length, unit::foot},
    ValueUnit{"feet", Dimension::length, unit::foot},
    ValueUnit{"foot", Dimension::length, unit::foot},
    ValueUnit{"mm", Dimension::length, 1e-3 * metre},
    ValueUnit{"millimetre", Dimension::length, 1e-3 * metre},
    ValueUnit{"millimetres", Dimension::length, 1e-3 * metre},
    ValueUnit{"millimeter", Dimension::length, 1e-3 * metre},
    ValueUnit{"millimeters", Dimension::length, 1e-3 * metre},
    ValueUnit{"cm", Dimension::length, 1e-2 * metre},
    ValueUnit{"centimetre", Dimension::length, 1e-2 * metre},
    ValueUnit{"centimetres", Dimension::length, 1e-2 * metre},
    ValueUnit{"centimeter", Dimension::length, 1e-2 * metre},
    ValueUnit{"centimeters", Dimension::length, 1e-2 * metre},
    ValueUnit{"m", Dimension::length, metre},
    ValueUnit{"metre", Dimension::length, metre},
    ValueUnit{"metres", Dimension::length, metre},
    ValueUnit{"meter", Dimension::length, metre},
    ValueUnit{"meters", Dimension::length, metre},
    ValueUnit{"km", Dimension::length, 1000 * metre},
    ValueUnit{"f", Dimension::temperature, kelvin / 1.8, 459.67},
    ValueUnit{"fahrenheit", Dimension::temperature, kelvin / 1.8, 459.67},
    ValueUnit{"c", Dimension::temperature, kelvin, 273.15},
    ValueUnit{"celsius", Dimension::temperature, kelvin, 273.15},
    ValueUnit{"centigrade", Dimension::temperature, kelvin, 273.15},
    ValueUnit{"lb", Dimension::weight, unit::psi},
    ValueUnit{"lbs", Dimension::weight, unit::psi},
    ValueUnit{"pound", Dimension::weight, unit::psi},
    ValueUnit{"pounds", Dimension::weight, unit::psi},
    ValueUnit{"oz", Dimension::weight, 1},
    ValueUnit{"ounce", Dimension::weight, 1},
    ValueUnit{"ounces", Dimension::weight, 1},
    ValueUnit{"g", Dimension::weight, 1},
    ValueUnit{"kg", Dimension::weight, 1},
    ValueUnit{"cup", Dimension::volume, 1},
    ValueUnit{"cups", Dimension::volume, 1},
    ValueUnit{"tbsp", Dimension::volume, 1},
    ValueUnit{"tsp", Dimension::volume, 1},
    ValueUnit{"pint", Dimension::volume, 1},
    ValueUnit{"pints", Dimension::volume, 1},
    ValueUnit{"quart", Dimension::volume, 1},
    ValueUnit{"quarts", Dimension::volume, 1},
    ValueUnit{"ml", Dimension::volume, 1},
    ValueUnit{"l", Dimension::volume, 1},
    ValueUnit{"litre", Dimension::volume, 1},
    ValueUnit{"liter", Dimension::volume, 1},
};

std::string_view name_of(Dimension dimension) {
  switch (dimension) {
    case Dimension::pressure:
      return "a pressure";
    case Dimension::time:
      return "a time";
    case Dimension::length:
      return "a length";
    case Dimension::temperature:
      return "a temperature";
    case Dimension::weight:
      return "a weight";
    case Dimension::volume:
      return "a volume";
    case Dimension::number:
      break;
  }
  return "a number";
}

/// What one kind of figure is: everything a reader has of its own.
struct Wanted {
  Dimension dimension;
  std::string_view name;                  ///< "a processing time"
  std::string_view examples;              ///< "\"25 minutes\" or \"1 hr 15 min\""
  std::string_view units;                 ///< the units it knows, in words
  double bare;                            ///< factor of a figure without a unit; 0: a unit must be said
  double low, high;                       ///< SI, inclusive
  bool above_low = false;                 ///< low itself is refused
  std::string_view range;                 ///< the same in words
  std::array<std::string_view, 3> noise;  ///< its own nouns, which add nothing
};

FigureError wrong(std::string_view text, std::string_view what, const Wanted& wanted) {
  return {"\"" + std::string(text) + "\" " + std::string(what),
          "write " + std::string(wanted.name) + " like " + std::string(wanted.examples)};
}

struct Value {
  double figure = 0;                ///< signed, in `unit`
  const ValueUnit* unit = nullptr;  ///< nullptr: none said
  double more = 0;                  ///< SI value of the smaller units after it ("1 hr *15 min*")
  std::size_t end = 0;

  [[nodiscard]] double si(const ValueUnit* unsaid) const {
    const auto* used = unit != nullptr ? unit : unsaid;
    return (figure + used->offset) * used->factor + more;
  }
};

bool is(std::string_view text, std::size_t at, char c) { return at < text.size() && text[at] == c; }

class ValueReader {
 public:
  ValueReader(std::string_view text, const Wanted& wanted) : text_(text), wanted_(wanted) {}

  std::variant<Interval<double>, FigureError> read();
  bool below = false;  ///< "up to", "below", "or less"
  bool above = false;  ///< "above", "6001+", "and up"

 private:
  std::optional<Value> value_at(std::size_t at);
  std::optional<Value> term_at(std::size_t at);
  [[nodiscard]] std::optional<Value> clock_at(std::size_t at) const;
  const ValueUnit* unit_after(std::size_t at, std::size_t& end);
  std::size_t skip_words_before(std::size_t at);
  std::size_t skip_words_after(std::size_t at);
  std::optional<std::size_t> noise_at(std::size_t at) const;
  [[nodiscard]] FigureError refuse(std::string_view what) const { return wrong(text_, what, wanted_); }
  [[nodiscard]] std::string advice() const {
    return "write " + std::string(wanted_.name) + " like " + std::string(wanted_.examples);
  }
  [[nodiscard]] std::optional<FigureError> out_of_range(const Interval<double>& range) const;

  std::string_view text_;
  const Wanted& wanted_;
  std::optional<Dimension> strange_;  ///< a unit of another kind was met
  std::string_view unknown_;          ///< a word met in the place of a unit
};

std::optional<std::size_t> words_at(std::string_view text, std::size_t at, std::string_view phrase) {
  while (!phrase.empty()) {
    const auto space = std::min(phrase.find(' '), phrase.size());
    const Letters word(text, skip_space(text, at));
    if (!word.is(phrase.substr(0, space))) return std::nullopt;
    phrase.remove_prefix(std::min(space + 1, phrase.size()));
    at = word.end();
  }
  return at;
}

std::optional<std::size_t> ValueReader::noise_at(std::size_t at) const {
  for (const auto phrase : wanted_.noise)
    if (!phrase.empty())
      if (const auto end = words_at(text_, at, phrase)) return end;
  return std::nullopt;
}

std::size_t ValueReader::skip_words_before(std::size_t at) {
  static constexpr std::array<std::string_view, 6> below_words{"up to",     "below",        "under",
                                                               "less than", "no more than", "at most"};
  static constexpr std::array<std::string_view, 5> above_words{"above", "over", "more than", "at least",
                                                               "higher than"};
  for (const auto phrase : below_words)
    if (const auto end = words_at(text_, at, phrase)) {
      below = true;
      return skip_space(text_, *end);
    }
  for (const auto phrase : above_words)
    if (const auto end = words_at(text_, at, phrase)) {
      above = true;
      return skip_space(text_, *end);
    }
  for (const std::string_view phrase : {"between", "from"})
    if (const auto end = words_at(text_, at, phrase)) return skip_space(text_, *end);
  return at;
}

std::size_t ValueReader::skip_words_after(std::size_t at) {
  static constexpr std::array<std::string_view, 8> above_words{
      "and up", "and above", "and over", "and higher", "or more", "or higher", "or above", "or over"};
  static constexpr std::array<std::string_view, 5> below_words{"or less", "or below", "and below", "or lower",
                                                               "and lower"};
  for (const auto phrase : above_words)
    if (const auto end = words_at(text_, at, phrase)) {
      above = true;
      return *end;
    }
  for (const auto phrase : below_words)
    if (const auto end = words_at(text_, at, phrase)) {
      below = true;
      return *end;
    }
  const auto next = skip_space(text_, at);
  if (is(text_, next, '+')) {
    above = true;
    return next + 1;
  }
  return at;
}

const ValueUnit* ValueReader::unit_after(std::size_t at, std::size_t& end) {
  auto next = skip_space(text_, at);
  if (const auto dash = dash_at(text_, next)) {
    const Letters joined(text_, next + dash);  // "1-inch"
    if (joined.empty() || joined.is("to")) return nullptr;
    next += dash;
  }
  if (const auto mark = inch_mark_at(text_, next)) {
    end = next + mark;
    static constexpr ValueUnit inches{"\"", Dimension::length, unit::inch};
    return &inches;
  }
  if (is(text_, next, '#')) {
    end = next + 1;
    static constexpr ValueUnit pounds{"#", Dimension::weight, unit::psi};
    return &pounds;
  }
  const bool degrees = text_.substr(std::min(next, text_.size())).starts_with("\xC2\xB0");
  if (degrees) next = skip_space(text_, next + 2);
  for (const std::string_view word : {"degrees", "degree", "deg"})
    if (const auto after = words_at(text_, next, word))
      next = skip_space(text_, is(text_, *after, '.') ? *after + 1 : *after);
  const Letters word(text_, next);
  const auto found = std::find_if(value_units.begin(), value_units.end(),
                                  [&](const ValueUnit& known) { return word.is(known.word); });
  if (found == value_units.end()) {
    if (!word.empty()) unknown_ = text_.substr(next, word.end() - next);
    return nullptr;
  }
  end = is(text_, word.end(), '.') ? word.end() + 1 : word.end();
  return &*found;
}

/// "1:15 h", "1:15": hours and minutes.
std::optional<Value> ValueReader::clock_at(std::size_t at) const {
  if (wanted_.dimension != Dimension::time) return std::nullopt;
  const auto colon = text_.find(':', at);
  if (colon == std::string_view::npos || colon == at || colon - at > 2 || colon + 3 > text_.size())
    return std::nullopt;
  const auto digits = [&](std::size_t from, std::size_t to) -> std::optional<int> {
    int value = 0;
    for (std::size_t i = from; i < to; ++i) {
      if (text_[i] < '0' || text_[i] > '9') return std::nullopt;
      value = value * 10 + (text_[i] - '0');
    }
    return value;
  };
  const auto whole = digits(at, colon);
  const auto part = digits(colon + 1, colon + 3);
  if (!whole || !part || *part > 59 || is(text_, colon + 3, ':')) return std::nullopt;
  static constexpr ValueUnit minutes{"min", Dimension::time, unit::minute};
  Value value;
  value.figure = *whole * 60 + *part;
  value.unit = &minutes;
  value.end = colon + 3;
  const Letters word(text_, skip_space(text_, value.end));
  for (const std::string_view hours : {"h", "hr", "hrs", "hour", "hours"})
    if (word.is(hours)) value.end = is(text_, word.end(), '.') ? word.end() + 1 : word.end();
  return value;
}

std::optional<Value> ValueReader::term_at(std::size_t at) {
  const auto number = read_number(text_, at);
  if (!number) return std::nullopt;
  Value value;
  value.figure = number->value;
  value.end = number->end;
  std::size_t end = 0;
  auto from = number->end;
  if (is(text_, from, '+')) {  // "6001+ ft"
    above = true;
    value.end = ++from;
  }
  const auto* found = unit_after(from, end);
  if (found == nullptr) return value;
  const bool pounds_of_pressure = wanted_.dimension == Dimension::pressure &&
                                  found->dimension == Dimension::weight && found->factor == unit::psi;
  if (found->dimension != wanted_.dimension && !pounds_of_pressure) {
    strange_ = found->dimension;
    return value;
  }
  value.unit = found;
  value.end = end;
  return value;
}

/// A figure with its unit, or several to be added ("1 hr 15 min", "1 hour and 15 minutes").
std::optional<Value> ValueReader::value_at(std::size_t at) {
  if (const auto clock = clock_at(at)) return clock;
  const auto sign = dash_at(text_, at);
  auto value = term_at(skip_space(text_, at + sign));
  if (!value) return std::nullopt;
  if (sign != 0) value->figure = -value->figure;
  while (value->unit != nullptr && wanted_.dimension == Dimension::time) {
    auto next = skip_space(text_, value->end);
    if (is(text_, next, ',')) next = skip_space(text_, next + 1);
    if (const auto joint = words_at(text_, next, "and")) next = skip_space(text_, *joint);
    const auto smaller = term_at(next);
    if (!smaller || smaller->unit == nullptr || smaller->unit->factor >= value->unit->factor) break;
    value->more += smaller->si(nullptr);
    value->end = smaller->end;
  }
  return value;
}

std::optional<FigureError> ValueReader::out_of_range(const Interval<double>& range) const {
  const double slack = 1e-9 * std::max(std::abs(wanted_.low), std::abs(wanted_.high));
  const bool low = wanted_.above_low ? range.low <= wanted_.low : range.low < wanted_.low - slack;
  if (!low && range.high <= wanted_.high + slack) return std::nullopt;
  return FigureError{"\"" + std::string(text_) + "\" can't be right for " + std::string(wanted_.name) + ": " +
                         std::string(wanted_.range) + " is read",
                     "check the figure and its unit; write it like " + std::string(wanted_.examples)};
}

std::variant<Interval<double>, FigureError> ValueReader::read() {
  auto at = skip_space(text_, 0);
  if (at >= text_.size()) return FigureError{"no figure is given", advice()};
  while (const auto end = noise_at(at)) at = skip_space(text_, *end);
  const bool between = words_at(text_, at, "between").has_value();
  at = skip_words_before(at);
  const auto first = value_at(at);
  if (!first) return refuse("holds no figure where one is wanted");
  auto last = first;
  if (const auto mark = range_mark(text_, first->end, true); mark && value_at(*mark)) {
    last = value_at(*mark);
  } else if (const auto both = words_at(text_, first->end, "and"); both && between) {
    last = value_at(skip_space(text_, *both));
    if (!last) return refuse("holds one figure where two are announced");
  }
  if (strange_) return refuse("is " + std::string(name_of(*strange_)) + ", not " + std::string(wanted_.name));
  at = skip_words_after(last->end);
  for (auto end = noise_at(at); end; end = noise_at(at)) at = *end;
  at = skip_words_after(at);
  if (skip_space(text_, at) < text_.size()) {
    if (last->unit == nullptr && !unknown_.empty())
      return refuse("has a unit that is not known, \"" + std::string(unknown_) + "\"; known are " +
                    std::string(wanted_.units));
    return refuse("holds more than " + std::string(wanted_.name) + ": \"" +
                  std::string(text_.substr(skip_space(text_, at))) + "\"");
  }
  const ValueUnit bare{"", wanted_.dimension, wanted_.bare};
  if (last->unit == nullptr && wanted_.bare == 0)
    return refuse("has no unit; known are " + std::string(wanted_.units));
  const auto* unsaid = last->unit != nullptr ? last->unit : &bare;
  const Interval<double> range{first->si(unsaid), last->si(unsaid)};
  if (range.low > range.high) return refuse("goes from the greater figure to the less");
  if (auto error = out_of_range(range)) return *std::move(error);
  return range;
}

template <class T>
Figure<Interval<T>> read_value(std::string_view text, const Wanted& wanted) {
  ValueReader reader(text, wanted);
  auto result = reader.read();
  if (auto* error = std::get_if<FigureError>(&result)) return std::move(*error);
  if (reader.above || reader.below)
    return wrong(text, "leaves one end open; a figure or a range from one to another is wanted", wanted);
  const auto range = std::get<Interval<double>>(result);
  return Interval<T>{T::from_si(range.low), T::from_si(range.high)};
}

constexpr double lowest_altitude = -1500 * unit::foot;
constexpr double highest_altitude = 40000 * unit::foot;

constexpr Wanted altitude_in(double bare) {
  return {Dimension::length,
          "an altitude",
          "\"5,280 ft\", \"1600 m\", \"0-1,000 ft\" or \"sea level\"",
          "ft and m",
          bare,
          lowest_altitude,
          highest_altitude,
          false,
          "-1,500 to 40,000 ft",
          {"altitude", "elevation", ""}};
}

}  // namespace

Figure<Interval<GaugePressure>> read_pressure(std::string_view text) {
  static constexpr Wanted wanted{Dimension::pressure,
                                 "a gauge pressure",
                                 "\"11 psi\", \"10 lb pressure\" or \"75 kPa\"",
                                 "psi, lb, kPa and bar",
                                 unit::psi,
                                 0,
                                 30 * unit::psi,
                                 false,
                                 "0 to 30 psi, as a canner's gauge shows it,",
                                 {"pressure", "of pressure", "gauge"}};
  return read_value<GaugePressure>(text, wanted);
}

Figure<Interval<Duration>> read_time(std::string_view text) {
  static constexpr Wanted wanted{Dimension::time,
                                 "a time",
                                 "\"25 minutes\" or \"1 hr 15 min\"",
                                 "minutes, hours, seconds and days",
                                 unit::minute,
                                 0,
                                 48 * 60 * unit::minute,
                                 true,
                                 "a time above 0 and up to 48 hours",
                                 {"", "", ""}};
  return read_value<Duration>(text, wanted);
}

Figure<Interval<Altitude>> read_altitude(std::string_view text, Units units) {
  static constexpr Wanted in_feet_wanted = altitude_in(unit::foot);
  static constexpr Wanted in_metres_wanted = altitude_in(1);
  const auto& wanted = units == Units::metric ? in_metres_wanted : in_feet_wanted;
  if (const auto end = words_at(text, 0, "sea level")) {
    if (skip_space(text, *end) >= text.size()) return Interval<Altitude>{};
    const auto mark = range_mark(text, *end, false);
    auto rest = mark ? read_altitude(text.substr(*mark), units) : FigureError{};
    if (auto* range = std::get_if<Interval<Altitude>>(&rest); range != nullptr && range->exact())
      return Interval<Altitude>{Altitude{}, range->high};
    return wrong(text, "can't be read as an altitude", wanted);
  }
  ValueReader reader(text, wanted);
  auto result = reader.read();
  if (auto* error = std::get_if<FigureError>(&result)) return std::move(*error);
  auto range = std::get<Interval<double>>(result);
  if ((reader.above || reader.below) && (range.low != range.high || reader.above == reader.below))
    return wrong(text, "is a range with one end open as well", wanted);
  if (reader.above) range.high = std::numeric_limits<double>::infinity();
  if (reader.below) range.low = lowest_altitude;
  return Interval<Altitude>{Altitude::from_si(range.low), Altitude::from_si(range.high)};
}

Figure<Interval<Headspace>> read_headspace(std::string_view text) {
  static constexpr Wanted wanted{Dimension::length,
                                 "a headspace",
                                 "\"1 inch\", \"1/2 inch\" or \"13 mm\"",
                                 "inches, mm and cm",
                                 unit::inch,
                                 0,
                                 6 * unit::inch,
                                 false,
                                 "0 to 6 inches",
                                 {"headspace", "of headspace", "head space"}};
  for (const std::string_view none : {"none", "no headspace"})
    if (const auto end = words_at(text, 0, none); end && skip_space(text, *end) >= text.size())
      return Interval<Headspace>{};
  return read_value<Headspace>(text, wanted);
}

Figure<Interval<PieceSize>> read_piece_size(std::string_view text) {
  static constexpr Wanted wanted{Dimension::length,
                                 "a size of pieces",
                                 "\"1 inch\", \"3/4-inch\" or \"2 cm\"",
                                 "inches, mm and cm",
                                 unit::inch,
                                 0,
                                 36 * unit::inch,
                                 true,
                                 "a size above 0 and up to 36 inches",
                                 {"", "", ""}};
  return read_value<PieceSize>(text, wanted);
}

Figure<Interval<Temperature>> read_temperature(std::string_view text) {
  static constexpr Wanted wanted{Dimension::temperature,
                                 "a temperature",
                                 "\"180 F\" or \"82 C\"",
                                 "F and C",
                                 0,
                                 celsius(-100).si(),
                                 celsius(400).si(),
                                 false,
                                 "-100 to 400 C (-148 to 752 F)",
                                 {"", "", ""}};
  return read_value<Temperature>(text, wanted);
}

}  // namespace sealworthy::quantity
