#include "checks/amounts_against_formula.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "checks/cases.hpp"
#include "tested/compare.hpp"

namespace sealworthy::checks {
namespace {

using reading::Reading;
using tested::AddedIngredient;
using tested::FormulaComparison;
using tested::LineComparison;
using LineState = tested::LineComparison::State;
using State = Point::State;

enum class Case {
  acid_less,
  low_acid_more,
  low_acid_added,
  low_acid_less,
  salt_less,
  sugar_less,
  differs,
  missing,
  added,
  unknown
};
const std::vector<std::string_view> case_names{
    "acid-less",  "low-acid-more", "low-acid-added", "low-acid-less", "salt-less",
    "sugar-less", "differs",       "missing",        "added",         "unknown"};

bool fits(LineState state) { return state == LineState::held || state == LineState::free; }

/// Dry spice may vary in any tested formula.
bool matters(const LineComparison& line) { return !fits(line.state) && !line.dry_spice; }

Case case_of(const LineComparison& line) {
  if (line.state == LineState::unknown) return Case::unknown;
  const bool less = line.state == LineState::less || line.state == LineState::missing;
  const std::string& role = line.line->role;
  if (role == "acid" && less) return Case::acid_less;
  if (role == "low-acid") return less ? Case::low_acid_less : Case::low_acid_more;
  if (role == "salt" && less) return Case::salt_less;
  if (role == "sugar" && less) return Case::sugar_less;
  return line.state == LineState::missing ? Case::missing : Case::differs;
}

/// How the acid of the formula stands, all its lines together.
State acid_state(const FormulaComparison& compared) {
  State state = State::held;
  for (const LineComparison& line : compared.lines) {
    if (line.line->role != "acid" || fits(line.state)) continue;
    if (line.state == LineState::less || line.state == LineState::missing) return State::differs;
    if (line.state == LineState::unknown) state = State::unknown;
  }
  return state;
}

/// Acid that the product asks for in each jar stands beside its formula; acid-per-jar looks at it.
bool is_jar_acid(const Reading& reading, const AddedIngredient& added) {
  const foods::Food* food = reading.ingredients[added.ingredient].food;
  return !reading.match.product->acid_per_jar.empty() && food != nullptr && food->kind == "acid";
}

class AmountsAgainstFormula final : public Check {
 public:
  AmountsAgainstFormula(std::span<const Rule* const> rules, Maker& maker)
      : cases_(rules, maker, case_names) {}

  void run(const Reading& reading, Results& results) const override {
    const tested::Product* product = reading.match.product;
    if (product == nullptr) return;
    const bool own_acid =
        product->acid_class == tested::ProductClass::acidified && product->acid_per_jar.empty();
    if (!product->formula) {
      if (own_acid) results.point(PointKind::acid, State::held);
      return;
    }
    const FormulaComparison compared = tested::compare(*product, reading);
    if (own_acid) results.point(PointKind::acid, acid_state(compared));
    State state = State::held;
    for (const LineComparison& line : compared.lines) {
      if (!matters(line)) continue;
      state = worse(state, line.state == LineState::unknown ? State::unknown : State::differs);
      tell(reading, line, results);
    }
    for (const AddedIngredient& added : compared.added) {
      if (added.dry_spice || added.salt || is_jar_acid(reading, added)) continue;
      state = worse(state, tell(reading, added, results));
    }
    results.point(PointKind::amounts, state);
  }

 private:
  static State worse(State a, State b) { return a == State::differs || b == State::held ? a : b; }

  /// Against a formula that is only the nearest one a difference says nothing.
  const Rule* rule_for(const Reading& reading, Case which) const {
    return reading.match.sure() ? cases_.find(which, reading) : nullptr;
  }

  void tell(const Reading& reading, const LineComparison& line, Results& results) const {
    const Rule* rule = rule_for(reading, case_of(line));
    if (rule == nullptr) return;
    const bool on_card = line.ingredient != LineComparison::none;
    results.add(*rule, on_card ? line.at : reading.recipe->title.at,
                {{"found", line.found.empty() ? std::string("none") : line.found},
                 {"needed", line.needed},
                 {"food", line.line->text},
                 {"percent", std::to_string(std::lround(line.percent))},
                 {"reason", line.reason},
                 {"product", reading.match.product->title}});
  }

  State tell(const Reading& reading, const AddedIngredient& added, Results& results) const {
    const foods::Food* food = reading.ingredients[added.ingredient].food;
    if (food == nullptr) return State::unknown;
    const bool low_acid = food->acid_class == foods::AcidClass::low_acid;
    if (const Rule* rule = rule_for(reading, low_acid ? Case::low_acid_added : Case::added))
      results.add(*rule, added.at,
                  {{"food", added.name}, {"found", added.name}, {"product", reading.match.product->title}});
    return State::differs;
  }

  Cases cases_;
};

}  // namespace

std::unique_ptr<Check> make_amounts_against_formula(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<AmountsAgainstFormula>(rules, maker);
}

}  // namespace sealworthy::checks
