#pragma once

/// How near a product is to a card, as matching weighs it.

#include <cstddef>

#include "reading/match_compared.hpp"
#include "reading/match_tally.hpp"

namespace sealworthy::reading {

/// What one difference weighs in distance().
inline constexpr int one_difference = 4;
/// How many formulas are tried for a harmless change.
inline constexpr std::size_t few = 5;

/// Near enough to be told as the nearest tested product.
bool near(const Candidate& candidate);
/// A dish or a mixture (soup) that the card does not say it is.
bool unnamed_dish(const Candidate& candidate);
/// What speaks against a candidate, weighed: less is nearer.
int distance(const Candidate& candidate);
/// The least distance of one with so many differences that the title does not name.
int least_distance(int differences);
/// True if a harmless change may make the card one of this formula.
bool changeable_formula(const Candidate& candidate);
/// True for a ferment where the card has more acid than that: it is a pickle.
bool pickled(const tested::Product& product, Comparisons& comparisons);

}  // namespace sealworthy::reading
