#pragma once

/// Recipe + kitchen + options + knowledge -> Reading: one function a part, in the order below. Nothing here
/// judges; what can't be told from the card stays empty for the checks to name.

#include <optional>
#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>

#include "reading/reading.hpp"
#include "recipe/kitchen.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy::knowledge {
class Knowledge;
}

namespace sealworthy::reading {

/// What is known beside the card.
struct Settings {
  const recipe::Kitchen* kitchen = nullptr;
  std::optional<Interval<Altitude>> altitude;  ///< --altitude; wins over the kitchen's
  std::optional<recipe::Date> today;
  bool side_by_side = false;  ///< the report is to hold the card beside the formula
  std::string_view against;   ///< id of a process to compare with, whatever the card follows; "": none
};

/// The recipe, the kitchen and the knowledge must outlive the reading.
Reading build(const recipe::Recipe& recipe, const Settings& settings, const knowledge::Knowledge& knowledge);

}  // namespace sealworthy::reading
