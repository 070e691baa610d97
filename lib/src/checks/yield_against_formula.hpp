#pragma once

/// check: yield-against-formula
/// What a card says that it makes beside what its tested formula fills at the card's batch size.
///
/// with:
///   times: 2              told from here on: so many times more, or fewer, than the formula's own range
/// Silent where the card does not say what it makes or of which jar, or where the formula tells no yield.
/// {found} is what the card says, {needed} the formula's yield at its size ("about 9 pints"), {factor} how
/// many times the published batch the card is.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_yield_against_formula(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
