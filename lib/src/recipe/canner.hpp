#pragma once

/// Reading `canners:` of a kitchen file.

#include "recipe/fields.hpp"
#include "recipe/kitchen.hpp"

namespace sealworthy::recipe {

std::vector<Canner> read_canners(const yaml::Entry& entry, Context& context);
/// "11 inches", "28 cm"; `example` for the suggestion.
Placed<VesselSize> read_vessel_size(const yaml::Entry& entry, std::string_view example);

}  // namespace sealworthy::recipe
