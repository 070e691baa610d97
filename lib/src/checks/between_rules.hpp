#pragma once

/// What the findings of one card mean for each other: no advice may stand beside a finding that rules it out.

#include <sealworthy/finding.hpp>
#include <span>
#include <string_view>
#include <vector>

#include "checks/rule.hpp"

namespace sealworthy::checks {

/// In `silent-beside:`, every rule that is `never-canned`.
constexpr std::string_view every_never_canned = "never-canned";

/// Takes out what a rule does not tell beside others (`silent-beside:`), and gives the advice of
/// `instead-if-never-canned:` where a food is never canned. `rules` in the order of their ids. Cost: a search
/// a finding.
void settle_between(std::span<const Rule> rules, std::vector<Finding>& findings);

}  // namespace sealworthy::checks
