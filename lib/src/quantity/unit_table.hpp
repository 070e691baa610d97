#pragma once

/// The measures of a kitchen and what one of each is, as a table.

#include <cstddef>
#include <cstdint>
#include <optional>
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
  [[nodiscard]] Interval<double> one(Units units) const;
};

struct UnitMatch {
  const Unit* unit = nullptr;
  std::size_t begin = 0;
  std::size_t end = 0;        ///< past an abbreviation's full stop
  std::optional<Units> said;  ///< "imperial pint", "US cup": overrides the card's units
};

/// The unit that is spelled at `at`: "cups", "Tbsp.", "T" (tablespoon), "t" (teaspoon), "fl. oz.", "fluid
/// ounces", "half-pint", "imperial pint", "pound(s)", "#". `glued`: a figure stands right before, so a unit
/// may run into the next word ("10cupspickling"). Cost: one binary search a word.
std::optional<UnitMatch> unit_at(std::string_view text, std::size_t at, bool glued = false);

/// The unit with this canonical name; nullptr if there is none.
const Unit* unit_named(std::string_view name);

}  // namespace sealworthy::quantity
