#include "checks/limits_of_proof.hpp"

#include <string>
#include <vector>

#include "checks/cases.hpp"
#include "checks/verdict.hpp"

namespace sealworthy::checks {
namespace {

using reading::Keep;
using reading::Reading;

enum class Case { kept_cold, from_memory, bodies_differ };
const std::vector<std::string_view> case_names{"kept-cold", "from-memory", "bodies-differ"};

class LimitsOfProof final : public Check {
 public:
  LimitsOfProof(std::span<const Rule* const> rules, Maker& maker) : cases_(rules, maker, case_names) {}

  void run(const Reading& reading, Results& results) const override {
    if (reading.keep != Keep::shelf) {
      const char* where = reading.keep == Keep::freezer ? "freezer" : "refrigerator";
      tell(Case::kept_cold, reading, reading.keep_at, {{"found", where}}, results);
      return;
    }
    const tested::Product* product = reading.match.product;
    if (product == nullptr || !reading.match.sure()) return;
    const Position at = reading.recipe->follows ? reading.recipe->follows->at : reading.recipe->title.at;
    if (product->no_tested_process) {
      tell(Case::bodies_differ, reading, at,
           {{"product", product->title}, {"reason", product->why_no_process}}, results);
    } else if (rests_on_memory(reading)) {
      tell(Case::from_memory, reading, at, {{"product", product->title}}, results);
    }
  }

 private:
  void tell(Case which, const Reading& reading, Position at, const Figures& figures, Results& results) const {
    if (const Rule* rule = cases_.find(which, reading)) results.add(*rule, at, figures);
  }

  Cases cases_;
};

}  // namespace

std::unique_ptr<Check> make_limits_of_proof(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<LimitsOfProof>(rules, maker);
}

}  // namespace sealworthy::checks
