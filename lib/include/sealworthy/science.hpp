#pragma once

/// Air, steam and heat kill: what altitude, pressure and minutes do inside a canner.
///
///   const auto boils = sealworthy::science::boiling_point(sealworthy::feet(5280));
///   if (const auto* at = std::get_if<sealworthy::Temperature>(&boils)) ... in_fahrenheit(*at) ...
///
/// These functions explain a finding or raise an alarm; they clear no recipe, and no process time may be
/// taken from them. They are plain: no state, no allocation, well under a microsecond each. A value outside
/// the range that an equation is stated for comes back as OutOfRange, never extrapolated; NaN is out of every
/// range. Gauge and absolute pressure are different types (quantity.hpp).
///
/// Sources
///   air    US Standard Atmosphere 1976 (NOAA, NASA, USAF), troposphere; the same as ISO 2533:1975
///   steam  IAPWS R7-97(2012), Industrial Formulation 1997, region 4 (saturation), ITS-90
///   heat   log-linear death: Bigelow's general method, as food-process textbooks have it

#include <optional>
#include <sealworthy/quantity.hpp>
#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace sealworthy::science {

/// A value outside the range for which an equation holds, in the unit that `unit` names.
struct OutOfRange {
  std::string_view what;  ///< "altitude"
  std::string_view unit;  ///< "ft"
  double given = 0, low = 0, high = 0;
};
/// "altitude of 60,000 ft is outside -16,391 to 36,152 ft"
std::string words(const OutOfRange& error);

template <class T>
using Result = std::variant<T, OutOfRange>;
/// The value, or nullopt where it was out of range.
template <class T>
std::optional<T> value_of(const Result<T>& result) {
  const T* value = std::get_if<T>(&result);
  return value == nullptr ? std::nullopt : std::optional<T>(*value);
}

// ---- Air --------------------------------------------------------------------------------------------------

/// Height in metres of equal work against gravity. At 10,000 ft it is 4.8 ft less than the altitude.
using GeopotentialHeight = Quantity<struct GeopotentialHeightTag, boost::units::si::length>;

/// H = r Z / (r + Z), r = 6,356,766 m. Range as air_pressure's.
Result<GeopotentialHeight> geopotential(Altitude geometric);
/// Z = r H / (r - H).
Result<Altitude> geometric(GeopotentialHeight height);

/// What the weather does to the air: its pressure reduced to sea level, as forecasts give it. 980 to 1,050
/// hPa are common; the standard is 1,013.25 hPa.
struct Weather {
  AbsolutePressure at_sea_level = pascals_absolute(101325);
};

/// p = p0 (1 - L H / T0) ^ 5.255876. Range: -5,000 to 11,000 m of geopotential height; weather from 870 to
/// 1,085 hPa, the lowest and highest ever seen, by which the standard pressure is scaled.
Result<AbsolutePressure> air_pressure(GeopotentialHeight height, const Weather& weather = {});
Result<AbsolutePressure> air_pressure(Altitude altitude, const Weather& weather = {});
/// T = T0 - L H. Same range.
Result<Temperature> air_temperature(GeopotentialHeight height);

// ---- Steam ------------------------------------------------------------------------------------------------

/// Pressure of steam over boiling water. Range: 273.15 to 647.096 K. IF97 equation 30.
Result<AbsolutePressure> saturation_pressure(Temperature temperature);
/// Its exact inverse, IF97 equation 31. Range: 611.213 Pa to 22.064 MPa.
Result<Temperature> saturation_temperature(AbsolutePressure pressure);

/// Where water boils in an open pot.
Result<Temperature> boiling_point(Altitude altitude, const Weather& weather = {});

/// A closed pressure canner.
struct Canner {
  GaugePressure shown;         ///< what the gauge shows, 0 to 30 psi
  Altitude altitude;           ///< where it stands
  GaugePressure reads_high{};  ///< what the gauge shows too much; negative: too little. -10 to 10 psi
  double air = 0;              ///< share of air in the steam by volume, 0 (vented 10 minutes) to 0.9
  Weather weather{};
};
/// Temperature of the steam: saturation at the partial pressure (1 - air) (gauge + air pressure), after
/// Dalton's law. Air that stays in a canner that was not vented takes its part of the pressure, so that the
/// steam is cooler than the gauge tells.
Result<Temperature> canner_temperature(const Canner& canner);
/// The reading of a right gauge at which pure steam has a temperature. Out of range where the temperature is
/// below the boiling point there.
Result<GaugePressure> gauge_for(Temperature temperature, Altitude altitude, const Weather& weather = {});

// ---- Heat kill --------------------------------------------------------------------------------------------

/// A step of temperature, not a temperature: z = 18 F = 10 K.
using TemperatureStep = Quantity<struct TemperatureStepTag, boost::units::si::temperature>;
constexpr TemperatureStep step_celsius(double v) { return TemperatureStep::from_si(v); }
constexpr TemperatureStep step_fahrenheit(double v) { return step_celsius(v / 1.8); }
constexpr double in_celsius(TemperatureStep step) { return step.si(); }
constexpr double in_fahrenheit(TemperatureStep step) { return step.si() * 1.8; }

/// A germ's resistance to heat. Values with their sources stand in rules/science/heat.yaml.
struct Resistance {
  Temperature reference;  ///< "250 F"
  TemperatureStep z;      ///< a step up by z kills ten times as fast; 1 to 60 K
  Duration d;             ///< at the reference, leaves one germ in ten; above 0
};

/// How much a minute at `temperature` counts at the reference: 10 ^ ((T - reference) / z). Range: 0 to 200 C.
Result<double> lethal_rate(Temperature temperature, Temperature reference, TemperatureStep z);
/// The D value at another temperature.
Result<Duration> decimal_time(const Resistance& germ, Temperature temperature);

struct HeatPoint {
  Duration at;
  Temperature temperature;
};
/// F: the minutes at the reference temperature that a history counts for, temperatures between its points
/// taken as straight lines and integrated exactly. Fewer than two points count for nothing. Times must not
/// go back. Cost: two exponentials a point.
Result<Duration> lethality(std::span<const HeatPoint> history, Temperature reference, TemperatureStep z);
/// Powers of ten by which germs are reduced by F minutes at the reference.
double log_reductions(Duration f, const Resistance& germ);

/// How the slowest spot of a jar follows what is around it. Ball's exponential lag: after a time t,
/// T = around - j (around - start) 10 ^ (-t / f), but never beyond the start. A model for comparing two
/// processes of one jar; real jars differ widely, so its minutes are not a process.
struct JarLag {
  Duration heating;  ///< f of heating: in this time the gap falls to a tenth
  Duration cooling;  ///< f of cooling
  double j = 1;      ///< lag at the start; 1 to 3
};
struct HeatTreatment {
  Temperature start;   ///< of the food when the minutes begin to count
  Temperature around;  ///< of the water or steam
  Duration time;       ///< as the card says
  Temperature after;   ///< of the air in which the jars cool
};
/// F of the slowest spot, heating and cooling together.
Result<Duration> jar_lethality(const HeatTreatment& treatment, const JarLag& lag, Temperature reference,
                               TemperatureStep z);

}  // namespace sealworthy::science
