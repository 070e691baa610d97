#pragma once

/// The stated limits of an equation, checked before it is used.

#include <optional>
#include <sealworthy/science.hpp>

namespace sealworthy::science {

struct Range {
  std::string_view what;
  std::string_view unit;
  double low, high;
  double in_unit = 1;  ///< what one of the unit is in the values' own unit
  double zero = 0;     ///< the unit's zero in the values' own unit

  /// NaN fails too.
  [[nodiscard]] std::optional<OutOfRange> check(double value) const {
    if (value >= low && value <= high) return std::nullopt;
    const auto told = [&](double v) { return (v - zero) / in_unit; };
    return OutOfRange{what, unit, told(value), told(low), told(high)};
  }
};

}  // namespace sealworthy::science
