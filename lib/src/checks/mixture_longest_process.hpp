#pragma once

/// check: mixture-longest-process
/// Several foods that each have a pressure process of their own in one jar, and no tested mixture that lists
/// them all: the time is at least the longest of them. Enough by that measure is still untested.
///
/// with: nothing
/// {found} and {needed} are times, {food} the food that needs the longest.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_mixture_longest_process(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
