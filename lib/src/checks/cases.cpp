#include "checks/cases.hpp"

namespace sealworthy::checks {

Cases::Cases(std::span<const Rule* const> rules, Maker& maker, const std::vector<std::string_view>& names,
             const More& more)
    : by_case_(names.size()) {
  for (const Rule* rule : rules) {
    Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
    const unsigned cases = with.choices("case", names);
    if (cases == 0) with.sink().add(with.at(), "rule " + rule->id + ": 'with' needs a 'case'");
    for (std::size_t i = 0; i < names.size(); ++i) {
      if (((cases >> i) & 1U) != 0) by_case_[i].push_back(rule);
    }
    if (more) more(*rule, with);
    with.done();
  }
}

const Rule* Cases::find_index(std::size_t which, const reading::Reading& reading) const {
  for (const Rule* rule : by_case_[which]) {
    if (applies(rule->only_if, reading)) return rule;
  }
  return nullptr;
}

}  // namespace sealworthy::checks
