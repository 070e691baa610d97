#pragma once

/// check: liquid-required
/// Covering liquid where the matched product asks for it, and none where it asks for none. Mixtures with a
/// formula are left to their amounts. What the steps say against it is told by practice-in-steps; silence
/// alone is no hazard.
///
/// with:
///   case: untold       the product covers its food; neither a line nor a step of the card names a liquid
///         added        the product adds none to this pack; a line does
///   liquids: [...]     foods that cover
///   words: [...]       (untold) words of the steps that tell a liquid
/// {needed} is the product's covering, {food} the liquid found.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_liquid_required(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
