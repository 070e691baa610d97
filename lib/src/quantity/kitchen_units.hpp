#pragma once

/// The measures of a kitchen: what one of each is.

#include <cstdint>
#include <sealworthy/interval.hpp>
#include <string_view>

#include "quantity/amount.hpp"

namespace sealworthy::quantity {

enum class Kind : std::uint8_t {
  mass,       ///< kg
  volume,     ///< m^3
  piece,      ///< clove, head, slice: a count
  package,    ///< can, jar, box: a count of things that hold something
  dozen,      ///< a count of twelve
  imprecise,  ///< pinch, dash: no figure can be given
};

struct Unit {
  std::string_view name;  ///< canonical
  Kind kind = Kind::piece;
  double us = 1;        ///< SI value of one in a US kitchen
  double imperial = 1;  ///< in a British kitchen
  double metric = 1;    ///< in a metric kitchen; 0: not fixed there, anything from `us` to `imperial`
  bool metric_system = false;

  /// SI value of one.
  [[nodiscard]] constexpr Interval<double> one(Units units) const {
    if (units == Units::us) return {us, us};
    if (units == Units::imperial) return {imperial, imperial};
    if (metric != 0) return {metric, metric};
    return us < imperial ? Interval<double>{us, imperial} : Interval<double>{imperial, us};
  }
  [[nodiscard]] constexpr bool measures() const { return kind == Kind::mass || kind == Kind::volume; }
  [[nodiscard]] constexpr bool counts() const { return kind == Kind::piece || kind == Kind::package; }
};

/// The unit with this canonical name; nullptr if there is none. Linear: for set-up, not for every line.
const Unit* unit_named(std::string_view name);

}  // namespace sealworthy::quantity
