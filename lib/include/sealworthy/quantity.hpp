#pragma once

/// Quantities of a canning recipe on Boost.Units. A type says what it is a quantity of, not only its
/// dimension: headspace, piece size and altitude are all lengths and must not mix; gauge pressure is what a
/// canner's gauge shows, absolute pressure is gauge pressure plus the air's. A wrong mix does not compile
/// (tests/unit/quantity/no_mix holds the proof). Everything is stored in SI units; the functions below are
/// the only way in and out, so a bare double never changes its unit unnoticed.

#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/time.hpp>
#include <boost/units/systems/si/volume.hpp>
#include <compare>

namespace sealworthy {

/// A Boost.Units quantity that mixes only with its own kind. Cost: one double, trivially copied; it is kept
/// as its SI value because a boost::units::quantity has a copy constructor of its own and would be passed in
/// memory.
template <class Tag, class Unit>
class Quantity {
 public:
  using Base = boost::units::quantity<Unit, double>;

  constexpr Quantity() = default;
  constexpr explicit Quantity(Base base) : si_(base.value()) {}
  [[nodiscard]] static constexpr Quantity from_si(double value) {
    Quantity quantity;
    quantity.si_ = value;
    return quantity;
  }

  /// As Boost.Units knows it, for its conversions and its products of different dimensions.
  [[nodiscard]] constexpr Base base() const { return Base::from_value(si_); }
  [[nodiscard]] constexpr double si() const { return si_; }

  friend constexpr bool operator==(const Quantity& a, const Quantity& b) { return a.si() == b.si(); }
  friend constexpr auto operator<=>(const Quantity& a, const Quantity& b) { return a.si() <=> b.si(); }
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return from_si(a.si() + b.si()); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return from_si(a.si() - b.si()); }
  friend constexpr Quantity operator*(Quantity a, double factor) { return from_si(a.si() * factor); }
  friend constexpr Quantity operator*(double factor, Quantity a) { return from_si(a.si() * factor); }
  friend constexpr Quantity operator/(Quantity a, double divisor) { return from_si(a.si() / divisor); }
  /// The ratio of two of a kind is a bare number.
  friend constexpr double operator/(Quantity a, Quantity b) { return a.si() / b.si(); }

 private:
  double si_ = 0;
};

using Mass = Quantity<struct MassTag, boost::units::si::mass>;
using Volume = Quantity<struct VolumeTag, boost::units::si::volume>;
using Headspace = Quantity<struct HeadspaceTag, boost::units::si::length>;
using PieceSize = Quantity<struct PieceSizeTag, boost::units::si::length>;
using Altitude = Quantity<struct AltitudeTag, boost::units::si::length>;
using GaugePressure = Quantity<struct GaugePressureTag, boost::units::si::pressure>;
using AbsolutePressure = Quantity<struct AbsolutePressureTag, boost::units::si::pressure>;
/// Thermodynamic temperature (kelvin inside).
using Temperature = Quantity<struct TemperatureTag, boost::units::si::temperature>;
using Duration = Quantity<struct DurationTag, boost::units::si::time>;
/// A number of things: 6 onions, 2 cloves, 1 can.
using Count = Quantity<struct CountTag, boost::units::si::dimensionless>;

// Exact definitions: NIST Handbook 44 Appendix C / NIST SP 811; US gallon 231 in^3, lb 0.45359237 kg,
// inch 25.4 mm.
namespace unit {
inline constexpr double gram = 1e-3;                         // kg
inline constexpr double pound = 0.45359237;                  // kg
inline constexpr double ounce = pound / 16;                  // kg
inline constexpr double millilitre = 1e-6;                   // m^3
inline constexpr double us_gallon = 231 * 16.387064e-6;      // m^3
inline constexpr double us_cup = us_gallon / 16;             // m^3
inline constexpr double us_bushel = 2150.42 * 16.387064e-6;  // m^3
inline constexpr double imperial_gallon = 4.54609e-3;        // m^3, Weights and Measures Act 1985
inline constexpr double inch = 0.0254;                       // m
inline constexpr double foot = 0.3048;                       // m
inline constexpr double psi = 6894.757293168361;             // Pa
inline constexpr double minute = 60.0;                       // s
}  // namespace unit

constexpr Mass grams(double v) { return Mass::from_si(v * unit::gram); }
constexpr Mass pounds(double v) { return Mass::from_si(v * unit::pound); }
constexpr double in_grams(Mass m) { return m.si() / unit::gram; }
constexpr double in_pounds(Mass m) { return m.si() / unit::pound; }

constexpr Volume millilitres(double v) { return Volume::from_si(v * unit::millilitre); }
constexpr Volume us_cups(double v) { return Volume::from_si(v * unit::us_cup); }
constexpr double in_millilitres(Volume v) { return v.si() / unit::millilitre; }
constexpr double in_us_cups(Volume v) { return v.si() / unit::us_cup; }
/// US fluid ounces, in which jar sizes are told.
constexpr Volume us_fluid_ounces(double v) { return us_cups(v / 8); }
constexpr double in_us_fluid_ounces(Volume v) { return in_us_cups(v) * 8; }

constexpr Headspace headspace_inches(double v) { return Headspace::from_si(v * unit::inch); }
constexpr double in_inches(Headspace h) { return h.si() / unit::inch; }
constexpr PieceSize piece_inches(double v) { return PieceSize::from_si(v * unit::inch); }
constexpr double in_inches(PieceSize p) { return p.si() / unit::inch; }

constexpr Altitude feet(double v) { return Altitude::from_si(v * unit::foot); }
constexpr Altitude metres(double v) { return Altitude::from_si(v); }
constexpr double in_feet(Altitude a) { return a.si() / unit::foot; }
constexpr double in_metres(Altitude a) { return a.si(); }

constexpr GaugePressure psi_gauge(double v) { return GaugePressure::from_si(v * unit::psi); }
constexpr double in_psi(GaugePressure p) { return p.si() / unit::psi; }
constexpr AbsolutePressure pascals_absolute(double v) { return AbsolutePressure::from_si(v); }
constexpr double in_pascals(AbsolutePressure p) { return p.si(); }
/// The one way from gauge to absolute: add the pressure of the air at that place.
constexpr AbsolutePressure absolute(GaugePressure gauge, AbsolutePressure air) {
  return AbsolutePressure::from_si(gauge.si() + air.si());
}

constexpr Temperature celsius(double v) { return Temperature::from_si(v + 273.15); }
constexpr Temperature fahrenheit(double v) { return celsius((v - 32) / 1.8); }
constexpr double in_celsius(Temperature t) { return t.si() - 273.15; }
constexpr double in_fahrenheit(Temperature t) { return in_celsius(t) * 1.8 + 32; }

constexpr Duration minutes(double v) { return Duration::from_si(v * unit::minute); }
constexpr Duration hours(double v) { return minutes(v * 60); }
constexpr double in_minutes(Duration d) { return d.si() / unit::minute; }

constexpr Count count(double v) { return Count::from_si(v); }
constexpr double in_pieces(Count c) { return c.si(); }

}  // namespace sealworthy
