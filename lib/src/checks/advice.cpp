#include "checks/advice.hpp"

#include "checks/fields.hpp"

namespace sealworthy::checks {
namespace {

class Advice final : public Check {
 public:
  void run(const reading::Reading& /*reading*/, Results& /*results*/) const override {}
};

}  // namespace

std::unique_ptr<Check> make_advice(std::span<const Rule* const> rules, Maker& maker) {
  for (const Rule* rule : rules) {
    Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
    with.done();
    for (const auto& example : rule->examples)
      if (example.flags)
        ErrorSink{rule->file, maker.errors}.add(example.change.at,
                                                "rule " + rule->id + ": advice never flags a card");
  }
  return std::make_unique<Advice>();
}

}  // namespace sealworthy::checks
