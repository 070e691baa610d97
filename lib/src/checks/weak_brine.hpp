#pragma once

/// check: weak-brine
/// Vinegar or bottled juice against the water beside it, where no tested formula is followed and most of the
/// jar is low-acid food: less acid to a part of water than in any published formula of that food. Records no
/// point. Silent where an acid or the water has no amount, and for a ferment.
///
/// with:
///   slack: 5     percent below the published proportion that still counts as equal
/// figures: {found} {needed} percent of five-percent acid in acid and water together, {food}, {product} whose
/// brine is the weakest

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_weak_brine(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
