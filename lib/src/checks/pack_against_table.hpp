#pragma once

/// check: pack-against-table
/// Hot or raw pack is one that the matched product's tables list for this jar. Records the point `pack`. The
/// time of the other pack is told by time-against-table.
///
/// with:
///   case: raw-not-tabled   raw pack where the tables list only hot
///         hot-not-tabled   hot pack where they list only raw
///         unsaid-one       the card names no pack and only one is listed
///         unsaid-differ    the card names no pack and the two differ in time or pressure
///         raw              raw pack that is listed
/// figures: {found} {needed} {jar} {product}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_pack_against_table(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
