#include "checks/acid_kind.hpp"

#include <algorithm>
#include <optional>

#include "checks/fields.hpp"
#include "checks/food_set.hpp"
#include "checks/phrases.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarClass;
using reading::Reading;

struct Entry {
  const Rule* rule;
  FoodSet foods;
  std::optional<double> weaker_than;
  std::optional<double> at_least;
  bool strength_unsaid = false;
  unsigned units = 0;
  Phrases line, not_line;
  bool alone = false;
  bool unless_listed = false;
  std::optional<Point::State> point;
  std::string assume;

  [[nodiscard]] bool strength_fits(std::optional<double> percent) const {
    if (strength_unsaid && percent) return false;
    if (weaker_than && !(percent && *percent < *weaker_than)) return false;
    return !at_least || (percent && *percent >= *at_least);
  }
};

Entry read_entry(const Rule& rule, const FoodIndex& index, Maker& maker) {
  Fields with(rule.with, "rule " + rule.id + ", with", {rule.file, maker.errors});
  Entry entry;
  entry.rule = &rule;
  entry.foods = index.read(with, "foods", "not-foods");
  if (entry.foods.unset()) with.sink().add(rule.at, "rule " + rule.id + ": 'foods' are missing");
  entry.weaker_than = with.number("weaker-than");
  entry.at_least = with.number("at-least");
  entry.strength_unsaid = with.choice("strength", {"unsaid"}).has_value();
  entry.units = with.choices("units", {"us", "metric", "imperial"});
  entry.line = Phrases(with.list("line"));
  entry.not_line = Phrases(with.list("not-line"));
  entry.alone = with.flag("alone");
  entry.unless_listed = with.flag("unless-listed");
  if (const auto point = with.choice("point", {"unknown", "differs"}))
    entry.point = *point == 0 ? Point::State::unknown : Point::State::differs;
  entry.assume = with.text("assume");
  with.done();
  return entry;
}

bool only_pressure(const Reading& reading) {
  return reading.processed() && std::all_of(reading.jars.begin(), reading.jars.end(), [](const auto& jar) {
           return jar.method == reading::MethodKind::pressure;
         });
}

/// Food that needs acid. What is canned as it is although its pH runs high (apricots), and fat, which takes
/// up none, ask for none.
bool needs_acid(const foods::Food& food) {
  if (food.kind == "acid" || food.kind == "fat" || food.guide_class == "acid") return false;
  return food.acid_class == foods::AcidClass::low_acid || food.acid_class == foods::AcidClass::borderline;
}

bool any_food_to_acidify(const Reading& reading) {
  return std::any_of(reading.ingredients.begin(), reading.ingredients.end(), [](const auto& ingredient) {
    return in_jar(ingredient) && (ingredient.food == nullptr || needs_acid(*ingredient.food));
  });
}

class AcidKind final : public Check {
 public:
  AcidKind(std::span<const Rule* const> rules, Maker& maker) : acids_(maker.catalogue) {
    const FoodIndex& index = *maker.food_index;
    index.add(acids_, "kind:acid");
    for (const Rule* rule : rules) entries_.push_back(read_entry(*rule, index, maker));
    first_product_ = maker.tables.products().data();
    for (const auto& product : maker.tables.products()) read_product(product, maker.catalogue);
  }

  void run(const Reading& reading, Results& results) const override {
    std::optional<bool> counts;
    for (const auto& ingredient : reading.ingredients) {
      if (!in_jar(ingredient)) continue;
      const auto* named = named_in(ingredient, acids_);
      if (named == nullptr) continue;
      if (!counts) counts = acid_counts(reading);
      if (*counts) judge(reading, ingredient, *named, results);
    }
  }

 private:
  void read_product(const tested::Product& product, const foods::Catalogue& catalogue) {
    FoodSet named(catalogue);
    bool asks = product.acid_class == tested::ProductClass::acidified || !product.acid_per_jar.empty();
    const auto take = [&](const std::string& id) {
      if (const auto* food = catalogue.find(id)) named.add(*food);
    };
    if (product.formula)
      for (const auto& line : product.formula->lines) {
        if (line.role != "acid") continue;
        asks = asks || product.acid_class == tested::ProductClass::sugar_preserve;
        for (const auto& food : line.foods) take(food);
      }
    for (const auto& jar : product.acid_per_jar)
      for (const auto& choice : jar.one_of) take(choice.food);
    asks_.push_back(asks);
    named_.push_back(std::move(named));
  }

  [[nodiscard]] std::size_t place(const tested::Product* product) const {
    return static_cast<std::size_t>(product - first_product_);
  }

  [[nodiscard]] bool acid_counts(const Reading& reading) const {
    if (reading.match.sure()) return asks_[place(reading.match.product)];
    if (reading.jar_class == JarClass::acidified) return true;
    return !only_pressure(reading) && any_food_to_acidify(reading);
  }

  /// The matched product takes this very acid, whatever else it is.
  [[nodiscard]] bool asked_for_by_name(const Reading& reading, const foods::Food& food) const {
    return reading.match.sure() && named_[place(reading.match.product)].has(food);
  }

  [[nodiscard]] bool other_acid(const Reading& reading, const Entry& entry) const {
    return std::any_of(reading.ingredients.begin(), reading.ingredients.end(), [&](const auto& other) {
      return in_jar(other) &&
             std::any_of(other.read.foods.begin(), other.read.foods.end(), [&](const auto& named) {
               return named.food != nullptr && acids_.has(*named.food) && !entry.foods.has(*named.food);
             });
    });
  }

  void judge(const Reading& reading, const reading::Ingredient& ingredient, const foods::Named& named,
             Results& results) const {
    const bool by_name = asked_for_by_name(reading, *named.food);
    const auto units = 1U << static_cast<unsigned>(reading.recipe->units);
    std::optional<text::Words> words;
    const auto says = [&](const Phrases& phrases) {
      if (!words) words.emplace(ingredient.line->text);
      return !phrases.in(*words).empty();
    };
    for (const auto& entry : entries_) {
      if (!entry.foods.has(*named.food)) continue;
      if (by_name && entry.unless_listed) continue;
      if (!entry.strength_fits(ingredient.read.strength_percent)) continue;
      if (entry.units != 0 && (entry.units & units) == 0) continue;
      if (!entry.line.empty() && !says(entry.line)) continue;
      if (!entry.not_line.empty() && says(entry.not_line)) continue;
      if (entry.alone && other_acid(reading, entry)) continue;
      if (applies(entry.rule->only_if, reading)) tell(entry, ingredient, named, results);
    }
  }

  static void tell(const Entry& entry, const reading::Ingredient& ingredient, const foods::Named& named,
                   Results& results) {
    if (entry.point) results.point(PointKind::acid, *entry.point, named.name);
    if (!entry.assume.empty()) {
      results.assume(entry.assume);
      return;
    }
    const auto percent = ingredient.read.strength_percent;
    results.add(*entry.rule, ingredient.line->at,
                {{"found", named.name}, {"strength", percent ? quantity::kitchen_number(*percent) : ""}});
  }

  FoodSet acids_;
  std::vector<Entry> entries_;
  const tested::Product* first_product_ = nullptr;
  std::vector<bool> asks_;      ///< by product: its safety rests on acid that is added
  std::vector<FoodSet> named_;  ///< by product: the acids that its formula lists
};

}  // namespace

std::unique_ptr<Check> make_acid_kind(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<AcidKind>(rules, maker);
}

}  // namespace sealworthy::checks
