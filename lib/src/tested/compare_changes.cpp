#include "tested/compare_changes.hpp"

#include <algorithm>
#include <optional>

#include "tested/line_foods.hpp"

namespace sealworthy::tested {
namespace {

using State = LineComparison::State;

/// True if the line is what the product is about, or a kind of it: pearl onions of a product about onions.
bool is_main(const FormulaLine& line, const Product& product, const foods::Catalogue& catalogue) {
  const auto& main = product.foods.front();
  return std::any_of(line.foods.begin(), line.foods.end(), [&](const auto& id) {
    const auto* one = catalogue.find(id);
    return id == main || (one != nullptr && catalogue.is_a(*one, main));
  });
}

bool differs(State state) { return state == State::more || state == State::less || state == State::missing; }

class Applying {
 public:
  Applying(const Product& product, const Formula& formula, const reading::Reading& reading,
           const ComparedBy& by, FormulaComparison& result)
      : product_(product), formula_(formula), reading_(reading), by_(by), result_(result) {}

  void run() {
    for (const auto* change : product_.changes)
      if ((change->does & Change::swap) != 0) swap(*change);
    for (auto& line : result_.lines)
      if (differs(line.state) && !line.dry_spice) judge(line);
    for (auto& added : result_.added)
      if (added.change == nullptr) added.change = change_for(added);
  }

 private:
  /// What takes part in a swap: lines of the formula, and ingredients that it has no place for.
  struct Pool {
    Lines lines = 0;
    std::vector<std::size_t> of_lines;
    std::vector<std::size_t> added;  ///< indices into result_.added
    std::vector<std::size_t> ingredients;
  };

  bool meant(const Change& change, const FormulaLine& line) const {
    return tested::meant(change, line, product_, *reading_.catalogue);
  }

  static bool in_state(const foods::LineReading& read, const Change& change) {
    return change.to_states.empty() ||
           std::any_of(read.states.begin(), read.states.end(), [&](const std::string& state) {
             return std::find(change.to_states.begin(), change.to_states.end(), state) !=
                    change.to_states.end();
           });
  }

  /// Every food of the line, alternatives too, is one that the change names: "peppers or corn" is not.
  bool may_come_in(const AddedIngredient& added, const Change& change) const {
    const auto& read = reading_.ingredients[added.ingredient].read;
    return !read.foods.empty() && read.unknown.empty() && in_state(read, change) &&
           std::all_of(read.foods.begin(), read.foods.end(), [&](const foods::Named& named) {
             return named.food != nullptr && one_of(*named.food, change.to, *reading_.catalogue);
           });
  }

  // ---- swaps

  std::optional<Pool> pool_of(const Change& change) const {
    Pool pool;
    for (std::size_t i = 0; i < formula_.lines.size(); ++i)
      if (meant(change, formula_.lines[i]) && !formula_.lines[i].per_jar) {
        pool.lines |= line_bit(i);
        pool.of_lines.push_back(i);
      }
    if (pool.lines == 0) return std::nullopt;
    for (const auto& pair : by_.pairing.pairs) {
      if ((pair.lines & pool.lines) == 0) continue;
      if ((pair.lines & ~pool.lines) != 0) return std::nullopt;
      pool.ingredients.insert(pool.ingredients.end(), pair.ingredients.begin(), pair.ingredients.end());
    }
    for (std::size_t i = 0; i < result_.added.size(); ++i) {
      const auto& added = result_.added[i];
      if (added.change != nullptr || !may_come_in(added, change)) continue;
      pool.added.push_back(i);
      pool.ingredients.push_back(added.ingredient);
    }
    return pool;
  }

  /// Something was put in place of something else: one line of the pool has less, another more, or a new food
  /// came in.
  bool swapped(const Pool& pool) const {
    bool less = false, more = false, open = false;
    for (const auto i : pool.of_lines) {
      const auto state = result_.lines[i].state;
      less = less || state == State::less || state == State::missing;
      more = more || state == State::more;
      open = open || state == State::unknown;
    }
    return !open && (!pool.added.empty() || (less && more));
  }

  void swap(const Change& change) {
    const auto pool = pool_of(change);
    if (!pool || pool->ingredients.empty() || !swapped(*pool)) return;
    const auto total = total_of(*pool);
    if (!total) {
      tell_open(*pool, change);
      return;
    }
    const auto beside_total = beside(total->card, total->published);
    const bool as_much = beside_total.result == Beside::Result::equal ||
                         (change.at_least && beside_total.result == Beside::Result::more);
    for (const auto i : pool->added) result_.added[i].change = &change;
    bool told = false;
    for (const auto i : pool->of_lines) {
      auto& line = result_.lines[i];
      if (!differs(line.state)) continue;
      line.change = &change;
      line.state = State::allowed;
      if (as_much || told) continue;
      told = true;
      tell_total(line, pool->of_lines.size() + pool->added.size() > 1, *total, beside_total);
    }
    if (!as_much && !told) {  // the lines hold, and something came on top
      auto& line = result_.lines[pool->of_lines.front()];
      line.at = reading_.ingredients[result_.added[pool->added.front()].ingredient].line->at;
      tell_total(line, true, *total, beside_total);
    }
  }

  struct Total {
    Interval<double> published, card;
    const quantity::Amount* unit = nullptr;  ///< the published amount whose unit words the totals
    double of_unit = 1;                      ///< that amount in SI units or pieces
  };

  std::optional<Total> total_of(const Pool& pool) const {
    const Pair pair{pool.lines, pool.of_lines.front(), pool.ingredients};
    const auto& amounts = formula_.lines[pair.first_line].amounts;
    for (const auto& size : by_.sizes.published(pair)) {
      const auto card = by_.sizes.on_card(pair, size);
      if (!card || amounts.empty()) continue;
      for (const auto& one : sizes_of(amounts.front()))
        if (one.kind == size.kind && one.value.high > 0)
          return Total{size.value * by_.batch.factor(formula_.lines[pair.first_line].part), card->value,
                       &amounts.front(), one.value.high};
    }
    return std::nullopt;
  }

  static void tell_total(LineComparison& line, bool several, const Total& total, const Beside& beside_total) {
    const auto result = beside_total.result;
    line.state = result == Beside::Result::more   ? State::more
                 : result == Beside::Result::less ? State::less
                                                  : State::unknown;
    line.change = nullptr;
    line.percent = beside_total.percent;
    const std::string all = several ? " in all" : "";
    line.found = words_of(*total.unit, total.card.high / total.of_unit) + all;
    line.needed = words_of(*total.unit, total.published.high / total.of_unit) + all;
    if (line.state == State::unknown) line.reason = "as the card has it, it can be more or less than that";
  }

  void tell_open(const Pool& pool, const Change& change) {
    if (change.at_least) return;  // an acid that can't be measured is missing, and told so
    for (const auto i : pool.of_lines) {
      auto& line = result_.lines[i];
      if (!differs(line.state)) continue;
      line.state = State::unknown;
      line.reason = "measure what stands in its place as the formula does";
    }
  }

  // ---- directions

  void judge(LineComparison& line) {
    const unsigned moved = line.state == State::more   ? Change::more
                           : line.state == State::less ? Change::less
                                                       : Change::leave_out;
    for (const auto* change : product_.changes)
      if ((change->does & moved) != 0 && meant(*change, *line.line)) {
        line.state = State::allowed;
        line.change = change;
        return;
      }
  }

  const Change* change_for(const AddedIngredient& added) const {
    for (const auto* change : product_.changes)
      if ((change->does & Change::add) != 0 && may_come_in(added, *change)) return change;
    return nullptr;
  }

  const Product& product_;
  const Formula& formula_;
  const reading::Reading& reading_;
  const ComparedBy& by_;
  FormulaComparison& result_;
};

}  // namespace

bool meant(const Change& change, const FormulaLine& line, const Product& product,
           const foods::Catalogue& catalogue) {
  if (line.not_eaten || (change.not_main && is_main(line, product, catalogue))) return false;
  const auto in = [&](const auto& list) {
    return std::find(list.begin(), list.end(), line.role) != list.end();
  };
  if (!change.roles.empty() && !in(change.roles)) return false;
  return change.foods.empty() || std::any_of(line.foods.begin(), line.foods.end(), [&](const auto& id) {
           const auto* one = catalogue.find(id);
           return one != nullptr && one_of(*one, change.foods, catalogue);
         });
}

void apply_changes(const Product& product, const Formula& formula, const reading::Reading& reading,
                   const ComparedBy& by, FormulaComparison& result) {
  if (result.differences() > 0) Applying(product, formula, reading, by, result).run();
}

}  // namespace sealworthy::tested
