#pragma once

/// Every word that means something in an amount, and what it means. One hash look-up a word.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "quantity/kitchen_units.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {

enum class Role : std::uint8_t {
  none,
  unit,      ///< a spelling of `unit`
  number,    ///< "three": `value`
  article,   ///< "a", "an": one, where a unit or a thing follows
  fraction,  ///< "half", "thirds": one of `value` parts
  size,      ///< "small", "med": `size`
  modifier,  ///< "level", "thick": changes nothing that is measured
  about,     ///< "scant", "heaping", "about": makes the figure inexact
  lead,      ///< begins a phrase before a figure: "up to", "at least", "between"
  joint,     ///< "to", "or", "plus", "and", "minus": another figure may follow
};

struct Meaning {
  Role role = Role::none;
  double value = 0;
  const Unit* unit = nullptr;
  std::string_view size;
};

/// What a word means; Role::none where nothing.
const Meaning& meaning(const Letters& word);

struct UnitMatch {
  const Unit* unit = nullptr;
  std::size_t begin = 0;
  std::size_t end = 0;        ///< past "(s)" and an abbreviation's full stop
  std::optional<Units> said;  ///< "imperial pint", "US cup": overrides the card's units
};

/// The unit that is spelled at `at`: "cups", "Tbsp.", "T" (tablespoon), "t" (teaspoon), "fl. oz.", "fluid
/// ounces", "half-pint", "imperial pint", "pound(s)", "#". `glued`: a figure stands right before, so a
/// measure may run into the next word ("10cupspickling").
std::optional<UnitMatch> unit_at(std::string_view text, std::size_t at, bool glued = false);

}  // namespace sealworthy::quantity
