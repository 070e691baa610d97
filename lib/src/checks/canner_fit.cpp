#include "checks/canner_fit.hpp"

#include <algorithm>

#include "checks/fields.hpp"
#include "checks/phrases.hpp"

namespace sealworthy::checks {
namespace {

using reading::Reading;

struct Entry {
  const Rule* rule;
  Phrases kind;
  double quarts_under;
};

bool by_pressure(const Reading& reading) {
  return std::any_of(reading.jars.begin(), reading.jars.end(),
                     [](const auto& jar) { return jar.method == reading::MethodKind::pressure; });
}

/// Fewer jars of a quart or more than the limit; smaller jars, or none named, tell nothing.
bool holds_fewer(const quantity::Yield& holds, double limit) {
  constexpr double quart_fl_oz = 31.9;  // a litre and a quart alike, whatever the rounding
  return holds.jar && in_us_fluid_ounces(holds.jar->volume) >= quart_fl_oz &&
         in_pieces(holds.count.high) < limit;
}

class CannerFit final : public Check {
 public:
  CannerFit(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      const auto limit = with.number("quarts-under");
      if (!limit) with.sink().add(rule->at, "rule " + rule->id + ": 'quarts-under' is missing");
      entries_.push_back({rule, Phrases(with.list("kind")), limit.value_or(0)});
      with.done();
    }
  }

  void run(const Reading& reading, Results& results) const override {
    if (reading.kitchen == nullptr || !by_pressure(reading)) return;
    for (const auto& canner : reading.kitchen->canners) {
      const text::Words kind(canner.kind.value);
      for (const auto& entry : entries_) {
        const auto* few = too_few(canner, entry.quarts_under);
        if (few != nullptr && !entry.kind.in(kind).empty() && applies(entry.rule->only_if, reading))
          results.add(*entry.rule, few->at, {{"found", std::string(few->text)}}).from_kitchen = true;
      }
    }
  }

 private:
  static const recipe::Placed<recipe::Hold>* too_few(const recipe::Canner& canner, double limit) {
    for (const auto& hold : canner.holds)
      if (hold.value.layers == 1 && holds_fewer(hold.value.jars, limit)) return &hold;
    return nullptr;
  }

  std::vector<Entry> entries_;
};

}  // namespace

std::unique_ptr<Check> make_canner_fit(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<CannerFit>(rules, maker);
}

}  // namespace sealworthy::checks
