#pragma once

/// check: gauge-test-due
/// When the kitchen's dial gauge was last tested, for cards that may be canned with it: by pressure and not
/// said to be by weighted gauge. Needs the day (`--today`); without it no age is judged. Findings point into
/// the kitchen file.
///
/// with:
///   untested: yes             the kitchen gives no date
///   older-than-days: 366      the test is older than this ...
///   up-to-days: 1096          ... and no older than this
/// {found} is the date of the test.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_gauge_test_due(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
