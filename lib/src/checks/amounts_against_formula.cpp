#include "checks/amounts_against_formula.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "checks/cases.hpp"
#include "quantity/figures.hpp"
#include "tested/compare.hpp"
#include "tested/compare_amounts.hpp"

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
  acid_weak,
  acid_more,
  low_acid_more,
  low_acid_added,
  low_acid_less,
  water_more,
  water_added,
  water_unsaid,
  fat_more,
  thickener_more,
  salt_less,
  salt_more,
  sugar_less,
  allowed,
  differs,
  missing,
  added,
  replaced,
  unknown
};
const std::vector<std::string_view> case_names{
    "acid-less",      "acid-weak",  "acid-more",   "low-acid-more", "low-acid-added",
    "low-acid-less",  "water-more", "water-added", "water-unsaid",  "fat-more",
    "thickener-more", "salt-less",  "salt-more",   "sugar-less",    "allowed",
    "differs",        "missing",    "added",       "replaced",      "unknown"};

bool fits(LineState state) {
  return state == LineState::held || state == LineState::free || state == LineState::allowed;
}

/// Dry spice may vary in any tested formula.
bool matters(const LineComparison& line) { return !fits(line.state) && !line.dry_spice; }

Case more_case(const LineComparison& line, bool rests_on_acid) {
  const std::string& role = line.line->role;
  if (role == "acid") return Case::acid_more;
  if (role == "low-acid") return Case::low_acid_more;
  if (role == "fat") return Case::fat_more;
  if (role == "starch") return Case::thickener_more;
  if (role == "salt") return Case::salt_more;
  return line.water && rests_on_acid ? Case::water_more : Case::differs;
}

Case case_of(const LineComparison& line, bool rests_on_acid) {
  if (line.state == LineState::unknown) return Case::unknown;
  if (line.state == LineState::more) return more_case(line, rests_on_acid);
  const std::string& role = line.line->role;
  if (role == "acid") return Case::acid_less;
  if (role == "low-acid") return Case::low_acid_less;
  if (role == "salt") return Case::salt_less;
  if (role == "sugar") return Case::sugar_less;
  return line.state == LineState::missing ? Case::missing : Case::differs;
}

Case case_of(const AddedIngredient& added, const foods::Food& food) {
  if (added.change != nullptr) return Case::allowed;
  if (added.water) return added.stated ? Case::water_added : Case::water_unsaid;
  return food.acid_class == foods::AcidClass::low_acid ? Case::low_acid_added : Case::added;
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
  const foods::Food* food = added.food;
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
    if (reading.compared == nullptr) {
      if (own_acid) results.point(PointKind::acid, State::held);
      return;
    }
    const FormulaComparison& compared = *reading.compared;
    if (own_acid) results.point(PointKind::acid, acid_state(compared));
    State state = State::held;
    for (const LineComparison& line : compared.lines) {
      const bool told = line.with_line_before;  // what is told once counts for each line all the same
      if (line.state == LineState::allowed && !told) tell_allowed(reading, line, results);
      if (line.weak_percent) {
        state = State::differs;
        if (!told) tell_weak(reading, line, results);
      }
      if (!matters(line)) continue;
      if (line.replaced_by != LineComparison::none) {
        state = State::differs;
        tell_replaced(reading, compared, line, results);
        continue;
      }
      state = worse(state, line.state == LineState::unknown ? State::unknown : State::differs);
      if (!told) tell(reading, compared, line, results);
    }
    for (const AddedIngredient& added : compared.added) {
      if (added.dry_spice || added.salt || is_jar_acid(reading, added)) continue;
      if (added.replaces != LineComparison::none) continue;
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

  void tell(const Reading& reading, const FormulaComparison& compared, const LineComparison& line,
            Results& results) const {
    const Rule* rule = rule_for(reading, case_of(line, compared.rests_on_acid));
    if (rule != nullptr) results.add(*rule, place_of(reading, line), figures_of(reading, line));
  }

  /// One food in place of another: told once, by the gravest of the three rules that speak of what is gone,
  /// of what is new and of the exchange, in the words of the last.
  void tell_replaced(const Reading& reading, const FormulaComparison& compared, const LineComparison& line,
                     Results& results) const {
    const AddedIngredient& added = compared.added[line.replaced_by];
    const Rule* words = rule_for(reading, Case::replaced);
    const Rule* gravest = words;
    for (const Rule* rule : {rule_for(reading, case_of(line, compared.rests_on_acid)),
                             rule_for(reading, case_of(added, *added.food))})
      if (rule != nullptr && (gravest == nullptr || rule->severity > gravest->severity)) gravest = rule;
    if (gravest == nullptr) return;
    Figures figures = figures_of(reading, line);
    figures.front().second = card_words(reading, added);
    Finding& finding = results.add(*gravest, added.at, figures);
    if (words == nullptr) return;
    finding.message = fill(words->says, figures);
    finding.instead = fill(words->instead, figures);
  }

  static std::string card_words(const Reading& reading, const AddedIngredient& added) {
    const auto& amount = reading.ingredients[added.ingredient].read.amount;
    return amount.stated_any() ? tested::words_of(amount, 1) + " " + added.name : added.name;
  }

  void tell_weak(const Reading& reading, const LineComparison& line, Results& results) const {
    const Rule* rule = rule_for(reading, Case::acid_weak);
    if (rule == nullptr) return;
    results.add(*rule, place_of(reading, line),
                {{"food", food_of(reading, line)},
                 {"found", quantity::kitchen_number(*line.weak_percent) + " %"},
                 {"needed", quantity::kitchen_number(*line.line->strength_percent) + " %"}});
  }

  /// A change that a publication judges harmless: its reason and its source in place of the rule's own.
  void tell_allowed(const Reading& reading, const LineComparison& line, Results& results) const {
    const Rule* rule = rule_for(reading, Case::allowed);
    if (rule == nullptr) return;
    Finding& finding = results.add(*rule, place_of(reading, line), figures_of(reading, line));
    finding.why = line.change->says;
    finding.sources = {line.change->source};
  }

  static Position place_of(const Reading& reading, const LineComparison& line) {
    return line.at.line > 0 ? line.at : reading.recipe->title.at;
  }

  /// The food as the card names it; what the card lacks as the formula does.
  static std::string food_of(const Reading& reading, const LineComparison& line) {
    if (line.ingredient == LineComparison::none) return line.line->what;
    const auto& foods = reading.ingredients[line.ingredient].read.foods;
    return foods.size() == 1 && !foods.front().name.empty() ? foods.front().name : line.line->what;
  }

  static Figures figures_of(const Reading& reading, const LineComparison& line) {
    return {{"found", line.found.empty() ? std::string("none") : line.found},
            {"needed", line.needed},
            {"food", food_of(reading, line)},
            {"percent", std::to_string(std::lround(line.percent))},
            {"reason", line.reason},
            {"product", reading.match.product->title}};
  }

  State tell(const Reading& reading, const AddedIngredient& added, Results& results) const {
    const foods::Food* food = added.food;
    if (food == nullptr) return State::unknown;
    const Case which = case_of(added, *food);
    if (const Rule* rule = rule_for(reading, which)) {
      Finding& finding = results.add(*rule, added.at,
                                     {{"food", added.name},
                                      {"found", added.name},
                                      {"needed", "none"},
                                      {"product", reading.match.product->title}});
      if (added.change != nullptr) {
        finding.message = added.name + " is not in the tested formula; here it may be.";
        finding.why = added.change->says;
        finding.sources = {added.change->source};
      }
    }
    if (which == Case::allowed) return State::held;
    return which == Case::water_unsaid ? State::unknown : State::differs;
  }

  Cases cases_;
};

}  // namespace

std::unique_ptr<Check> make_amounts_against_formula(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<AmountsAgainstFormula>(rules, maker);
}

}  // namespace sealworthy::checks
