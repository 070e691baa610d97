#pragma once

/// check: kitchen-stock
/// Jars and lids at hand, as the kitchen file tells them. Findings point into the kitchen file. Words of
/// `lids:` there are judged by the rules of lid-kind.
///
/// with:
///   case: jars          the kitchen lists jars, none of the card's size
///   case: lids-old      the lids at hand were bought more than `years` years before the day (`--today`)
///   years: 5
/// {needed} the card's jars; {found} those at hand, or the year.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_kitchen_stock(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
