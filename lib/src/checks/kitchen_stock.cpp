#include "checks/kitchen_stock.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "checks/against_table.hpp"
#include "checks/cases.hpp"

namespace sealworthy::checks {
namespace {

using reading::Reading;

enum class Case { jars, lids_old };
const std::vector<std::string_view> case_names{"jars", "lids-old"};

bool same_size(Volume a, Volume b) {
  constexpr double rounding = 0.06;  // a litre for a quart
  return std::max(a, b) / std::min(a, b) <= 1 + rounding;
}

class KitchenStock final : public Check {
 public:
  KitchenStock(std::span<const Rule* const> rules, Maker& maker)
      : cases_(rules, maker, case_names, [this](const Rule&, Fields& with) {
          if (const auto years = with.number("years")) years_ = *years;
        }) {}

  void run(const Reading& reading, Results& results) const override {
    if (reading.kitchen == nullptr || !reading.processed()) return;
    jars(reading, results);
    lids(reading, results);
  }

 private:
  void jars(const Reading& reading, Results& results) const {
    const auto& at_hand = reading.kitchen->jars;
    const Rule* rule = cases_.find(Case::jars, reading);
    if (at_hand.empty() || rule == nullptr) return;
    std::string found;
    for (const auto& jars : at_hand) found.append(found.empty() ? "" : ", ").append(jars.jar.text);
    for (const auto& jar : reading.jars) {
      if (jar.jar == nullptr) continue;
      const bool there = std::any_of(at_hand.begin(), at_hand.end(), [&](const auto& jars) {
        return same_size(jars.jar.value.volume, jar.jar->volume);
      });
      if (there) continue;
      results.add(*rule, at_hand.front().jar.at, {{"needed", jar_words(jar)}, {"found", found}})
          .from_kitchen = true;
    }
  }

  void lids(const Reading& reading, Results& results) const {
    const auto& lids = reading.kitchen->lids;
    const Rule* rule = cases_.find(Case::lids_old, reading);
    if (!lids || !lids->bought || !reading.today || reading.recipe->lids || rule == nullptr) return;
    if (reading.today->year - lids->bought->value <= years_) return;
    results.add(*rule, lids->bought->at, {{"found", std::string(lids->bought->text)}}).from_kitchen = true;
  }

  double years_ = 0;  // filled while cases_ is made
  Cases cases_;
};

}  // namespace

std::unique_ptr<Check> make_kitchen_stock(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<KitchenStock>(rules, maker);
}

}  // namespace sealworthy::checks
