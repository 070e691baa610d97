// Conversions, as the readers make them, against outside figures: the table tests/data/units.tsv (made with
// GNU units 2.22, see its top), the program GNU units at test time, and the base units that Boost.Units
// brings.

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <boost/units/base_units/imperial/foot.hpp>
#include <boost/units/base_units/imperial/gallon.hpp>
#include <boost/units/base_units/imperial/inch.hpp>
#include <boost/units/base_units/imperial/ounce.hpp>
#include <boost/units/base_units/imperial/pint.hpp>
#include <boost/units/base_units/imperial/pound.hpp>
#include <boost/units/base_units/metric/bar.hpp>
#include <boost/units/base_units/metric/hour.hpp>
#include <boost/units/base_units/metric/liter.hpp>
#include <boost/units/base_units/metric/minute.hpp>
#include <boost/units/base_units/us/cup.hpp>
#include <boost/units/base_units/us/fluid_ounce.hpp>
#include <boost/units/base_units/us/gallon.hpp>
#include <boost/units/base_units/us/pint.hpp>
#include <boost/units/base_units/us/pound_force.hpp>
#include <boost/units/base_units/us/quart.hpp>
#include <boost/units/base_units/us/tablespoon.hpp>
#include <boost/units/base_units/us/teaspoon.hpp>
#include <charconv>
#include <cstdio>
#include <optional>
#include <string>

#include "data_lines.hpp"
#include "quantity/amount.hpp"

using namespace sealworthy;
using namespace sealworthy::quantity;

namespace {

enum class What { none, mass, volume, number, pressure, time, length };
struct Si {
  What what = What::none;
  double value = 0;
};

Si of_amount(const std::string& text) {
  const auto amount = read_amount(text, Units::us);
  if (!amount || amount->end != text.size()) return {};
  if (const auto* mass = std::get_if<Interval<Mass>>(&amount->measure)) return {What::mass, mass->low.si()};
  if (const auto* volume = std::get_if<Interval<Volume>>(&amount->measure))
    return {What::volume, volume->low.si()};
  return {};
}

template <class Figure>
std::optional<double> low_si(const Figure& figure) {
  const auto* range = std::get_if<0>(&figure);
  return range == nullptr ? std::nullopt : std::optional(range->low.si());
}

/// What a text with a unit comes to in the hands of whichever reader takes it.
Si read(const std::string& unit) {
  const bool figure = unit[0] >= '0' && unit[0] <= '9';
  const auto text = figure ? unit : "1 " + unit;
  if (const auto amount = of_amount(text); amount.what != What::none) return amount;
  if (const auto altitude = low_si(read_altitude(text))) return {What::length, *altitude};
  if (const auto piece = low_si(read_piece_size(text))) return {What::length, *piece};
  if (const auto time = low_si(read_time(text))) return {What::time, *time};
  if (const auto pressure = low_si(read_pressure(text))) return {What::pressure, *pressure};
  return {};
}

double number(const std::string& text) {
  double value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

/// Units that no reader takes, on purpose: nobody writes a recipe in them, or they are absolute pressures.
constexpr std::array not_read{"cubic inch",
                              "fluid dram",
                              "US dry gallon",
                              "stick of butter",
                              "grain",
                              "dram",
                              "troy oz",
                              "US ton",
                              "tonne",
                              "atm",
                              "inHg",
                              "mmHg",
                              "kgf",
                              "torr",
                              "mi",
                              "yard",
                              "degree",
                              "Australian",
                              "week",
                              "gross",
                              "dozen"};

bool is_not_read(const std::string& unit) {
  return std::any_of(not_read.begin(), not_read.end(),
                     [&](const char* name) { return unit.find(name) != std::string::npos; });
}

std::string gnu_units(const std::string& from, const std::string& to) {
  const auto command = "units -o %.15g --terse '" + from + "' '" + to + "' 2>/dev/null";
  FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return {};
  std::array<char, 128> buffer{};
  std::string out;
  while (std::fgets(buffer.data(), buffer.size(), pipe) != nullptr) out += buffer.data();
  return pclose(pipe) == 0 ? out : std::string();
}

template <class Unit, class Target>
double boost_factor(const Unit&, const Target&) {
  return boost::units::conversion_factor(Unit(), Target());
}

}  // namespace

TEST_CASE("factors of tests/data/units.tsv") {
  int checked = 0;
  for (const auto& row : test::data_rows("units.tsv", 5)) {
    if (row[0] != "conversion" || is_not_read(row[1]) || is_not_read(row[2])) continue;
    CAPTURE(row[1]);
    CAPTURE(row[2]);
    const auto from = read(row[1]);
    const auto to = read(row[2]);
    REQUIRE(from.what != What::none);
    REQUIRE(from.what == to.what);
    CHECK(from.value / to.value == doctest::Approx(number(row[3])).epsilon(1e-10));
    ++checked;
  }
  CHECK(checked >= 90);
}

TEST_CASE("temperatures and pounds of pressure of tests/data/units.tsv") {
  int checked = 0;
  for (const auto& row : test::data_rows("units.tsv", 5)) {
    if (row[0] != "value" || row[2].find("absolute") != std::string::npos) continue;
    CAPTURE(row[1]);
    if (row[2] == "kPa gauge") {
      const auto pounds_of = read_pressure(row[1].substr(0, row[1].find(" (")));
      REQUIRE(low_si(pounds_of));
      CHECK(*low_si(pounds_of) / 1000 == doctest::Approx(number(row[3])).epsilon(1e-10));
      ++checked;
    } else if (row[2] == "C" || row[2] == "F" || row[2] == "K") {
      const auto figure = read_temperature(row[1]);
      REQUIRE(std::holds_alternative<Interval<Temperature>>(figure));
      const auto temperature = std::get<Interval<Temperature>>(figure).low;
      const double value = row[2] == "C"   ? in_celsius(temperature)
                           : row[2] == "F" ? in_fahrenheit(temperature)
                                           : temperature.si();
      CHECK(value == doctest::Approx(number(row[3])).epsilon(1e-10));
      ++checked;
    }
  }
  CHECK(checked >= 45);
}

TEST_CASE("gauge to absolute, as tests/data/units.tsv has it at sea level") {
  int checked = 0;
  constexpr auto air = pascals_absolute(101325);
  for (const auto& row : test::data_rows("units.tsv", 5)) {
    if (row[0] != "value" || row[2] != "kPa absolute") continue;
    CAPTURE(row[1]);
    const auto gauge = read_pressure(row[1].substr(0, row[1].find(" (")));
    REQUIRE(std::holds_alternative<Interval<GaugePressure>>(gauge));
    const auto pressure = absolute(std::get<Interval<GaugePressure>>(gauge).low, air);
    CHECK(in_pascals(pressure) / 1000 == doctest::Approx(number(row[3])).epsilon(1e-10));
    ++checked;
  }
  CHECK(checked >= 4);
}

TEST_CASE("the program GNU units agrees") {
  REQUIRE_MESSAGE(!gnu_units("inch", "mm").empty(),
                  "GNU units is needed as a reference and was not found: install the Debian package units");
  struct Pair {
    const char* ours;
    const char* gnu;
    const char* si;
  };
  constexpr std::array pairs{
      Pair{"tsp", "teaspoon", "m^3"},
      Pair{"tbsp", "tablespoon", "m^3"},
      Pair{"fl oz", "floz", "m^3"},
      Pair{"cup", "cup", "m^3"},
      Pair{"half-pint", "0.5 pint", "m^3"},
      Pair{"pint", "pint", "m^3"},
      Pair{"quart", "quart", "m^3"},
      Pair{"half-gallon", "0.5 gallon", "m^3"},
      Pair{"gallon", "gallon", "m^3"},
      Pair{"gill", "gill", "m^3"},
      Pair{"dry pint", "drypint", "m^3"},
      Pair{"dry quart", "dryquart", "m^3"},
      Pair{"peck", "peck", "m^3"},
      Pair{"bushel", "bushel", "m^3"},
      Pair{"imperial fl oz", "brfloz", "m^3"},
      Pair{"imperial cup", "brcup", "m^3"},
      Pair{"imperial pint", "brpint", "m^3"},
      Pair{"imperial quart", "brquart", "m^3"},
      Pair{"imperial gallon", "brgallon", "m^3"},
      Pair{"imperial gill", "brgill", "m^3"},
      Pair{"imperial peck", "brpeck", "m^3"},
      Pair{"imperial bushel", "brbushel", "m^3"},
      Pair{"metric cup", "metriccup", "m^3"},
      Pair{"litre", "litre", "m^3"},
      Pair{"dl", "dl", "m^3"},
      Pair{"cl", "cl", "m^3"},
      Pair{"ml", "ml", "m^3"},
      Pair{"oz", "ounce", "kg"},
      Pair{"lb", "pound", "kg"},
      Pair{"stone", "stone", "kg"},
      Pair{"g", "gram", "kg"},
      Pair{"mg", "mg", "kg"},
      Pair{"kg", "kg", "kg"},
      Pair{"psi", "psi", "Pa"},
      Pair{"kPa", "kPa", "Pa"},
      Pair{"bar", "bar", "Pa"},
      Pair{"mbar", "mbar", "Pa"},
      Pair{"minute", "minute", "s"},
      Pair{"hour", "hour", "s"},
      Pair{"day", "day", "s"},
      Pair{"ft", "foot", "m"},
      Pair{"km", "km", "m"},
      Pair{"inch", "inch", "m"},
      Pair{"cm", "cm", "m"},
      Pair{"mm", "mm", "m"},
  };
  for (const auto& pair : pairs) {
    CAPTURE(pair.ours);
    const auto mine = read(pair.ours);
    REQUIRE(mine.what != What::none);
    const auto theirs = gnu_units(pair.gnu, pair.si);
    REQUIRE_FALSE(theirs.empty());
    CHECK(mine.value == doctest::Approx(number(theirs)).epsilon(1e-12));
  }
  for (const int fahrenheit_degrees : {-40, 32, 140, 180, 212, 240}) {
    const auto theirs = gnu_units("tempF(" + std::to_string(fahrenheit_degrees) + ")", "tempC");
    CHECK(in_celsius(fahrenheit(fahrenheit_degrees)) == doctest::Approx(number(theirs)).epsilon(1e-12));
  }
}

TEST_CASE("the base units of Boost.Units agree") {
  namespace us = boost::units::us;
  namespace imperial = boost::units::imperial;
  namespace metric = boost::units::metric;
  namespace si = boost::units::si;
  // Boost's US pint is rounded: 0.4731765 L for 0.473176473 L
  constexpr double us_rounding = 1e-7;
  const auto volume = [](const std::string& text) { return read(text).value; };
  CHECK(volume("cup") ==
        doctest::Approx(boost_factor(us::cup_base_unit::unit_type(), si::volume())).epsilon(us_rounding));
  CHECK(volume("pint") ==
        doctest::Approx(boost_factor(us::pint_base_unit::unit_type(), si::volume())).epsilon(us_rounding));
  CHECK(volume("quart") ==
        doctest::Approx(boost_factor(us::quart_base_unit::unit_type(), si::volume())).epsilon(us_rounding));
  CHECK(volume("gallon") ==
        doctest::Approx(boost_factor(us::gallon_base_unit::unit_type(), si::volume())).epsilon(us_rounding));
  CHECK(volume("fl oz") == doctest::Approx(boost_factor(us::fluid_ounce_base_unit::unit_type(), si::volume()))
                               .epsilon(us_rounding));
  CHECK(volume("tbsp") == doctest::Approx(boost_factor(us::tablespoon_base_unit::unit_type(), si::volume()))
                              .epsilon(us_rounding));
  CHECK(
      volume("tsp") ==
      doctest::Approx(boost_factor(us::teaspoon_base_unit::unit_type(), si::volume())).epsilon(us_rounding));
  CHECK(volume("imperial pint") ==
        doctest::Approx(boost_factor(imperial::pint_base_unit::unit_type(), si::volume())));
  CHECK(volume("imperial gallon") ==
        doctest::Approx(boost_factor(imperial::gallon_base_unit::unit_type(), si::volume())));
  CHECK(volume("litre") == doctest::Approx(boost_factor(metric::liter_base_unit::unit_type(), si::volume())));
  CHECK(volume("lb") == doctest::Approx(boost_factor(imperial::pound_base_unit::unit_type(), si::mass())));
  CHECK(volume("oz") == doctest::Approx(boost_factor(imperial::ounce_base_unit::unit_type(), si::mass())));
  CHECK(volume("inch") == doctest::Approx(boost_factor(imperial::inch_base_unit::unit_type(), si::length())));
  CHECK(volume("ft") == doctest::Approx(boost_factor(imperial::foot_base_unit::unit_type(), si::length())));
  CHECK(volume("bar") == doctest::Approx(boost_factor(metric::bar_base_unit::unit_type(), si::pressure())));
  CHECK(volume("hour") == doctest::Approx(boost_factor(metric::hour_base_unit::unit_type(), si::time())));
  const double inch = unit::inch;
  CHECK(unit::psi ==
        doctest::Approx(boost_factor(us::pound_force_base_unit::unit_type(), si::force()) / (inch * inch)));
  // a quantity of ours is a Boost quantity: it converts by Boost's own rules
  const boost::units::quantity<imperial::foot_base_unit::unit_type> mile_high(feet(5280).base());
  CHECK(mile_high.value() == doctest::Approx(5280));
}
