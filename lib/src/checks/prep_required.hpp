#pragma once

/// check: prep-required
/// Steps that the matched product rests on (a soak, a boil, a ferment) and whether the card tells them. What
/// is told by nothing is taken for granted and added to what a tested card rests on; for work of days that a
/// rule names (fermenting, curing) silence leaves the point `form` unknown. What the steps say against it is
/// told by practice-in-steps.
///
/// with:
///   foods: [pickling-lime]   an ingredient brings the work with it, whatever the product; {food} is its name
///
///   begun: [lime]            words of the steps that begin it: the point `form` is unknown until it is told
///
///   assume: "..."            what a tested card rests on where the steps say nothing of it
///
/// or
///   verb: ferment            a required step that begins with this verb ...
///   told: [ferment, ...]     ... and none of these is in the steps
/// {needed} is the required step.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_prep_required(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
