#include "checks/mixture_longest_process.hpp"

#include <algorithm>
#include <optional>

#include "checks/fields.hpp"
#include "checks/food_set.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using reading::Reading;
using tested::Product;

bool takes_pressure(const Product& product) {
  return std::any_of(product.rows.begin(), product.rows.end(),
                     [](const auto& row) { return row.method != tested::TableMethod::boiling_water; });
}

class MixtureLongestProcess final : public Check {
 public:
  MixtureLongestProcess(std::span<const Rule* const> rules, Maker& maker)
      : rules_(rules.begin(), rules.end()), first_food_(maker.catalogue.all().data()) {
    for (const Rule* rule : rules)
      Fields(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors}).done();
    alone_.resize(maker.catalogue.all().size());
    for (const auto& product : maker.tables.products()) {
      // A process of one low-acid food as it is: no formula, and not a group of many such as soup.
      const bool alone =
          !product.formula && product.acid_class == tested::ProductClass::low_acid && takes_pressure(product);
      if (!alone) continue;
      const FoodSet& listed = maker.product_foods->listed(product);
      for (const auto& food : maker.catalogue.all())
        if (listed.has(food)) alone_[place(food)].push_back(&product);
    }
  }

  void run(const Reading& reading, Results& results) const override {
    if (rules_.empty() || (reading.match.product != nullptr && !reading.match.doubtful)) return;
    for (const auto& jar : reading.jars)
      if (jar.method == reading::MethodKind::pressure && jar.process->time && jar.size)
        judge(reading, jar, results);
  }

 private:
  struct Longest {
    Duration time;
    const foods::Named* named = nullptr;
    int foods = 0;
  };

  [[nodiscard]] std::size_t place(const foods::Food& food) const {
    return static_cast<std::size_t>(&food - first_food_);
  }

  /// The shortest time that any process of the food's own gives this jar; nullopt: none is tabled.
  static std::optional<Duration> shortest(const std::vector<const Product*>& products, const Reading& reading,
                                          const JarProcess& jar) {
    std::optional<Duration> least;
    for (const auto* product : products)
      for (const auto method : {tested::TableMethod::pressure_dial, tested::TableMethod::pressure_weighted})
        for (const auto& needed : reading.tables->needed(*product, method, {}, *jar.size, feet(0)))
          if (needed.step != nullptr && (!least || needed.step->time < *least)) least = needed.step->time;
    return least;
  }

  [[nodiscard]] Longest longest(const Reading& reading, const JarProcess& jar) const {
    Longest longest;
    for (const auto& line : reading.ingredients) {
      if (!in_jar(line) || line.food == nullptr || line.read.foods.empty()) continue;
      const auto& products = alone_[place(*line.food)];
      if (products.empty()) continue;
      const auto time = shortest(products, reading, jar);
      if (!time) continue;
      ++longest.foods;
      if (longest.named == nullptr || *time > longest.time) {
        longest.time = *time;
        longest.named = &line.read.foods.front();
      }
    }
    return longest;
  }

  void judge(const Reading& reading, const JarProcess& jar, Results& results) const {
    const auto found = longest(reading, jar);
    const auto time = jar.process->time->value.low;
    if (found.foods < 2 || time >= found.time) return;
    for (const Rule* rule : rules_)
      if (applies(rule->only_if, reading))
        results.add(*rule, jar.process->time->at,
                    {{"found", quantity::words(time)},
                     {"needed", quantity::words(found.time)},
                     {"food", found.named->name}});
  }

  std::vector<const Rule*> rules_;
  const foods::Food* first_food_;
  std::vector<std::vector<const Product*>> alone_;  ///< by food: processes of it alone
};

}  // namespace

std::unique_ptr<Check> make_mixture_longest_process(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<MixtureLongestProcess>(rules, maker);
}

}  // namespace sealworthy::checks
