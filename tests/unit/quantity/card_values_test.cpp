// Card values: pressure, time, altitude, headspace, piece size, temperature.

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "quantity/amount.hpp"

using namespace sealworthy;
using namespace sealworthy::quantity;

namespace {

struct Good {
  std::string_view text;
  double low, high;
};
struct Bad {
  std::string_view text;
  std::string_view says;  ///< words that the message must hold
};

template <class T, class Read, class In, std::size_t N>
void accepts(Read read, In in, const std::array<Good, N>& rows) {
  for (const auto& row : rows) {
    CAPTURE(row.text);
    const auto figure = read(row.text);
    if (const auto* error = std::get_if<FigureError>(&figure)) {
      FAIL_CHECK(error->message);
      continue;
    }
    const auto& range = std::get<Interval<T>>(figure);
    CHECK(in(range.low) == doctest::Approx(row.low));
    CHECK(in(range.high) == doctest::Approx(row.high));
  }
}

template <class Read, std::size_t N>
void refuses(Read read, const std::array<Bad, N>& rows) {
  for (const auto& row : rows) {
    CAPTURE(row.text);
    const auto figure = read(row.text);
    const auto* error = std::get_if<FigureError>(&figure);
    if (error == nullptr) {
      FAIL_CHECK("accepted");
      continue;
    }
    CAPTURE(error->message);
    CHECK(error->message.find(row.says) != std::string::npos);
    CHECK(error->suggestion.starts_with("write "));
  }
}

}  // namespace

TEST_CASE("gauge pressure") {
  accepts<GaugePressure>(read_pressure, in_psi,
                         std::array{
                             Good{"10 lb pressure", 10, 10},
                             Good{"10 lbs", 10, 10},
                             Good{"10 lbs.", 10, 10},
                             Good{"10# pressure", 10, 10},
                             Good{"11 pounds pressure", 11, 11},
                             Good{"11 pounds of pressure", 11, 11},
                             Good{"10 pounds", 10, 10},
                             Good{"10 psi", 10, 10},
                             Good{"10 psig", 10, 10},
                             Good{"10 psi gauge", 10, 10},
                             Good{"10-11 psi", 10, 11},
                             Good{"10 to 11 lb", 10, 11},
                             Good{"ten pounds", 10, 10},
                             Good{"11", 11, 11},
                             Good{"0", 0, 0},
                             Good{"30 psi", 30, 30},
                             Good{"70 kPa", 10.1526416411, 10.1526416411},  // GNU units
                             Good{"1.2 bar", 17.4045285276, 17.4045285276},
                             Good{"1,2 bar", 17.4045285276, 17.4045285276},
                         });
  refuses(read_pressure, std::array{
                             Bad{"", "no figure"},
                             Bad{"psi", "no figure"},
                             Bad{"high", "no figure"},
                             Bad{"31 psi", "out of range"},
                             Bad{"300 kPa", "out of range"},
                             Bad{"-5 psi", "out of range"},
                             Bad{"24.7 psia", "absolute pressure"},
                             Bad{"1 atm", "absolute pressure"},
                             Bad{"25 min", "is a time, not a gauge pressure"},
                             Bad{"250 F", "is a temperature"},
                             Bad{"10 torr", "unit that is not known"},
                             Bad{"12-10 psi", "greater figure to the less"},
                             Bad{"10 psi or so", "not exact"},
                             Bad{"about 10 psi", "not exact"},
                             Bad{"10 psi please", "holds more"},
                             Bad{"up to 10 psi", "one end open"},
                             Bad{"10 psi or more", "one end open"},
                         });
}

TEST_CASE("time") {
  accepts<Duration>(read_time, in_minutes,
                    std::array{
                        Good{"25 min", 25, 25},
                        Good{"25 min.", 25, 25},
                        Good{"75 mins", 75, 75},
                        Good{"25", 25, 25},
                        Good{"25m", 25, 25},
                        Good{"1 hr 15 min", 75, 75},
                        Good{"1 hr. 15 min.", 75, 75},
                        Good{"1 hour and 15 minutes", 75, 75},
                        Good{"1 hour, 15 minutes", 75, 75},
                        Good{"1 hr 15", 75, 75},
                        Good{"1h15m", 75, 75},
                        Good{"1:15 h", 75, 75},
                        Good{"1 1/2 hours", 90, 90},
                        Good{"1½ h", 90, 90},
                        Good{"1.5 hours", 90, 90},
                        Good{"half an hour", 30, 30},
                        Good{"an hour", 60, 60},
                        Good{"one and a half hours", 90, 90},
                        Good{"20-25 minutes", 20, 25},
                        Good{"20 to 25 min", 20, 25},
                        Good{"between 20 and 25 min", 20, 25},
                        Good{"1-1 1/2 hours", 60, 90},
                        Good{"45 minutes to 1 hour", 45, 60},
                        Good{"1 hr 15 min to 1 hr 30 min", 75, 90},
                        Good{"90 seconds", 1.5, 1.5},
                        Good{"48 hours", 2880, 2880},
                        Good{"2 days", 2880, 2880},
                    });
  refuses(read_time, std::array{
                         Bad{"", "no figure"},
                         Bad{"   ", "no figure"},
                         Bad{"until done", "no figure"},
                         Bad{"25 minutes or so", "not exact"},
                         Bad{"about 25 minutes", "not exact"},
                         Bad{"25 psi", "is a pressure, not a time"},
                         Bad{"25 feet", "is a length, not a time"},
                         Bad{"25 lb", "is a weight"},
                         Bad{"90'", "holds more"},
                         Bad{"1:15", "hours and minutes or minutes and seconds"},
                         Bad{"0 min", "out of range"},
                         Bad{"-5 min", "out of range"},
                         Bad{"49 hours", "out of range"},
                         Bad{"25-20 min", "greater figure to the less"},
                         Bad{"25 moons", "\"moons\""},
                         Bad{"25 minutes 1 hour", "holds more"},
                         Bad{"1234567890123456 min", "no figure"},
                     });
}

TEST_CASE("altitude") {
  const auto read = [](std::string_view text) { return read_altitude(text); };
  accepts<Altitude>(read, in_feet,
                    std::array{
                        Good{"5,280 ft", 5280, 5280},
                        Good{"5280 feet", 5280, 5280},
                        Good{"5280", 5280, 5280},
                        Good{"1609.344 m", 5280, 5280},
                        Good{"1,6 km", 5249.34383202, 5249.34383202},  // GNU units
                        Good{"0-2000 ft", 0, 2000},
                        Good{"0-1,000 ft", 0, 1000},
                        Good{"0 to 1,000 feet", 0, 1000},
                        Good{"1,001–3,000 feet", 1001, 3000},
                        Good{"0 ft - 1000 ft", 0, 1000},
                        Good{"0-304.8 m", 0, 1000},
                        Good{"-100 ft", -100, -100},
                        Good{"−100 to 500 ft", -100, 500},
                        Good{"sea level", 0, 0},
                        Good{"sea level to 1,000 ft", 0, 1000},
                        Good{"1,000 ft above sea level", 1000, 1000},
                        Good{"up to 1000 feet", -1500, 1000},
                        Good{"below 1000 ft", -1500, 1000},
                        Good{"1000 ft or less", -1500, 1000},
                        Good{"40,000 ft", 40000, 40000},
                    });
  for (const std::string_view text : {"above 6000 ft", "above 6,000 ft", "6000+ ft", "6000+", "6,000 ft +",
                                      "6000 ft and above", "over 6000 ft"}) {
    CAPTURE(text);
    const auto figure = read_altitude(text);
    REQUIRE(std::holds_alternative<Interval<Altitude>>(figure));
    const auto range = std::get<Interval<Altitude>>(figure);
    CHECK(in_feet(range.low) == doctest::Approx(6000));
    CHECK(std::isinf(range.high.si()));
  }
  refuses(read, std::array{
                    Bad{"", "no figure"},
                    Bad{"high", "no figure"},
                    Bad{"50,000 ft", "out of range"},
                    Bad{"-1600 ft", "out of range"},
                    Bad{"2000-0 ft", "greater figure to the less"},
                    Bad{"100 furlongs", "\"furlongs\""},
                    Bad{"25 min", "is a time"},
                    Bad{"above 1000-2000 ft", "one end left open"},
                    Bad{"sea level or so", "no figure"},
                    Bad{"sea level to sea level to sea level", "no figure"},
                });
  const auto metric = read_altitude("1600", Units::metric);
  REQUIRE(std::holds_alternative<Interval<Altitude>>(metric));
  CHECK(in_metres(std::get<Interval<Altitude>>(metric).low) == doctest::Approx(1600));
}

TEST_CASE("headspace and size of pieces") {
  accepts<Headspace>(
      read_headspace, [](Headspace h) { return in_inches(h); },
      std::array{
          Good{"1 inch", 1, 1},
          Good{"1\"", 1, 1},
          Good{"1″", 1, 1},
          Good{"1/2\"", 0.5, 0.5},
          Good{"½ in.", 0.5, 0.5},
          Good{"½ inch", 0.5, 0.5},
          Good{"1-inch", 1, 1},
          Good{"1 1/4-inch", 1.25, 1.25},
          Good{"1-1/4 inch", 1.25, 1.25},
          Good{"1 - 1¼ inch", 1, 1.25},
          Good{"1 to 1 1/4 inches", 1, 1.25},
          Good{"1/4 to 1/2 inch", 0.25, 0.5},
          Good{"13 mm", 13 / 25.4, 13 / 25.4},
          Good{"1.5 cm", 1.5 / 2.54, 1.5 / 2.54},
          Good{"1 inch headspace", 1, 1},
          Good{"1", 1, 1},
          Good{"none", 0, 0},
          Good{"half an inch", 0.5, 0.5},
      });
  refuses(read_headspace, std::array{
                              Bad{"7 inches", "out of range"},
                              Bad{"-1 inch", "out of range"},
                              Bad{"1 lb", "is a weight"},
                              Bad{"a bit", "\"bit\""},
                              Bad{"1/2 to 1/4 inch", "greater figure to the less"},
                          });
  accepts<PieceSize>(
      read_piece_size, [](PieceSize p) { return in_inches(p); },
      std::array{Good{"3/4-inch", 0.75, 0.75}, Good{"1 in", 1, 1}, Good{"2 cm", 2 / 2.54, 2 / 2.54},
                 Good{"1 to 2 inches", 1, 2}, Good{"1/4 inch thick", 0.25, 0.25}});
  refuses(read_piece_size, std::array{Bad{"0 inch", "out of range"}, Bad{"40 inches", "out of range"}});
}

TEST_CASE("temperature") {
  accepts<Temperature>(read_temperature, in_celsius,
                       std::array{
                           Good{"180 F", 82.2222222222, 82.2222222222},  // GNU units
                           Good{"180°F", 82.2222222222, 82.2222222222},
                           Good{"82 C", 82, 82},
                           Good{"180-185 °F", 82.2222222222, 85},
                           Good{"180 to 185 degrees F", 82.2222222222, 85},
                           Good{"100 degrees Celsius", 100, 100},
                           Good{"-4 F", -20, -20},
                           Good{"212F", 100, 100},
                       });
  refuses(read_temperature, std::array{Bad{"180", "has no unit"}, Bad{"900 F", "out of range"},
                                       Bad{"10 psi", "is a pressure"}, Bad{"boiling", "no figure"}});
}

TEST_CASE("a long text is quoted in part, never through a character") {
  const std::string text = "5 psi " + std::string(53, 'x') + "é" + std::string(2000, 'y');
  const auto figure = read_pressure(text);
  const auto* error = std::get_if<FigureError>(&figure);
  REQUIRE(error != nullptr);
  CHECK(error->message.size() < 300);
  CHECK(error->message.find("\xC3 ") == std::string::npos);
}
