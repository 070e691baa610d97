#pragma once

/// check: method-against-acid-class
/// Boiling water and steam are for acid food: low-acid food, and mixtures without enough acid, want a
/// pressure canner. A matched product's own class decides; without a match (or with a doubtful one) the foods
/// do. Records no point of its own.
///
/// with:
///   case: low-acid         nothing but low-acid food, in boiling water (or a product of that class)
///         steam-low-acid   the same in a steam canner
///         mixture          low-acid food among acid food with no acid added, or too little of it
///         mixture-acid     the same with a share of acid that could be enough; untested
///   least-acid: 10         (mixture) percent of the low-acid food's weight; less counts as none
///   small-share: 10        (mixture) percent of the jar's weight up to which low-acid food is only untested
/// figures: {found} the method, {needed} {food} the low-acid food, {share}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_method_against_acid_class(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
