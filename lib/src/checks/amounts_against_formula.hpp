#pragma once

/// check: amounts-against-formula
/// The card's amounts beside the published ones of the matched formula, at the card's batch size. What is
/// plainly unsafe (less acid, more low-acid food) is told as such; whatever else differs leaves the card
/// unproven. Dry spice and salt that is only flavor may vary. Records the point `amounts`, and `acid` for
/// products whose acid is part of the formula.
///
/// with:
///   case: acid-less         less acid than the formula, or none
///         acid-weak         a vinegar weaker than the formula's
///         acid-more         more of it, where no publication allows that
///         low-acid-more     more of a low-acid food
///         low-acid-added    a low-acid food that the formula has not
///         low-acid-less     less of a low-acid food, or none
///         water-more        more water in a formula that rests on an acid
///         water-added       water in such a formula that has none
///         water-unsaid      ... without an amount: it may not be meant for the jar
///         fat-more          more fat
///         thickener-more    more starch or flour
///         salt-less         less salt
///         salt-more         more salt
///         sugar-less        less sugar
///         allowed           a change that rules/changes.yaml judges harmless; its `says` and source are told
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
