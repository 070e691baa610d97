#pragma once

/// check: form-against-formula
/// What has been done to each ingredient against the line of the tested formula that it stands for: pureed
/// where the formula chops, raw where it cooks. What the card leaves unsaid is taken as the formula has it.
/// Records the point `form` as differing where a rule speaks; speaks of sure matches only.
///
/// with:
///   published: [chopped, diced]   the formula's line says one of these ...
///   not-published: [kernel]       and none of these
///   card: [pureed, mashed]        ... the card's line one of these, and the formula's none of them
///   unless: [cooked]              and none of these stands on the card
/// figures: {food} as the card has it, {found}, {needed}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_form_against_formula(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
