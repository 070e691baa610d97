#pragma once

/// check: amounts-against-formula
/// The card's amounts beside the published ones of the matched formula, at the card's batch size. What is
/// plainly unsafe (less acid, more low-acid food) is told as such; whatever else differs leaves the card
/// unproven. Dry spice and salt that is only flavor may vary. Records the point `amounts`, and `acid` for
/// products whose acid is part of the formula.
///
/// with:
///   case: acid-less         less acid than the formula, or none
///         low-acid-more     more of a low-acid food
///         low-acid-added    a low-acid food that the formula has not
///         low-acid-less     less of a low-acid food, or none
///         salt-less         less salt
///         sugar-less        less sugar
///         differs           any other amount
///         missing           any other ingredient that is not there
///         added             any other ingredient that the formula has not
///         unknown           an amount that can't be compared
/// figures: {found} {needed} {food} {percent} {reason} {product}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_amounts_against_formula(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
