#pragma once

/// check: sterile-jars
/// Where the product asks for jars boiled empty when the process is short: the boil is taken for granted
/// unless the steps tell it, and added to what a tested card rests on. What the steps say against it is told
/// by practice-in-steps.
///
/// with:
///   under: 10            minutes of process below which jars are boiled empty
///   minutes: 10          how long, up to `up-to-feet`, and `more-each` minutes for each full `each-feet`
///   above it up-to-feet: 1000 more-each: 1 each-feet: 1000 told: [...]          words of the steps that tell
///   the boil assume: "..."        the text for what a tested card rests on; {needed} is the time

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_sterile_jars(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
