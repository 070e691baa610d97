#pragma once

/// check: headspace-against-table
/// Headspace against the product's own figure, within one eighth inch or a quarter of the figure, whichever
/// is less (common practice). Where the product has a figure for a part (small beans, solids, liquid) the
/// part that the card names counts, else any. Records the point `headspace`.
///
/// with:
///   case: too-little   less than asked
///         far-too-little   under half of what is asked
///         too-much
///         unsaid
/// figures: {found} {needed} {jar} {product}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_headspace_against_table(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
