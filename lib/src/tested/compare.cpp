#include "tested/compare.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <optional>

#include "tested/compare_amounts.hpp"
#include "tested/compare_changes.hpp"
#include "tested/compare_pairs.hpp"
#include "tested/compare_replaced.hpp"
#include "tested/compare_sizes.hpp"
#include "tested/line_foods.hpp"

namespace sealworthy::tested {
namespace {

using State = LineComparison::State;

class Comparing {
 public:
  Comparing(const Product& product, const Formula& formula, const reading::Reading& reading, Words words)
      : product_(product),
        formula_(formula),
        reading_(reading),
        in_words_(words == Words::yes),
        fermented_(product.acid_class == ProductClass::fermented),
        facts_(formula.facts),
        pairing_(pair_up(formula, reading)),
        sizes_(formula, reading),
        batch_(formula, facts_, pairing_, sizes_, reading) {}

  FormulaComparison run() {
    result_.lines.resize(formula_.lines.size());
    for (std::size_t i = 0; i < formula_.lines.size(); ++i) {
      result_.lines[i].line = &formula_.lines[i];
      result_.lines[i].factor = batch_.factor(formula_.lines[i].part);
      result_.lines[i].dry_spice = has(facts_.flavor, i);
      result_.lines[i].water = has(facts_.water, i);
    }
    for (const auto i : pairing_.unplaced) add_foreign(i);
    result_.rests_on_acid = facts_.acid;
    if (facts_.acid)
      for (const auto i : pairing_.water) add_foreign(i);
    for (const auto& [i, named] : pairing_.beside)
      if (facts_.acid || !is_water(*named->food)) add_foreign(i, named->food, named->name);
    result_.factor = batch_.factor("");
    for (const auto& pair : pairing_.pairs) compare(pair);
    for (std::size_t i = 0; i < formula_.lines.size(); ++i) finish(i);
    for (auto& line : result_.lines) note_strength(line);
    apply_changes(product_, formula_, reading_, {pairing_, sizes_, batch_}, result_);
    pair_replaced(reading_, result_);
    return std::move(result_);
  }

 private:
  static bool has(Lines lines, std::size_t line) { return (lines & line_bit(line)) != 0; }
  const reading::Ingredient& ingredient(std::size_t i) const { return reading_.ingredients[i]; }
  const foods::LineReading& read(std::size_t i) const { return reading_.ingredients[i].read; }
  Position place(std::size_t i) const {
    return ingredient(i).line != nullptr ? ingredient(i).line->at : Position{};
  }

  void add_foreign(std::size_t i) {
    std::string name;
    for (const auto& named : read(i).foods)
      if (name.empty() || named.food == ingredient(i).food) name = named.name;
    if (name.empty() && !read(i).unknown.empty()) name = read(i).unknown.front();
    add_foreign(i, ingredient(i).food, std::move(name));
  }

  void add_foreign(std::size_t i, const foods::Food* food, std::string name) {
    AddedIngredient added;
    added.ingredient = i;
    added.at = place(i);
    added.food = food;
    if (food != nullptr) {
      added.dry_spice = only_flavor(*food);
      added.salt = is_salt(*food);
      added.water = is_water(*food);
    }
    added.stated = read(i).amount.stated_any();
    added.name = std::move(name);
    result_.added.push_back(std::move(added));
  }

  /// "2 cups peppers and corn" beside a line of peppers: how much of it is peppers is not told.
  bool names_more(const Pair& pair, std::size_t ingredient) const {
    if (!read(ingredient).all_of || (pair.lines & ~facts_.flavor & ~facts_.not_eaten) == 0) return false;
    return std::any_of(read(ingredient).foods.begin(), read(ingredient).foods.end(),
                       [&](const foods::Named& named) {
                         if (named.food == nullptr || only_flavor(*named.food)) return false;
                         for (std::size_t i = pair.first_line; i < formula_.lines.size(); ++i)
                           if (has(pair.lines, i) &&
                               stands_for_any(*named.food, formula_.lines[i].named, *reading_.catalogue))
                             return false;
                         return true;
                       });
  }

  /// Why an ingredient line can't be told for sure: a word that is not known, two amounts in one line.
  std::string not_clear(const Pair& pair) const {
    for (const auto i : pair.ingredients) {
      if (!read(i).unknown.empty()) return "\"" + read(i).unknown.front() + "\" is not known";
      if (names_more(pair, i)) return "it does not say how much of each";
      for (const auto& named : read(i).foods)
        if (named.amount) return "two foods with amounts of their own stand in one line";
    }
    return {};
  }

  /// "8 cups vinegar and water": the total says nothing about the acid, which must be known by itself, nor
  /// about a low-acid food beside something else.
  bool shares_untold(const Pair& pair) const {
    const std::string* first = nullptr;
    bool several = false, decides = false;
    for (std::size_t i = pair.first_line; i < formula_.lines.size(); ++i) {
      if (!has(pair.lines & ~facts_.flavor & ~facts_.not_eaten, i)) continue;
      const auto& role = formula_.lines[i].role;
      several = several || (first != nullptr && *first != role);
      decides = decides || role == "acid" || role == "low-acid";
      if (first == nullptr) first = &role;
    }
    return several && decides;
  }

  void compare(const Pair& pair) {
    const bool amounts = std::all_of(pair.ingredients.begin(), pair.ingredients.end(),
                                     [&](std::size_t i) { return read(i).amount.stated_any(); });
    if (const auto why = not_clear(pair); !why.empty()) return settle(pair, State::unknown, {}, why);
    if (shares_untold(pair)) return settle(pair, State::unknown, {}, "it does not say how much of each");
    if (!amounts) {
      if (leaves_open(pair.first_line)) return settle(pair, State::free, {}, {});
      return settle(pair, State::unknown, {}, "the card gives no amount");
    }
    std::string reason;
    const auto result = beside_published(pair, reason);
    static constexpr std::array states{State::held, State::more, State::less, State::unknown};
    settle(pair, states[static_cast<std::size_t>(result.result)], result, reason);
  }

  Beside beside_published(const Pair& pair, std::string& reason) const {
    const double factor = batch_.scale(pair, reason);
    if (factor <= 0) return {};
    std::optional<Beside> first;
    for (const auto& size : sizes_.published(pair)) {
      const auto card = sizes_.on_card(pair, size);
      if (!card) continue;
      const auto result = beside(card->value, size.value * factor);
      if (result.result == Beside::Result::equal) return result;
      if (!first) first = result;
    }
    if (!first) return by_weight(pair, factor, reason);
    if (first->result == Beside::Result::open) {
      if (const auto worse = worse_end(pair, factor)) return *worse;
      reason = "as the card has it, it can be more or less than that";
    }
    return *first;
  }

  /// A range that the card gives itself ("2 to 3 cups") is judged at the end that is worse: least of an acid,
  /// most of a low-acid food. "About" and weights worked out from cups stay open.
  std::optional<Beside> worse_end(const Pair& pair, double factor) const {
    bool range = false;
    for (const auto i : pair.ingredients) {
      if (read(i).amount.about) return std::nullopt;
      range = range || read(i).optional || !read(i).amount.stated.exact();
    }
    if (!range) return std::nullopt;
    const std::string& role = formula_.lines[pair.first_line].role;
    const bool much_is_worse =
        role == "low-acid" || role == "fat" || role == "starch" || has(facts_.water, pair.first_line);
    for (const auto& size : sizes_.published(pair)) {
      const auto card = sizes_.on_card(pair, size);
      if (!card) continue;
      const auto published = size.value * factor;
      const auto low = beside({card->value.low, card->value.low}, published);
      const auto high = beside({card->value.high, card->value.high}, published);
      const bool less = low.result == Beside::Result::less, more = high.result == Beside::Result::more;
      if (more && (much_is_worse || !less)) return high;
      if (less) return low;
    }
    return std::nullopt;
  }

  /// What pieces weigh in a cup depends on how they are cut and packed: 10 percent either way (common
  /// practice).
  static Interval<double> loosely(const Interval<double>& weight, const foods::Food& food) {
    static constexpr std::array<std::string_view, 6> even{"liquid", "acid", "sweetener",
                                                          "salt",   "fat",  "spice"};
    if (std::find(even.begin(), even.end(), food.kind) != even.end()) return weight;
    return {weight.low * 0.9, weight.high * 1.1};
  }

  /// Across weight, volume and count.
  Beside by_weight(const Pair& pair, double factor, std::string& reason) const {
    const auto& line = formula_.lines[pair.first_line];
    reason = line.amounts.empty() ? "the formula gives it in words only" : "measure it as the formula does";
    const auto* food = ingredient(pair.ingredients.front()).food;
    const auto card = sizes_.card_weight(pair);
    if (food == nullptr || !card || std::popcount(pair.lines) != 1) return {};
    for (const auto& amount : line.amounts) {
      const auto weight = reading_.catalogue->weigh(amount, *food, line.states);
      if (weight) return beside_every(card->value, loosely(size_of(*weight).value * factor, *food));
    }
    return {};
  }

  /// True if a line may lack an amount on the card. Water thins the acid of a formula that rests on one.
  bool leaves_open(std::size_t line) const {
    const auto& published = formula_.lines[line];
    if (has(facts_.flavor | facts_.not_eaten, line) || published.amounts.empty()) return true;
    if (published.role == "salt") return !fermented_;
    return has(facts_.water, line) && !facts_.acid;
  }

  void settle(const Pair& pair, State state, const Beside& result, const std::string& reason) {
    const auto first = pair.ingredients.front();
    for (std::size_t i = pair.first_line; i < formula_.lines.size(); ++i) {
      if (!has(pair.lines, i)) continue;
      auto& out = result_.lines[i];
      out.ingredient = first;
      out.ingredients = pair.ingredients;
      out.at = place(first);
      out.state = state != State::held && has(facts_.not_eaten, i) ? State::free : state;
      if (out.state == State::held || out.state == State::free) continue;
      out.percent = result.percent;
      out.with_line_before = i != pair.first_line;
      if (!in_words_) continue;
      out.reason = out.state == State::unknown ? reason : std::string();
      out.found = found_words(pair);
      out.needed = out.with_line_before ? needed_words(i) : needed_words(pair);
    }
  }

  std::string found_words(const Pair& pair) const {
    std::string out;
    for (const auto i : pair.ingredients) {
      if (!read(i).amount.stated_any()) continue;
      if (!out.empty()) out += " and ";
      out += words_of(read(i).amount, 1);
    }
    return out;
  }

  std::string needed_words(std::size_t line) const {
    const auto& published = formula_.lines[line];
    if (published.amounts.empty()) return published.text;
    return words_of(published.amounts.front(), published.per_jar ? 1 : batch_.factor(published.part));
  }

  /// The sum of the pair's lines, where they are in one unit: "4 cups" of peppers for 2 green and 2 red.
  std::string needed_words(const Pair& pair) const {
    const auto& first = formula_.lines[pair.first_line];
    if (std::popcount(pair.lines) == 1 || first.amounts.empty()) return needed_words(pair.first_line);
    auto sum = first.amounts.front();
    std::string all = needed_words(pair.first_line);
    bool one_unit = true;
    for (std::size_t i = pair.first_line + 1; i < formula_.lines.size(); ++i) {
      if (!has(pair.lines, i)) continue;
      all += " and " + needed_words(i);
      const auto& amounts = formula_.lines[i].amounts;
      one_unit = one_unit && !amounts.empty() && amounts.front().unit == sum.unit &&
                 amounts.front().size == sum.size && formula_.lines[i].part == first.part;
      if (one_unit) sum.stated = sum.stated + amounts.front().stated;
    }
    return one_unit ? words_of(sum, first.per_jar ? 1 : batch_.factor(first.part)) : all;
  }

  /// A vinegar weaker than the formula's.
  void note_strength(LineComparison& line) const {
    constexpr double hair = 0.05;
    if (!line.line->strength_percent) return;
    for (const auto i : line.ingredients) {
      const auto strength = read(i).strength_percent;
      if (strength && *strength < *line.line->strength_percent - hair) line.weak_percent = strength;
    }
  }

  /// A line that no ingredient is for.
  void finish(std::size_t line) {
    auto& out = result_.lines[line];
    if (out.ingredient != LineComparison::none) return;
    const auto& published = formula_.lines[line];
    const bool free = published.optional || published.not_eaten || (has(facts_.water, line) && !facts_.acid);
    out.state = free ? State::free : State::missing;
    if (!free && in_words_) out.needed = needed_words(line);
  }

  const Product& product_;
  const Formula& formula_;
  const reading::Reading& reading_;
  bool in_words_;
  bool fermented_;
  const LineFacts& facts_;
  Pairing pairing_;
  PairSizes sizes_;
  Batch batch_;
  FormulaComparison result_;
};

}  // namespace

std::size_t FormulaComparison::differences() const {
  const auto open = std::count_if(lines.begin(), lines.end(), [](const LineComparison& line) {
    return line.weak_percent ||
           (line.state != State::held && line.state != State::free && line.state != State::allowed);
  });
  const auto foreign = std::count_if(added.begin(), added.end(), [](const AddedIngredient& one) {
    return one.change == nullptr && one.replaces == LineComparison::none;
  });
  return static_cast<std::size_t>(open + foreign);
}

bool FormulaComparison::held() const { return differences() == 0; }

bool FormulaComparison::as_published() const {
  return added.empty() && std::all_of(lines.begin(), lines.end(), [](const LineComparison& line) {
           return !line.weak_percent &&
                  (line.state == LineComparison::State::held || line.state == LineComparison::State::free);
         });
}

namespace {

/// A formula whose mix is free (its identity lists what may be in it): lines are suggestions.
void free_mix(const Identity& identity, const reading::Reading& reading, FormulaComparison& result) {
  for (auto& line : result.lines) {
    if (line.state != State::held) line.state = State::free;
    line.found.clear();
    line.needed.clear();
    line.reason.clear();
    line.replaced_by = LineComparison::none;
  }
  for (auto& added : result.added) added.replaces = LineComparison::none;
  std::erase_if(result.added, [&](const AddedIngredient& added) {
    const auto* food = reading.ingredients[added.ingredient].food;
    return food != nullptr && (stands_for_any(*food, identity.any_of, *reading.catalogue) ||
                               stands_for_any(*food, identity.may, *reading.catalogue));
  });
}

}  // namespace

FormulaComparison compare(const Product& product, const reading::Reading& reading, Words words) {
  auto best = Comparing(product, *product.formula, reading, words).run();
  for (const auto& version : product.versions) {
    auto other = Comparing(product, version, reading, words).run();
    if (other.differences() < best.differences()) best = std::move(other);
  }
  if (!product.identity.any_of.empty()) free_mix(product.identity, reading, best);
  return best;
}

}  // namespace sealworthy::tested
