#include "checks/acid_per_jar.hpp"

#include <string>
#include <vector>

#include "checks/acid_dose.hpp"
#include "checks/against_table.hpp"
#include "checks/cases.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using reading::Reading;
using State = Point::State;

enum class Case { none, too_little, vinegar, batch, batch_unknown, mixed, smaller_jar };
const std::vector<std::string_view> case_names{"none",          "too-little", "vinegar",    "batch",
                                               "batch-unknown", "mixed",      "smaller-jar"};

/// Measuring spoons are not exacter than this.
constexpr double enough = 0.98;

struct Outcome {
  State state = State::held;
  bool told = false;
  Case which = Case::none;
};

Outcome outcome_of(const AcidDose& dose) {
  if (dose.asked == nullptr) return {State::unknown};
  if (!dose.any) return {State::differs, true, Case::none};
  const State held = dose.other_kind ? State::unknown : State::held;
  if (dose.best >= enough) {
    if (dose.batch) return {held, true, Case::batch};
    return {held};
  }
  if (dose.batch_unknown) return {State::unknown, true, Case::batch_unknown};
  if (dose.best >= enough * dose.scale) return {State::unknown, true, Case::smaller_jar};
  if (dose.total >= enough) return {State::unknown, true, Case::mixed};
  const bool vinegar = dose.asked->one_of[dose.choice].strength_percent.has_value();
  return {State::differs, true, vinegar ? Case::vinegar : Case::too_little};
}

class AcidPerJarCheck final : public Check {
 public:
  AcidPerJarCheck(std::span<const Rule* const> rules, Maker& maker)
      : cases_(rules, maker, case_names, [&](const Rule&, Fields& with) { read_counts_as(with, maker); }) {}

  void run(const Reading& reading, Results& results) const override {
    if (reading.match.product == nullptr || reading.match.product->acid_per_jar.empty()) return;
    for (const JarProcess& jar : reading.jars) {
      const AcidDose dose = acid_dose(reading, jar, counts_as_);
      const Outcome outcome = outcome_of(dose);
      results.point(PointKind::acid, outcome.state);
      if (outcome.told) tell(reading, jar, dose, outcome.which, results);
    }
  }

 private:
  void read_counts_as(Fields& with, Maker& maker) {
    const yaml::Node* map = with.find("counts-as");
    if (map == nullptr) return;
    for (const yaml::Entry& entry : map->entries) {
      for (const yaml::Node& item : entry.value.items) {
        if (maker.catalogue.find(entry.key) == nullptr || maker.catalogue.find(item.text) == nullptr)
          with.sink().add(item.at, "counts-as: both must be foods of the catalogue");
        counts_as_.emplace_back(entry.key, item.text);
      }
    }
  }

  void tell(const Reading& reading, const JarProcess& jar, const AcidDose& dose, Case which,
            Results& results) const {
    const Rule* rule = cases_.find(which, reading);
    if (rule == nullptr) return;
    const Position at = dose.line != nullptr ? dose.line->line->at : reading.recipe->process_or_title();
    results.add(*rule, at,
                {{"found", dose.line != nullptr ? std::string(dose.line->line->text) : std::string("none")},
                 {"needed", dose_words(*dose.asked, *reading.catalogue)},
                 {"jar", jar_words(jar)},
                 {"dosed", jar_size_words(*reading.tables, dose.asked->jar)},
                 {"product", reading.match.product->title}});
  }

  CountsAs counts_as_;
  Cases cases_;  // last: its making fills the list above
};

}  // namespace

std::unique_ptr<Check> make_acid_per_jar(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<AcidPerJarCheck>(rules, maker);
}

}  // namespace sealworthy::checks
