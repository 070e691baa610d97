#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "science/range.hpp"

namespace sealworthy::science {
namespace {

constexpr Range temperature_range{"temperature", "F", 273.15, 473.15, 1 / 1.8, 273.15 - 32 / 1.8};
constexpr Range z_range{"z", "F", 1, 60, 1 / 1.8};
constexpr double forever = std::numeric_limits<double>::max();
constexpr Range time_range{"time", "minutes", 0, forever, unit::minute};
constexpr Range decimal_range{"D", "minutes", std::numeric_limits<double>::min(), forever, unit::minute};
constexpr Range lag_range{"lag of the jar", "minutes", unit::minute, 600 * unit::minute, unit::minute};
constexpr Range j_range{"lag at the start", "times", 1, 3};

double rate(double temperature, double reference, double z) {
  return std::pow(10.0, (temperature - reference) / z);
}

std::optional<OutOfRange> check_scale(Temperature reference, TemperatureStep z) {
  if (auto error = temperature_range.check(reference.si())) return error;
  return z_range.check(z.si());
}

/// Integral of the lethal rate over a straight line between two rates; the mean of an exponential.
double over_line(double seconds, double from, double to) {
  const double ratio = to / from;
  if (std::abs(ratio - 1) < 1e-6) return seconds * (from + to) / 2;
  return seconds * (to - from) / std::log(ratio);
}

std::optional<OutOfRange> check_treatment(const HeatTreatment& treatment, const JarLag& lag) {
  for (const Temperature t : {treatment.start, treatment.around, treatment.after})
    if (auto error = temperature_range.check(t.si())) return error;
  if (auto error = time_range.check(treatment.time.si())) return error;
  for (const Duration f : {lag.heating, lag.cooling})
    if (auto error = lag_range.check(f.si())) return error;
  return j_range.check(lag.j);
}

/// Ball's exponential approach to `around`; the lag at the start must not carry it beyond the start.
double lagged(double around, double start, double j, double f, double t) {
  const double gap = (around - start) * std::min(1.0, j * std::pow(10.0, -t / f));
  return around - gap;
}

}  // namespace

Result<double> lethal_rate(Temperature temperature, Temperature reference, TemperatureStep z) {
  if (const auto error = temperature_range.check(temperature.si())) return *error;
  if (const auto error = check_scale(reference, z)) return *error;
  return rate(temperature.si(), reference.si(), z.si());
}

Result<Duration> decimal_time(const Resistance& germ, Temperature temperature) {
  if (const auto error = decimal_range.check(germ.d.si())) return *error;
  const auto counts = lethal_rate(temperature, germ.reference, germ.z);
  if (const auto* error = std::get_if<OutOfRange>(&counts)) return *error;
  return germ.d / std::get<double>(counts);
}

Result<Duration> lethality(std::span<const HeatPoint> history, Temperature reference, TemperatureStep z) {
  if (const auto error = check_scale(reference, z)) return *error;
  double total = 0;
  double before = 0;
  for (std::size_t i = 0; i < history.size(); ++i) {
    const HeatPoint& point = history[i];
    if (const auto error = temperature_range.check(point.temperature.si())) return *error;
    const double now = rate(point.temperature.si(), reference.si(), z.si());
    if (i > 0) {
      const double passed = point.at.si() - history[i - 1].at.si();
      if (const auto error = time_range.check(passed)) return *error;
      total += over_line(passed, before, now);
    }
    before = now;
  }
  return Duration::from_si(total);
}

double log_reductions(Duration f, const Resistance& germ) { return germ.d.si() > 0 ? f / germ.d : 0; }

Result<Duration> jar_lethality(const HeatTreatment& treatment, const JarLag& lag, Temperature reference,
                               TemperatureStep z) {
  if (const auto error = check_treatment(treatment, lag)) return *error;
  if (const auto error = check_scale(reference, z)) return *error;
  constexpr std::size_t steps = 48;  // a straight line between two of them is off by less than 1 % of F
  std::array<HeatPoint, 2 * steps + 1> history;
  double end = treatment.start.si();
  for (std::size_t i = 0; i <= steps; ++i) {
    const double t = treatment.time.si() * static_cast<double>(i) / steps;
    end = lagged(treatment.around.si(), treatment.start.si(), lag.j, lag.heating.si(), t);
    history[i] = {Duration::from_si(t), Temperature::from_si(end)};
  }
  for (std::size_t i = 1; i <= steps; ++i) {
    const double t =
        2 * lag.cooling.si() * static_cast<double>(i) / steps;  // then the gap to the air is a hundredth
    const double now = lagged(treatment.after.si(), end, lag.j, lag.cooling.si(), t);
    history[steps + i] = {Duration::from_si(treatment.time.si() + t), Temperature::from_si(now)};
  }
  return lethality(history, reference, z);
}

}  // namespace sealworthy::science
