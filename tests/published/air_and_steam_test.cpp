// The physics of altitude against what others publish. Each table names its source. Tables entered from
// copies of a publication say so; misprints in them are named and left out.

#include <doctest/doctest.h>

#include <sealworthy/science.hpp>

using namespace sealworthy;
using namespace sealworthy::science;

namespace {

template <class T>
T sure(const Result<T>& result) {
  const auto* error = std::get_if<OutOfRange>(&result);
  INFO((error == nullptr ? std::string() : words(*error)));
  REQUIRE(error == nullptr);
  return std::get<T>(result);
}

double psia(AbsolutePressure p) { return in_pascals(p) / unit::psi; }
GeopotentialHeight geopotential_feet(double ft) { return GeopotentialHeight::from_si(ft * unit::foot); }

struct Pair {
  double x, y;
};

}  // namespace

TEST_CASE("air pressure is that of the reference program GNU units") {
  // GNU units 2.22 (Debian), definitions.units: `units -t --digits 10 "stdatmP(Z ft)" Pa` for the geometric
  // altitude, `stdatmPH` for the geopotential height.
  // It works out the molar mass of air from its parts (28.96442), which moves the seventh digit.
  struct Row {
    double ft, geometric, geopotential;
  };
  constexpr Row rows[] = {
      {-1000, 105040.7621, 105040.5814}, {0, 101325, 101325},
      {500, 99507.58264, 99507.53939},   {1000, 97716.73699, 97716.56651},
      {2500, 92500.64143, 92499.62229},  {5280, 83431.75486, 83427.57396},
      {7200, 77600.85267, 77593.52205},  {10000, 69694.59737, 69681.63713},
      {14000, 59546.21407, 59523.85719}, {20000, 46600.62758, 46563.233},
      {36000, 22797.07082, 22729.27467},
  };
  for (const Row& row : rows) {
    CAPTURE(row.ft);
    CHECK(in_pascals(sure(air_pressure(feet(row.ft)))) == doctest::Approx(row.geometric).epsilon(3e-6));
    CHECK(in_pascals(sure(air_pressure(geopotential_feet(row.ft)))) ==
          doctest::Approx(row.geopotential).epsilon(3e-6));
  }
}

TEST_CASE("air pressure is that of a handbook's table after US Standard Atmosphere 1976") {
  // Table in inch-pound units, as copied at engineersedge.com (standard atmospheric data). Its 4,000 ft
  // entry, 12.682, contradicts the equation printed with it (12.692): a misprint, left out.
  constexpr Pair table[] = {{0, 14.696},    {1000, 14.175}, {2000, 13.664}, {3000, 13.173}, {5000, 12.230},
                            {6000, 11.778}, {7000, 11.341}, {8000, 10.914}, {9000, 10.506}, {10000, 10.108}};
  for (const auto& [ft, printed] : table) {
    const auto at = ft;
    CAPTURE(at);
    CHECK(std::abs(psia(sure(air_pressure(feet(ft)))) - printed) < 0.004);
  }
}

TEST_CASE("steam saturation gives the release's own verification values to every printed digit") {
  // IAPWS R7-97(2012), table 35: K, MPa.
  constexpr Pair pressures[] = {{300, 0.353658941e-2}, {500, 0.263889776e1}, {600, 0.123443146e2}};
  for (const auto& [kelvin, mpa] : pressures) {
    const auto at = kelvin;
    CAPTURE(at);
    const double found = in_pascals(sure(saturation_pressure(Temperature::from_si(kelvin)))) / 1e6;
    CHECK(found == doctest::Approx(mpa).epsilon(2e-9));
  }
  // Table 36: MPa, K.
  constexpr Pair temperatures[] = {{0.1, 0.372755919e3}, {1, 0.453035632e3}, {10, 0.584149488e3}};
  for (const auto& [mpa, kelvin] : temperatures) {
    const auto at = mpa;
    CAPTURE(at);
    CHECK(std::abs(sure(saturation_temperature(pascals_absolute(mpa * 1e6))).si() - kelvin) < 5.1e-7);
  }
}

TEST_CASE("steam temperatures are those of the steam tables") {
  // Keenan and Keyes, psia and F, as reprinted at armstronginternational.com. An older scale of temperature:
  // 212.00 F where today's has 211.95, so 0.1 F is allowed.
  constexpr Pair by_psia[] = {{10, 193.21}, {11, 197.75},     {12, 201.96}, {13, 205.88},
                              {14, 209.56}, {14.696, 212.00}, {16, 216.32}, {17, 219.44},
                              {20, 227.96}, {25, 240.07},     {30, 250.33}, {35, 259.28}};
  for (const auto& [pressure, printed] : by_psia) {
    const auto at = pressure;
    CAPTURE(at);
    const auto found = sure(saturation_temperature(pascals_absolute(pressure * unit::psi)));
    CHECK(std::abs(in_fahrenheit(found) - printed) < 0.1);
  }
  // engineeringtoolbox.com, water vapour saturation pressure: F and psia.
  constexpr Pair by_f[] = {{200, 11.52}, {212, 14.69}, {220, 17.19}, {240, 24.97}, {260, 35.43}};
  for (const auto& [f, printed] : by_f) {
    const auto at = f;
    CAPTURE(at);
    CHECK(psia(sure(saturation_pressure(fahrenheit(f)))) == doctest::Approx(printed).epsilon(0.0015));
  }
}

TEST_CASE("water boils where published tables say, to their rounding") {
  // Table credited to NOAA and NASA, standard sea-level pressure, in the encyclopedia's article on
  // high-altitude cooking: ft and F.
  constexpr Pair noaa[] = {{0, 212},    {500, 211.1},  {1000, 210.2}, {2000, 208.4},
                           {5000, 203}, {6000, 201.1}, {8000, 197.4}, {10000, 193.6}};
  for (const auto& [ft, f] : noaa) {
    const auto at = ft;
    CAPTURE(at);
    CHECK(std::abs(in_fahrenheit(sure(boiling_point(feet(ft)))) - f) < 0.25);
  }
  // Whole degrees of extension leaflets, and USDA Food Safety and Inspection Service for 2,000 ft.
  constexpr Pair leaflets[] = {{0, 212}, {2000, 208}, {5000, 203}, {7500, 198}, {10000, 194}};
  for (const auto& [ft, f] : leaflets) {
    const auto at = ft;
    CAPTURE(at);
    CHECK(std::abs(in_fahrenheit(sure(boiling_point(feet(ft)))) - f) < 0.6);
  }
}

TEST_CASE("a canner's steam is as hot as the home-canning publications say") {
  struct Row {
    double psig, ft, f, within;
  };
  constexpr Row rows[] = {
      {10.5, 0, 240, 0.6},   // USDA Complete Guide, Guide 1 (1994 text); University of Missouri Extension
      {10, 0, 240, 0.8},     // US Department of Agriculture, Canning, Freezing, Storing Garden Produce (1977)
      {11, 2000, 240, 0.8},  // the same: 11 lb at 2,000 ft
      {15, 0, 250, 0.6},     // Ohio State University Extension HYG-5338: 240 to 250 F at 10 to 15 psi
      {5, 0, 228, 1.0},      // older USDA bulletins (from memory): 5 lb is 228 F
  };
  for (const Row& row : rows) {
    CAPTURE(row.psig);
    CHECK(std::abs(in_fahrenheit(sure(canner_temperature({psi_gauge(row.psig), feet(row.ft)}))) - row.f) <
          row.within);
  }
  // "Add 1 lb for each further 2,000 ft": the printed dial pressures hold the steam within half a degree of
  // what 11 psi gives at 2,000 ft (USDA Complete Guide (2015), Guide 4).
  const double at_2000 = in_fahrenheit(sure(canner_temperature({psi_gauge(11), feet(2000)})));
  for (const auto& [psig, ft] : {Pair{12, 4000}, Pair{13, 6000}, Pair{14, 8000}}) {
    const auto at = ft;
    CAPTURE(at);
    CHECK(std::abs(in_fahrenheit(sure(canner_temperature({psi_gauge(psig), feet(ft)}))) - at_2000) < 0.6);
  }
}
