#include "tested/compare_sizes.hpp"

#include <algorithm>
#include <bit>
#include <tuple>

namespace sealworthy::tested {
namespace {

bool has(Lines lines, std::size_t line) { return (lines & line_bit(line)) != 0; }

bool is_food(const FormulaLine& line) { return line.role.empty() || line.role == "low-acid"; }

/// The first amount of a line in the dimension of a published size; what is optional may be none.
std::optional<Size> size_beside(const foods::LineReading& line, const Size& published) {
  std::optional<Size> out;
  const auto take = [&](const quantity::Amount& amount) {
    for (const auto& size : sizes_of(amount))
      if (!out && size.beside(published)) out = size;
  };
  take(line.amount);
  for (const auto& more : line.more) take(more);
  if (out && line.optional) out->value.low = 0;
  return out;
}

}  // namespace

std::optional<Size> PairSizes::on_card(const Pair& pair, const Size& published) const {
  std::optional<Size> sum;
  for (const auto i : pair.ingredients) {
    const auto one = size_beside(reading_.ingredients[i].read, published);
    if (!one) return std::nullopt;
    if (sum)
      sum->value = sum->value + one->value;
    else
      sum = one;
  }
  return sum;
}

std::optional<Size> PairSizes::card_weight(const Pair& pair) const {
  std::optional<Interval<Mass>> sum;
  for (const auto i : pair.ingredients) {
    const auto& [line, read, food] = reading_.ingredients[i];
    auto weight = read.weight;
    if (!weight && food != nullptr) weight = reading_.catalogue->weigh(read.amount, *food, read.states);
    if (!weight) return std::nullopt;
    sum = sum ? *sum + *weight : *weight;
  }
  return sum ? std::optional(size_of(*sum)) : std::nullopt;
}

std::vector<Size> PairSizes::published(const Pair& pair) const {
  std::vector<Size> out;
  if (std::popcount(pair.lines) > 1) {
    if (const auto sum = sum_of_lines(pair)) out.push_back(*sum);
    return out;
  }
  const auto& line = formula_.lines[pair.first_line];
  const bool both_optional = line.optional && reading_.ingredients[pair.ingredients.front()].read.optional;
  for (const auto& amount : line.amounts)
    for (auto size : sizes_of(amount)) {
      if (line.at_most || amount.at_most || both_optional) size.value.low = 0;
      out.push_back(size);
    }
  return out;
}

std::optional<Size> PairSizes::sum_of_lines(const Pair& pair) const {
  std::optional<Size> sum;
  for (std::size_t i = 0; i < formula_.lines.size(); ++i) {
    if (!has(pair.lines, i) || formula_.lines[i].amounts.empty()) continue;
    const auto sizes = sizes_of(formula_.lines[i].amounts.front());
    if (sizes.empty() || (sum && !sum->beside(sizes.front()))) return std::nullopt;
    if (sum)
      sum->value = sum->value + sizes.front().value;
    else
      sum = sizes.front();
  }
  return sum;
}

Batch::Batch(const Formula& formula, const LineFacts& facts, const Pairing& pairing, const PairSizes& sizes,
             const reading::Reading& reading)
    : formula_(formula), reading_(reading) {
  std::vector<Known> known;
  known.reserve(pairing.pairs.size());
  for (const auto& pair : pairing.pairs) {
    const auto& line = formula.lines[pair.first_line];
    const bool per_jar = line.per_jar || reading.ingredients[pair.ingredients.front()].read.per_jar;
    if (has(facts.flavor, pair.first_line) || per_jar) continue;
    auto weighed = by_weight(pair, sizes);
    bool exact = false;
    for (const auto& size : sizes.published(pair))
      if (const auto card = sizes.on_card(pair, size)) {
        known.push_back({line.part, card->value, size.value});
        if (weighed) known.back().grams = std::max(1.0, weighed->grams);
        exact = true;
        break;
      }
    if (!exact && weighed) known.push_back(*weighed);
    if (exact || weighed) known.back().food = is_food(line) && !has(facts.water, pair.first_line);
  }
  for (const auto& line : formula.lines)
    if (std::none_of(factors_.begin(), factors_.end(), [&](const Factor& f) { return f.part == line.part; }))
      factors_.push_back({line.part, best_factor(line.part, known)});
  keep_acid_up();
}

void Batch::keep_acid_up() {
  const auto holds = [&](std::string_view part, auto role) {
    return std::any_of(formula_.lines.begin(), formula_.lines.end(), [&](const FormulaLine& line) {
      return line.part == part && !line.not_eaten && !line.per_jar && role(line.role);
    });
  };
  double food = 0;
  for (const auto& one : factors_)
    if (holds(one.part, [](std::string_view role) { return role == "low-acid"; }))
      food = std::max(food, one.by);
  for (auto& one : factors_)
    if (one.by < food && holds(one.part, [](std::string_view role) { return role == "acid"; })) one.by = food;
}

double Batch::best_factor(std::string_view part, const std::vector<Known>& known) {
  const auto fitting = [&](double by) {
    return std::count_if(known.begin(), known.end(), [&](const Known& k) {
      return k.part == part && !k.rough && beside(k.found, k.published * by).result == Beside::Result::equal;
    });
  };
  constexpr double largest = 64;
  double best = 1;
  auto most = fitting(best);
  for (const auto& k : known) {
    if (k.part != part || k.rough || k.published.high <= 0) continue;
    const double by = (k.found.low + k.found.high) / (k.published.low + k.published.high);
    if (by < 1 / largest || by > largest) continue;
    if (const auto fit = fitting(by); fit > most) {
      most = fit;
      best = by;
    }
  }
  const bool alone = most <= 1 && best != 1;
  return alone ? middle_factor(part, known) : best;
}

double Batch::middle_factor(std::string_view part, const std::vector<Known>& known) {
  const bool food =
      std::any_of(known.begin(), known.end(), [&](const Known& k) { return k.part == part && k.food; });
  std::vector<std::pair<double, double>> factors;  // with the weight that each speaks for
  double all = 0;
  for (const auto& k : known) {
    if (k.part != part || k.food != food || k.published.high <= 0 || k.found.high <= 0) continue;
    factors.emplace_back((k.found.low + k.found.high) / (k.published.low + k.published.high), k.grams);
    all += k.grams;
  }
  std::sort(factors.begin(), factors.end());
  double below = 0;
  for (const auto& [by, grams] : factors) {
    below += grams;
    if (2 * below >= all) return by;
  }
  return 1;
}

std::optional<Batch::Known> Batch::by_weight(const Pair& pair, const PairSizes& sizes) const {
  const auto card = sizes.card_weight(pair);
  const auto* food = reading_.ingredients[pair.ingredients.front()].food;
  if (!card || food == nullptr) return std::nullopt;
  Interval<double> published{0, 0};
  for (std::size_t i = pair.first_line; i < formula_.lines.size(); ++i) {
    if (!has(pair.lines, i)) continue;
    const auto& line = formula_.lines[i];
    if (line.amounts.empty()) return std::nullopt;
    const auto weight = reading_.catalogue->weigh(line.amounts.front(), *food, line.states);
    if (!weight) return std::nullopt;
    published = published + size_of(*weight).value;
  }
  constexpr double grams_in_kilogram = 1000;
  Known known{formula_.lines[pair.first_line].part, card->value, published, true,
              (published.low + published.high) / 2 * grams_in_kilogram};
  return known;
}

double Batch::factor(std::string_view part) const {
  for (const auto& one : factors_)
    if (one.part == part) return one.by;
  return 1;
}

double Batch::scale(const Pair& pair, std::string& reason) const {
  const auto& line = formula_.lines[pair.first_line];
  const auto& card = reading_.ingredients[pair.ingredients.front()].read;
  if (!line.per_jar && !card.per_jar) return factor(line.part);
  const double share = line.per_jar ? jar_share(line, card) : 1;
  if (share <= 0) reason = "the card does not say for which jar";
  if (line.per_jar && card.per_jar) return share;
  const auto jars = jars_made();
  if (!jars) reason = "the card does not say how many jars it makes";
  if (!jars || share <= 0) return 0;
  return line.per_jar ? share * *jars : factor(line.part) / *jars;
}

std::optional<double> Batch::jars_made() const {
  const auto& makes = reading_.recipe->makes;
  if (!makes || !makes->value.count.exact() || makes->value.count.low <= Count{}) return std::nullopt;
  return in_pieces(makes->value.count.low);
}

/// The card's jar as a share of the one that the line is printed for; 0: not known.
double Batch::jar_share(const FormulaLine& line, const foods::LineReading& card) const {
  if (!line.per_jar_of || reading_.tables == nullptr) return 1;
  const auto published = reading_.tables->jars()[static_cast<std::size_t>(*line.per_jar_of)].volume;
  if (card.per_jar_of) return card.per_jar_of->volume / published;
  const auto& [jars, makes] = std::tie(reading_.recipe->jars, reading_.recipe->makes);
  if (jars.size() == 1) return jars.front().value.volume / published;
  return jars.empty() && makes && makes->value.jar ? makes->value.jar->volume / published : 0;
}

}  // namespace sealworthy::tested
