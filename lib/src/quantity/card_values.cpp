#include <limits>
#include <utility>

#include "quantity/amount.hpp"
#include "quantity/numbers.hpp"
#include "quantity/scan.hpp"
#include "quantity/value_reader.hpp"

namespace sealworthy::quantity {
namespace {

template <class T>
Figure<Interval<T>> read_value(std::string_view text, const Wanted& wanted) {
  ValueReader reader(text, wanted);
  auto result = reader.read();
  if (auto* error = std::get_if<FigureError>(&result)) return std::move(*error);
  if (reader.open_above() || reader.open_below()) return reader.refuse("leaves one end open");
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
          "-1,500 to 40,000 ft (-457 to 12,192 m)",
          {"altitude", "elevation", "above sea level"}};
}

/// "sea level", "sea level to 1,000 ft".
std::optional<Interval<Altitude>> from_sea_level(std::string_view text, Units units) {
  const auto end = phrase_at(text, 0, "sea level");
  if (!end) return std::nullopt;
  if (at_end(text, *end)) return Interval<Altitude>{};
  const auto mark = range_mark(text, *end);
  if (!mark || phrase_at(text, *mark, "sea")) return std::nullopt;
  const auto rest = read_altitude(text.substr(*mark), units);
  const auto* upper = std::get_if<Interval<Altitude>>(&rest);
  if (upper == nullptr || !upper->exact() || upper->low < Altitude{}) return std::nullopt;
  return Interval<Altitude>{Altitude{}, upper->high};
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
                                 "0 to 30 psi (0 to 207 kPa), as the gauge shows it,",
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
                                 "anything above 0 and up to 48 hours"};
  return read_value<Duration>(text, wanted);
}

Figure<Interval<Altitude>> read_altitude(std::string_view text, Units units) {
  static constexpr Wanted us_or_imperial = altitude_in(unit::foot);
  static constexpr Wanted metric = altitude_in(1);
  if (const auto sea_level = from_sea_level(text, units)) return *sea_level;
  ValueReader reader(text, units == Units::metric ? metric : us_or_imperial);
  auto result = reader.read();
  if (auto* error = std::get_if<FigureError>(&result)) return std::move(*error);
  auto range = std::get<Interval<double>>(result);
  if (reader.open_above() && reader.open_below()) return reader.refuse("is open at both ends");
  if ((reader.open_above() || reader.open_below()) && !range.exact())
    return reader.refuse("is a range with one end left open as well");
  if (reader.open_above()) range.high = std::numeric_limits<double>::infinity();
  if (reader.open_below()) range.low = lowest_altitude;
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
                                 "0 to 6 inches (0 to 152 mm)",
                                 {"headspace", "of headspace", "head space"}};
  static constexpr std::array<std::string_view, 2> none{"none", "no headspace"};
  for (const auto words : none)
    if (const auto end = phrase_at(text, 0, words); end && at_end(text, *end)) return Interval<Headspace>{};
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
                                 "anything above 0 and up to 36 inches (91 cm)",
                                 {"thick", "long", "wide"}};
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
                                 "-148 to 752 F (-100 to 400 C)"};
  return read_value<Temperature>(text, wanted);
}

}  // namespace sealworthy::quantity
