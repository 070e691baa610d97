#pragma once

/// check: jar-limit
/// Jar size against the sizes that the matched product's tables list: a smaller jar takes the next larger
/// one's figures, a larger one has none. Records the point `jar`.
///
/// with:
///   case: larger         larger than every size listed for the method
///         between        between two usual sizes, and the larger of the two is not listed
///         half-gallon    at least `from: half-gallon`, where the product lists no such jar or nothing is
///         matched metric         500 ml or 1 litre, taken as pint or quart unsaid         the card names no
///         jar
/// figures: {found} {needed} the largest size listed, {sizes} all of them, {product}

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_jar_limit(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
