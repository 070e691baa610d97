#include "tested/compare_pairs.hpp"

#include <algorithm>
#include <bit>

#include "tested/compare_amounts.hpp"
#include "tested/line_foods.hpp"
#include "text/words.hpp"

namespace sealworthy::tested {
namespace {

class PairingUp {
 public:
  PairingUp(const Formula& formula, const reading::Reading& reading)
      : formula_(formula), facts_(formula.facts), reading_(reading) {}

  Pairing run() {
    lines_for_.reserve(reading_.ingredients.size());
    for (std::size_t i = 0; i < reading_.ingredients.size(); ++i) lines_for_.push_back(lines_for(i));
    find_groups();
    out_.pairs.reserve(formula_.lines.size());
    for (auto& group : groups_) {
      const bool one_with_one = group.ingredients.size() == 1 && (group.lines & facts_.not_eaten) == 0;
      if (std::popcount(group.lines) > 1 && !one_with_one)
        share_out(group);
      else
        add_pair(group.lines, std::move(group.ingredients));
    }
    return std::move(out_);
  }

 private:
  /// Lines and ingredients that hang together, in the order of the card.
  struct Group {
    Lines lines = 0;
    std::vector<std::size_t> ingredients;
  };

  const foods::LineReading& read(std::size_t ingredient) const {
    return reading_.ingredients[ingredient].read;
  }

  /// Lines that a food may stand in.
  Lines lines_of(const foods::Food& food) const {
    Lines out = 0;
    for (std::size_t i = 0; i < formula_.lines.size(); ++i)
      if (stands_for_any(food, formula_.lines[i].named, *reading_.catalogue)) out |= line_bit(i);
    return out;
  }

  /// Lines that an ingredient may be: of alternatives each must fit, of "salt and pepper" any. Soak water is
  /// not the water of the brine; where the card does not say which it is, only the published amount makes it
  /// the soak.
  Lines lines_for(std::size_t ingredient) const {
    const auto& line = read(ingredient);
    Lines out = 0;
    for (std::size_t k = 0; k < line.foods.size(); ++k) {
      const Lines one = line.foods[k].food == nullptr ? 0 : lines_of(*line.foods[k].food);
      out = k == 0 ? one : line.all_of ? out | one : out & one;
    }
    Lines fitting = line.not_eaten ? out & facts_.not_eaten : out & ~facts_.not_eaten;
    if (!line.not_eaten && fitting != 0)
      for (std::size_t i = 0; i < formula_.lines.size(); ++i)
        if ((out & facts_.not_eaten & line_bit(i)) != 0 && same_amount(i, ingredient)) fitting |= line_bit(i);
    if (fitting != 0) return fitting;
    // What the card does not call soak water may still be it, unless another line is.
    return !line.not_eaten && said_not_eaten(out, ingredient) ? 0 : out;
  }

  /// True if another ingredient that the card calls not eaten may be one of these lines.
  bool said_not_eaten(Lines lines, std::size_t ingredient) const {
    for (std::size_t i = 0; i < reading_.ingredients.size(); ++i) {
      if (i == ingredient || !read(i).not_eaten) continue;
      for (const auto& named : read(i).foods)
        if (named.food != nullptr && (lines_of(*named.food) & lines) != 0) return true;
    }
    return false;
  }

  /// "peppers and corn": the corn must not go in unseen because the peppers have a place.
  void find_beside(std::size_t ingredient) {
    const auto& line = read(ingredient);
    if (!line.all_of || line.not_eaten) return;
    for (const auto& named : line.foods)
      if (named.food != nullptr && lines_of(*named.food) == 0) out_.beside.emplace_back(ingredient, &named);
  }

  void find_groups() {
    for (std::size_t i = 0; i < reading_.ingredients.size(); ++i) {
      Group group{lines_for_[i], {i}};
      if (group.lines == 0) {
        const auto* food = reading_.ingredients[i].food;
        const bool water = food != nullptr && is_water(*food);
        if (!read(i).not_eaten) (water ? out_.water : out_.unplaced).push_back(i);
        continue;
      }
      find_beside(i);
      for (std::size_t g = groups_.size(); g-- > 0;) {
        if ((groups_[g].lines & group.lines) == 0) continue;
        group.lines |= groups_[g].lines;
        group.ingredients.insert(group.ingredients.begin(), groups_[g].ingredients.begin(),
                                 groups_[g].ingredients.end());
        groups_.erase(groups_.begin() + static_cast<std::ptrdiff_t>(g));
      }
      groups_.push_back(std::move(group));
    }
  }

  /// Each line gets the ingredient that is most like it; what is left over counts with the line it fits best.
  void share_out(const Group& group) {
    struct Fit {
      int likeness;
      std::size_t line, ingredient;
    };
    std::vector<Fit> fits;
    for (std::size_t line = 0; line < formula_.lines.size(); ++line)
      for (const auto i : group.ingredients)
        if ((group.lines & lines_for_[i] & line_bit(line)) != 0)
          fits.push_back({likeness(line, i) + (same_rank(group, line, i) ? 3 : 0), line, i});
    std::stable_sort(fits.begin(), fits.end(),
                     [](const Fit& a, const Fit& b) { return a.likeness > b.likeness; });
    std::vector<std::vector<std::size_t>> of_line(formula_.lines.size());
    std::vector<bool> used(reading_.ingredients.size(), false);
    for (const bool first_round : {true, false})
      for (const auto& fit : fits)
        if (!used[fit.ingredient] && (!first_round || of_line[fit.line].empty())) {
          of_line[fit.line].push_back(fit.ingredient);
          used[fit.ingredient] = true;
        }
    for (std::size_t line = 0; line < of_line.size(); ++line)
      if (!of_line[line].empty()) add_pair(line_bit(line), std::move(of_line[line]));
  }

  /// True if as many lines of the group are smaller than this one as ingredients are than that one: of two
  /// lines of one food the larger is the larger whatever the batch.
  bool same_rank(const Group& group, std::size_t line, std::size_t ingredient) const {
    const auto published = low_of(formula_.lines[line].amounts);
    const auto found = sizes_of(read(ingredient).amount);
    if (!published || found.empty() || found.front().kind != published->kind) return false;
    int smaller_lines = 0, smaller_ingredients = 0;
    for (std::size_t i = 0; i < formula_.lines.size(); ++i) {
      if ((group.lines & line_bit(i)) == 0) continue;
      const auto other = low_of(formula_.lines[i].amounts);
      if (!other || other->kind != published->kind) return false;
      if (other->value.low < published->value.low) ++smaller_lines;
    }
    for (const auto i : group.ingredients) {
      const auto other = sizes_of(read(i).amount);
      if (other.empty() || other.front().kind != published->kind) return false;
      if (other.front().value.low < found.front().value.low) ++smaller_ingredients;
    }
    return smaller_lines == smaller_ingredients;
  }

  static std::optional<Size> low_of(const std::vector<quantity::Amount>& amounts) {
    if (amounts.empty()) return std::nullopt;
    const auto sizes = sizes_of(amounts.front());
    return sizes.empty() ? std::nullopt : std::optional(sizes.front());
  }

  /// Words that a line of the formula and one of the card share, and more for an equal amount.
  int likeness(std::size_t line, std::size_t ingredient) const {
    constexpr int shared_word = 6, equal_amount = 2;
    const auto& published = formula_.lines[line];
    const auto* card = reading_.ingredients[ingredient].line;
    const text::Words card_words(card != nullptr ? card->text : std::string_view());
    int out = 0;
    for (const auto& word : text::Words(published.text))
      for (const auto& other : card_words)
        if (word.text == other.text && !word.number && word.text.size() > 2) out += shared_word;
    return same_amount(line, ingredient) ? out + equal_amount : out;
  }

  bool same_amount(std::size_t line, std::size_t ingredient) const {
    const auto& published = formula_.lines[line].amounts;
    const auto found = sizes_of(read(ingredient).amount);
    if (published.empty() || found.empty()) return published.empty() && found.empty();
    for (const auto& amount : published)
      for (const auto& size : sizes_of(amount))
        if (found.front().beside(size) &&
            beside(found.front().value, size.value).result == Beside::Result::equal)
          return true;
    return false;
  }

  void add_pair(Lines lines, std::vector<std::size_t> ingredients) {
    out_.pairs.push_back({lines, static_cast<std::size_t>(std::countr_zero(lines)), std::move(ingredients)});
  }

  const Formula& formula_;
  const LineFacts& facts_;
  const reading::Reading& reading_;
  std::vector<Lines> lines_for_;  ///< by ingredient
  std::vector<Group> groups_;
  Pairing out_;
};

}  // namespace

LineFacts facts_of(const Formula& formula) {
  LineFacts out;
  for (std::size_t i = 0; i < formula.lines.size(); ++i) {
    const auto& line = formula.lines[i];
    const auto flavor = [](const foods::Food* food) { return food != nullptr && only_flavor(*food); };
    const auto water = [](const foods::Food* food) { return food != nullptr && is_water(*food); };
    if (!line.named.empty() && std::all_of(line.named.begin(), line.named.end(), flavor))
      out.flavor |= line_bit(i);
    if (std::any_of(line.named.begin(), line.named.end(), water))  // water or cooking liquid
      out.water |= line_bit(i);
    if (line.not_eaten) out.not_eaten |= line_bit(i);
    if (line.role == "acid" && !line.not_eaten) out.acid = true;
  }
  return out;
}

Pairing pair_up(const Formula& formula, const reading::Reading& reading) {
  return PairingUp(formula, reading).run();
}

}  // namespace sealworthy::tested
