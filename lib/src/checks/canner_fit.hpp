#pragma once

/// check: canner-fit
/// Whether a pressure canner of the kitchen is large enough to be one, for cards that are pressure-canned.
/// Findings point into the kitchen file.
///
/// with:
///   kind: [pressure]       words of the canner's kind
///   quarts-under: 4        it holds fewer quart jars (or larger) than this; what it holds in smaller jars
///   tells nothing
/// {found} is what it holds, as written.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_canner_fit(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
