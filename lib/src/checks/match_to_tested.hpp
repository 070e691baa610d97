#pragma once

/// check: match-to-tested
/// Does the card follow a tested process at all? What it can't be compared with stays unproven, and is told.
/// Records the point `food`.
///
/// with:
///   case (or a list of them):
///         none             no tested process is near
///         doubtful         one is near, but something speaks against it; {reason} says what
///         several          more than one fits as well
///         next             another is nearly as near; {needed} is that one, {found} the nearest
///         follows-unknown  `follows:` names no tested process
///         unknown-food     a line names something that the catalogue does not know; told for each line
///   title: [...]           the title says one of these
///   not-title: [...]       it says none of these
/// {found} is what the card says, {needed} the nearest product.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_match_to_tested(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
