#include "foods/weigh.hpp"

#include <algorithm>
#include <array>

namespace sealworthy::foods {
namespace {

using Grams = Interval<double>;
constexpr double spoons_per_cup = 16;  ///< tablespoons; US customary
constexpr double small_spoons_per_cup = 48;

constexpr int same_state = 4;   ///< agreement of a measure that is in a state of the line
constexpr int like_state = 2;   ///< in one that weighs like it
constexpr int other_state = 6;  ///< against a measure in a state that weighs apart and is not told

bool in(std::span<const StateId> states, StateId state) {
  return std::find(states.begin(), states.end(), state) != states.end();
}

/// How well a measure's states agree with those of the line.
int agreement(const std::vector<StateId>& measured, std::span<const StateId> states, const Phrases& phrases) {
  int score = 0;
  for (const auto state : measured) {
    if (in(states, state))
      score += same_state;
    else if (phrases.state(state).weighs_apart)
      score -= other_state;
    else
      for (const auto told : states)
        if (phrases.state(told).like == state) score += like_state;
  }
  return score;
}

/// The hull of what the measures that agree best say; `grams_of` gives a measure's figure, if it has one.
template <class GramsOf>
std::optional<Grams> best(FoodId food, std::span<const StateId> states, const Index& index,
                          GramsOf&& grams_of) {
  std::optional<Grams> found;
  int best_score = 0;
  const auto& measures = index.foods[food].measures;
  for (std::size_t i = 0; i < measures.size(); ++i) {
    const std::optional<Grams> grams = grams_of(measures[i]);
    if (!grams) continue;
    const int score = agreement(index.measure_states[food][i], states, index.phrases);
    if (!found || score > best_score) {
      found = grams;
      best_score = score;
    } else if (score == best_score) {
      found = hull(*found, *grams);
    }
  }
  return found;
}

std::optional<Grams> cup_of(const Measure& measure) {
  if (measure.cup_g) return Grams::exactly(*measure.cup_g);
  if (measure.tbsp_g) return Grams::exactly(*measure.tbsp_g * spoons_per_cup);
  if (measure.tsp_g) return Grams::exactly(*measure.tsp_g * small_spoons_per_cup);
  return std::nullopt;
}

constexpr std::array<std::string_view, 3> sizes{"small", "medium", "large"};
bool is_size(std::string_view key) { return std::find(sizes.begin(), sizes.end(), key) != sizes.end(); }

/// One piece: "medium" of a bare count, "small-stalk" or "clove" of a counted part. Without a size all sizes
/// of the kind fit.
std::optional<Grams> piece_of(const Measure& measure, std::string_view unit, std::string_view size) {
  std::optional<Grams> found;
  for (const auto& [key, grams] : measure.each_g) {
    const std::string_view whole = key;
    const auto dash = whole.find('-');
    const bool sized = is_size(whole.substr(0, dash));
    const auto its_size = sized ? whole.substr(0, dash) : std::string_view();
    const auto its_unit = !sized                           ? whole
                          : dash == std::string_view::npos ? std::string_view()
                                                           : whole.substr(dash + 1);
    if (its_unit != unit) continue;
    if (!size.empty() && !its_size.empty() && its_size != size) continue;
    found = found ? hull(*found, Grams::exactly(grams)) : Grams::exactly(grams);
  }
  return found;
}

/// A head of cabbage, a bulb of fennel, an ear: the piece itself where the food is counted by no other name.
bool is_whole_piece(std::string_view unit) {
  static constexpr std::array<std::string_view, 6> whole{"", "head", "bulb", "piece", "ear", "stalk"};
  return std::find(whole.begin(), whole.end(), unit) != whole.end();
}

std::optional<Grams> pieces(const quantity::Amount& amount, FoodId food, std::span<const StateId> states,
                            const Index& index) {
  const std::string_view unit = amount.unit == "rib" ? "stalk" : std::string_view(amount.unit);
  const std::string_view size = is_size(amount.size) ? std::string_view(amount.size) : std::string_view();
  const auto of_unit = best(food, states, index, [&](const Measure& m) { return piece_of(m, unit, size); });
  if (of_unit || !is_whole_piece(unit)) return of_unit;
  return best(food, states, index, [&](const Measure& m) { return piece_of(m, {}, size); });
}

std::optional<Interval<Mass>> as_mass(const std::optional<Grams>& grams) {
  if (!grams) return std::nullopt;
  return Interval<Mass>{sealworthy::grams(grams->low), sealworthy::grams(grams->high)};
}

std::optional<Grams> of_volume(const Interval<Volume>& volume, const std::optional<Grams>& cup) {
  if (!cup) return std::nullopt;
  return Grams{in_us_cups(volume.low) * cup->low, in_us_cups(volume.high) * cup->high};
}

}  // namespace

std::optional<Interval<Mass>> weigh_amount(const quantity::Amount& amount, FoodId food,
                                           std::span<const StateId> states, const Index& index) {
  if (const auto* mass = std::get_if<Interval<Mass>>(&amount.measure)) return *mass;
  const auto* count = std::get_if<Interval<Count>>(&amount.measure);
  const auto times = count != nullptr ? Interval<double>{in_pieces(count->low), in_pieces(count->high)}
                                      : Interval<double>::exactly(1);
  if (count != nullptr)
    if (const auto* each = std::get_if<Interval<Mass>>(&amount.each))
      return Interval<Mass>{each->low * times.low, each->high * times.high};
  const auto* volume = std::get_if<Interval<Volume>>(&amount.measure);
  if (count != nullptr && volume == nullptr) volume = std::get_if<Interval<Volume>>(&amount.each);
  for (FoodId at = food; at != no_food; at = index.parents[at]) {
    std::optional<Grams> grams;
    if (volume != nullptr)
      grams = of_volume(*volume, best(at, states, index, cup_of));
    else if (count != nullptr)
      grams = pieces(amount, at, states, index);
    if (grams) return as_mass(Grams{grams->low * times.low, grams->high * times.high});
  }
  return std::nullopt;
}

}  // namespace sealworthy::foods
