#pragma once

/// check: gauge-error
/// The error that a test found on the kitchen's dial gauge, for cards that may be canned with it. Findings
/// point into the kitchen file.
///
/// with:
///   reads: high | low
///   over: 2 psi           the gauge is off by more than this ...
///   up-to: 2 psi          ... or by no more: then only where the card's pressure is not raised for it
/// {found} is the error ("1 psi"), {needed} the pressure that the dial must show, where the table tells one.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_gauge_error(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
