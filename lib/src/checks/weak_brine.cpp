#include "checks/weak_brine.hpp"

#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "checks/fields.hpp"
#include "checks/food_set.hpp"
#include "tested/line_foods.hpp"

namespace sealworthy::checks {
namespace {

using foods::AcidClass;
using foods::Food;
using reading::Reading;

constexpr double usual_strength = 5;

double strength_of(const Food& acid, std::optional<double> told) {
  return told.value_or(acid.acid_percent.value_or(usual_strength)) / usual_strength;
}

/// Acid, as five percent, and the water beside it, in grams.
struct Brine {
  double acid = 0;
  double water = 0;

  [[nodiscard]] double share() const { return acid / (acid + water); }
};

/// The weakest published brine of a food.
struct Weakest {
  double share = 1;
  const tested::Product* product = nullptr;
};

std::optional<Brine> brine_of(const tested::Formula& formula, const foods::Catalogue& catalogue) {
  Brine brine;
  for (const auto& line : formula.lines) {
    if (line.not_eaten || line.named.empty() || line.named.front() == nullptr || line.amounts.empty())
      continue;
    const Food& food = *line.named.front();
    const bool acid = line.role == "acid", water = tested::is_water(food);
    if (!acid && !water) continue;
    const auto weight = catalogue.weigh(line.amounts.front(), food, line.states);
    if (!weight || line.per_jar) return std::nullopt;
    if (acid) brine.acid += in_grams(weight->low) * strength_of(food, line.strength_percent);
    if (water) brine.water += in_grams(weight->high);
  }
  return brine.acid > 0 && brine.water > 0 ? std::optional(brine) : std::nullopt;
}

class WeakBrine final : public Check {
 public:
  WeakBrine(std::span<const Rule* const> rules, Maker& maker)
      : rules_(rules.begin(), rules.end()), first_(maker.catalogue.all().data()) {
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      slack_ = with.number("slack").value_or(0) / 100;
      with.done();
    }
    of_food_.resize(maker.catalogue.all().size());
    for (const auto& product : maker.tables.products()) {
      if (product.acid_class != tested::ProductClass::acidified || !product.formula) continue;
      note(product, *product.formula, maker);
      for (const auto& version : product.versions) note(product, version, maker);
    }
  }

  void run(const Reading& reading, Results& results) const override {
    const auto* product = reading.match.product;
    if (rules_.empty() || (product != nullptr && reading.match.sure())) return;
    if (product != nullptr && product->acid_class == tested::ProductClass::fermented) return;
    const auto* main = main_food(reading);
    if (main == nullptr) return;
    const auto brine = brine_on(reading);
    if (!brine) return;
    const Weakest weakest = weakest_for(reading);
    if (weakest.product == nullptr || brine->share() >= weakest.share * (1 - slack_)) return;
    for (const Rule* rule : rules_)
      if (applies(rule->only_if, reading)) tell(*rule, reading, *main, *brine, weakest, results);
  }

 private:
  [[nodiscard]] Weakest& of(const Food& food) { return of_food_[static_cast<std::size_t>(&food - first_)]; }
  [[nodiscard]] const Weakest& of(const Food& food) const {
    return of_food_[static_cast<std::size_t>(&food - first_)];
  }

  void note(const tested::Product& product, const tested::Formula& formula, const Maker& maker) {
    const auto brine = brine_of(formula, maker.catalogue);
    if (!brine) return;
    FoodSet foods(maker.catalogue);
    for (const auto& line : formula.lines)
      for (const auto& food : line.foods) maker.food_index->add(foods, food);
    for (const auto& food : maker.catalogue.all()) {
      if (food.acid_class != AcidClass::low_acid || !foods.has(food)) continue;
      for (Weakest* one : {&of(food), &of_any_})
        if (brine->share() < one->share) *one = {brine->share(), &product};
    }
  }

  /// The heaviest low-acid food, where low-acid food is more than half of what is no liquid, acid or sugar.
  static const reading::Ingredient* main_food(const Reading& reading) {
    const reading::Ingredient* main = nullptr;
    double most = 0, low_acid = 0, other = 0;
    for (const auto& line : reading.ingredients) {
      if (!in_jar(line) || line.food == nullptr || !line.read.weight || line.food->kind == "acid") continue;
      const double grams = in_grams(line.read.weight->high);
      if (line.food->acid_class == AcidClass::low_acid) {
        low_acid += grams;
        if (grams > most) most = grams, main = &line;
      } else if (line.food->acid_class != AcidClass::neutral) {
        other += grams;
      }
    }
    return low_acid > other ? main : nullptr;
  }

  static std::optional<Brine> brine_on(const Reading& reading) {
    Brine brine;
    for (const auto& line : reading.ingredients) {
      if (!in_jar(line) || line.food == nullptr) continue;
      const bool acid = line.food->kind == "acid", water = tested::is_water(*line.food);
      if (!acid && !water) continue;
      if (!line.read.weight || line.read.per_jar || line.read.foods.size() > 1) return std::nullopt;
      if (acid)
        brine.acid += in_grams(line.read.weight->high) * strength_of(*line.food, line.read.strength_percent);
      if (water && !line.read.optional) brine.water += in_grams(line.read.weight->low);
    }
    return brine.acid > 0 && brine.water > 0 ? std::optional(brine) : std::nullopt;
  }

  /// Of the card's low-acid foods the one with the weakest published brine; of any food where none has one.
  [[nodiscard]] Weakest weakest_for(const Reading& reading) const {
    Weakest weakest;
    for (const auto& line : reading.ingredients) {
      if (!in_jar(line) || line.food == nullptr) continue;
      const Weakest& one = of(*line.food);
      if (one.product != nullptr && one.share < weakest.share) weakest = one;
    }
    return weakest.product != nullptr ? weakest : of_any_;
  }

  static void tell(const Rule& rule, const Reading& reading, const reading::Ingredient& main,
                   const Brine& brine, const Weakest& weakest, Results& results) {
    const auto percent = [](double share) { return std::to_string(std::lround(share * 100)) + " percent"; };
    Position at = reading.recipe->title.at;
    for (const auto& line : reading.ingredients)
      if (in_jar(line) && line.food != nullptr && line.food->kind == "acid") at = line.line->at;
    results.add(rule, at,
                {{"found", percent(brine.share())},
                 {"needed", percent(weakest.share)},
                 {"food", main.read.foods.empty() ? main.food->name : main.read.foods.front().name},
                 {"product", weakest.product->title}});
  }

  std::vector<const Rule*> rules_;
  const Food* first_;
  double slack_ = 0;
  std::vector<Weakest> of_food_;
  Weakest of_any_;
};

}  // namespace

std::unique_ptr<Check> make_weak_brine(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<WeakBrine>(rules, maker);
}

}  // namespace sealworthy::checks
