#pragma once

/// check: method-not-accepted
/// A way of heating that is no canning method for any food, from `process.method`. Records the point `method`
/// as different.
///
/// with:
///   methods: [oven, ...]   ids of rules/methods.yaml
///   only: [kind:grain]     in the jar is nothing but these and neutral foods
///   not-only: [...]        in the jar is something else than these and neutral foods
/// {found} is the method in words.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_method_not_accepted(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
