#include <cmath>

#include "science/range.hpp"

namespace sealworthy::science {
namespace {

// IAPWS R7-97(2012), table 34; pressures in MPa, temperatures in K.
constexpr double n1 = 0.11670521452767e4, n2 = -0.72421316703206e6, n3 = -0.17073846940092e2,
                 n4 = 0.12020824702470e5, n5 = -0.32325550322333e7, n6 = 0.14915108613530e2,
                 n7 = -0.48232657361591e4, n8 = 0.40511340542057e6, n9 = -0.23855557567849,
                 n10 = 0.65017534844798e3;
constexpr double megapascal = 1e6;

constexpr Range temperature_range{"temperature", "F", 273.15, 647.096, 1 / 1.8, 273.15 - 32 / 1.8};
constexpr Range pressure_range{"steam pressure", "kPa", 611.213, 22.064e6, 1000};
constexpr Range shown_range{"gauge pressure", "psi", 0, 30 * unit::psi, unit::psi};
constexpr Range gauge_error_range{"error of the gauge", "psi", -10 * unit::psi, 10 * unit::psi, unit::psi};
constexpr Range air_range{"share of air", "%", 0, 0.9, 0.01};

}  // namespace

Result<AbsolutePressure> saturation_pressure(Temperature temperature) {
  if (const auto error = temperature_range.check(temperature.si())) return *error;
  const double t = temperature.si();
  const double theta = t + n9 / (t - n10);
  const double a = theta * theta + n1 * theta + n2;
  const double b = n3 * theta * theta + n4 * theta + n5;
  const double c = n6 * theta * theta + n7 * theta + n8;
  const double root = 2 * c / (-b + std::sqrt(b * b - 4 * a * c));
  return pascals_absolute(root * root * root * root * megapascal);
}

Result<Temperature> saturation_temperature(AbsolutePressure pressure) {
  if (const auto error = pressure_range.check(in_pascals(pressure))) return *error;
  const double beta = std::sqrt(std::sqrt(in_pascals(pressure) / megapascal));
  const double e = beta * beta + n3 * beta + n6;
  const double f = n1 * beta * beta + n4 * beta + n7;
  const double g = n2 * beta * beta + n5 * beta + n8;
  const double d = 2 * g / (-f - std::sqrt(f * f - 4 * e * g));
  const double sum = n10 + d;
  return Temperature::from_si((sum - std::sqrt(sum * sum - 4 * (n9 + n10 * d))) / 2);
}

Result<Temperature> boiling_point(Altitude altitude, const Weather& weather) {
  const auto air = air_pressure(altitude, weather);
  if (const auto* error = std::get_if<OutOfRange>(&air)) return *error;
  return saturation_temperature(std::get<AbsolutePressure>(air));
}

Result<Temperature> canner_temperature(const Canner& canner) {
  if (const auto error = shown_range.check(canner.shown.si())) return *error;
  if (const auto error = gauge_error_range.check(canner.reads_high.si())) return *error;
  if (const auto error = air_range.check(canner.air)) return *error;
  const auto air = air_pressure(canner.altitude, canner.weather);
  if (const auto* error = std::get_if<OutOfRange>(&air)) return *error;
  const AbsolutePressure all = absolute(canner.shown - canner.reads_high, std::get<AbsolutePressure>(air));
  return saturation_temperature(all * (1 - canner.air));
}

Result<GaugePressure> gauge_for(Temperature temperature, Altitude altitude, const Weather& weather) {
  const auto air = air_pressure(altitude, weather);
  if (const auto* error = std::get_if<OutOfRange>(&air)) return *error;
  const auto steam = saturation_pressure(temperature);
  if (const auto* error = std::get_if<OutOfRange>(&steam)) return *error;
  const double gauge =
      in_pascals(std::get<AbsolutePressure>(steam)) - in_pascals(std::get<AbsolutePressure>(air));
  if (const auto error = shown_range.check(gauge)) return *error;
  return GaugePressure::from_si(gauge);
}

}  // namespace sealworthy::science
