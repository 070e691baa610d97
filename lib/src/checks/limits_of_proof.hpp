#pragma once

/// check: limits-of-proof
/// What keeps a card from `tested` although nothing may be wrong with it. No points.
///
/// with:
///   case: kept-cold     meant for the refrigerator or freezer: nothing published is compared with
///         from-memory   a figure that the card was compared with was entered from memory
///         bodies-differ the product is one on which the publishing bodies disagree
/// figures: {found} {reason} {product}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_limits_of_proof(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
