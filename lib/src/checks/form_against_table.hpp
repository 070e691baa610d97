#pragma once

/// check: form-against-table
/// The form of the food against the form that the matched product was tested in. Records the point `form`:
/// differs where a rule of this check speaks, unknown where the match is in doubt, assumed where ordinary
/// preparation (peeling, coring, trimming) is not told, else held. What is taken for granted is added to what
/// a tested card rests on.
///
/// with:
///   case: undone       the product takes for granted that the food is `done`, the line says one of `states`
///         piece-over   a piece is larger than the product's limit for its form
///   states: [unpeeled]
///   done: peeled
/// {found}, {needed}; {food} as the card has it.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_form_against_table(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
