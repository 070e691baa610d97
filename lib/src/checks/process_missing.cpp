#include "checks/process_missing.hpp"

#include "checks/fields.hpp"

namespace sealworthy::checks {
namespace {

class ProcessMissing final : public Check {
 public:
  ProcessMissing(std::span<const Rule* const> rules, Maker& maker) : rules_(rules.begin(), rules.end()) {
    for (const Rule* rule : rules)
      Fields(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors}).done();
  }

  void run(const reading::Reading& reading, Results& results) const override {
    if (reading.processed()) return;
    for (const Rule* rule : rules_)
      if (applies(rule->only_if, reading)) results.add(*rule, reading.recipe->process_or_title());
  }

 private:
  std::vector<const Rule*> rules_;
};

}  // namespace

std::unique_ptr<Check> make_process_missing(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<ProcessMissing>(rules, maker);
}

}  // namespace sealworthy::checks
