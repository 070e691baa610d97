#include "checks/between_rules.hpp"

#include <algorithm>

namespace sealworthy::checks {
namespace {

const Rule* rule_of(std::span<const Rule> rules, const Finding& finding) {
  const auto found = std::lower_bound(rules.begin(), rules.end(), finding.rule,
                                      [](const Rule& rule, std::string_view id) { return rule.id < id; });
  return found != rules.end() && found->id == finding.rule ? &*found : nullptr;
}

}  // namespace

void settle_between(std::span<const Rule> rules, std::vector<Finding>& findings) {
  std::vector<const Rule*> told;
  told.reserve(findings.size());
  for (const Finding& finding : findings) told.push_back(rule_of(rules, finding));
  const bool never = std::any_of(told.begin(), told.end(),
                                 [](const Rule* rule) { return rule != nullptr && rule->never_canned; });
  const auto is_told = [&](std::string_view id) {
    if (id == every_never_canned) return never;
    return std::any_of(told.begin(), told.end(),
                       [&](const Rule* rule) { return rule != nullptr && rule->id == id; });
  };
  const auto silent = [&](const Rule& rule) {
    return std::any_of(rule.silent_beside.begin(), rule.silent_beside.end(), is_told);
  };
  std::size_t kept = 0;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (told[i] != nullptr && silent(*told[i])) continue;
    if (never && told[i] != nullptr && !told[i]->instead_if_never_canned.empty())
      findings[i].instead = told[i]->instead_if_never_canned;
    if (kept != i) findings[kept] = std::move(findings[i]);
    ++kept;
  }
  findings.resize(kept);
}

}  // namespace sealworthy::checks
