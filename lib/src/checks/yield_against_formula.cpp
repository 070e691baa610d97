#include "checks/yield_against_formula.hpp"

#include <fmt/format.h>

#include <optional>
#include <string>
#include <unordered_map>
#include <variant>
#include <vector>

#include "checks/fields.hpp"
#include "quantity/amount.hpp"
#include "quantity/figures.hpp"
#include "tested/compare.hpp"

namespace sealworthy::checks {
namespace {

using reading::Reading;

struct Entry {
  const Rule* rule;
  double times = 0;
};

/// What so many jars hold; nullopt: neither the yield nor the card says of which jar.
std::optional<Interval<Volume>> held_by(const quantity::Yield& yield, const Reading& reading) {
  const quantity::JarText* jar = nullptr;
  if (yield.jar)
    jar = &*yield.jar;
  else if (!reading.jars.empty())
    jar = reading.jars.front().jar;
  if (jar == nullptr) return std::nullopt;
  return Interval<Volume>{jar->volume * in_pieces(yield.count.low),
                          jar->volume * in_pieces(yield.count.high)};
}

class YieldAgainstFormula final : public Check {
 public:
  YieldAgainstFormula(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      Entry entry{rule, with.number("times").value_or(0)};
      with.done();
      if (entry.times <= 1) with.sink().add(rule->at, "rule " + rule->id + ": 'times' must be above 1");
      entries_.push_back(entry);
    }
    for (const auto& product : maker.tables.products()) {
      if (!product.formula) continue;
      auto read = quantity::read_yield(product.formula->yields);
      if (auto* yield = std::get_if<quantity::Yield>(&read); yield != nullptr && yield->jar)
        yields_.emplace(&product, std::move(*yield));
    }
  }

  void run(const Reading& reading, Results& results) const override {
    if (!reading.recipe->makes || reading.compared == nullptr) return;
    const auto published = yields_.find(reading.match.product);
    if (published == yields_.end()) return;
    const auto said = held_by(reading.recipe->makes->value, reading);
    if (!said) return;
    const double factor = reading.compared->factor;
    const auto one = *held_by(published->second, reading);
    const Interval<Volume> fills{one.low * factor, one.high * factor};
    for (const Entry& entry : entries_) {
      const bool many = said->low > fills.high * entry.times;
      const bool few = said->high * entry.times < fills.low;
      if ((!many && !few) || !applies(entry.rule->only_if, reading)) continue;
      results.add(*entry.rule, reading.recipe->makes->at,
                  {{"found", std::string(reading.recipe->makes->text)},
                   {"needed", jars_words(published->second, factor)},
                   {"factor", quantity::kitchen_number(factor)}});
    }
  }

 private:
  static std::string jars_words(const quantity::Yield& yield, double factor) {
    const auto low = quantity::kitchen_number(in_pieces(yield.count.low) * factor);
    const auto high = quantity::kitchen_number(in_pieces(yield.count.high) * factor);
    return fmt::format("{} {} jars", low == high ? low : low + " to " + high, yield.jar->name);
  }

  std::vector<Entry> entries_;
  std::unordered_map<const tested::Product*, quantity::Yield> yields_;
};

}  // namespace

std::unique_ptr<Check> make_yield_against_formula(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<YieldAgainstFormula>(rules, maker);
}

}  // namespace sealworthy::checks
