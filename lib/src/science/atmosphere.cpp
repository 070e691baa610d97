#include <cmath>

#include "science/range.hpp"

namespace sealworthy::science {
namespace {

// US Standard Atmosphere 1976, with its own gas constant.
constexpr double p0 = 101325;             // Pa
constexpr double t0 = 288.15;             // K
constexpr double lapse = 0.0065;          // K per geopotential metre
constexpr double earth_radius = 6356766;  // m
constexpr double exponent = 9.80665 * 28.9644 / (8314.32 * lapse);

constexpr double lowest = -5000;  // m; the standard's tables begin here
constexpr double top = 11000;     // m; the end of the layer
constexpr Range height_range{"altitude", "ft", lowest, top, unit::foot};
constexpr Range weather_range{"sea-level pressure", "hPa", 87000, 108500, 100};

constexpr double geopotential_of(double z) { return earth_radius * z / (earth_radius + z); }
constexpr double geometric_of(double h) { return earth_radius * h / (earth_radius - h); }
constexpr Range altitude_range{"altitude", "ft", geometric_of(lowest), geometric_of(top), unit::foot};

}  // namespace

Result<GeopotentialHeight> geopotential(Altitude geometric) {
  if (const auto error = altitude_range.check(geometric.si())) return *error;
  return GeopotentialHeight::from_si(geopotential_of(geometric.si()));
}

Result<Altitude> geometric(GeopotentialHeight height) {
  if (const auto error = height_range.check(height.si())) return *error;
  return Altitude::from_si(geometric_of(height.si()));
}

Result<AbsolutePressure> air_pressure(GeopotentialHeight height, const Weather& weather) {
  if (const auto error = height_range.check(height.si())) return *error;
  if (const auto error = weather_range.check(in_pascals(weather.at_sea_level))) return *error;
  const double standard = std::pow(1 - lapse * height.si() / t0, exponent);
  return weather.at_sea_level * standard;
}

Result<AbsolutePressure> air_pressure(Altitude altitude, const Weather& weather) {
  if (const auto error = altitude_range.check(altitude.si())) return *error;
  return air_pressure(GeopotentialHeight::from_si(geopotential_of(altitude.si())), weather);
}

Result<Temperature> air_temperature(GeopotentialHeight height) {
  if (const auto error = height_range.check(height.si())) return *error;
  return Temperature::from_si(t0 - lapse * height.si());
}

static_assert(p0 == Weather{}.at_sea_level.si());

}  // namespace sealworthy::science
