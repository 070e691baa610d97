#pragma once

/// check: directions-clear
/// A place of a published recipe's directions that can be read in more than one way, or figures that it asks
/// the cook to work out. Fills {words} and {reason}. Such a recipe is never `tested` (checks/verdict.hpp).
///
/// with: nothing.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_directions_clear(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
