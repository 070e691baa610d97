#pragma once

/// check: advice
/// For rules that no card can show: text for `explain`. Never gives a finding. No parameters.

#include <memory>
#include <span>

#include "checks/check.hpp"

namespace sealworthy::checks {

std::unique_ptr<Check> make_advice(std::span<const Rule* const> rules, Maker& maker);

}  // namespace sealworthy::checks
