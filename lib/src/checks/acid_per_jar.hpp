#pragma once

/// check: acid-per-jar
/// Where the matched product asks for acid in each jar: is any one of its choices there, in full, in every
/// size of the card? Acid given for the batch is divided by `makes`. Which bottle it comes from and how
/// strong it is is told by acid-kind. Records the point `acid` for such products.
///
/// with:
///   case: none              no acid in the jar
///         too-little        less than the least choice
///         vinegar           the same, where the acid is vinegar
///         batch             for the batch, and enough when divided by `makes`
///         batch-unknown     for the batch, and the card does not say how many jars it makes
///         mixed             parts of several choices that only together come up to one
///         smaller-jar       for a jar smaller than the source doses: the dose scaled down, not the next
///         larger's
///   counts-as: {lemon-juice-bottled: [lemon-juice-fresh]}   acids that are dosed as a listed one is; never
///   held
/// figures: {found} {needed} {jar} {product}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_acid_per_jar(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
