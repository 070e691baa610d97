#include "science/card_mixture.hpp"

#include <algorithm>

#include "reading/ingredients.hpp"

namespace sealworthy::science {
namespace {

using reading::Ingredient;
using reading::Reading;

/// Per batch, and per jar; the two are brought together when the batch's weight is known.
struct Draft {
  CardMixture card;
  std::vector<std::size_t> per_jar;  ///< parts that are given per jar
};

std::optional<Interval<double>> grams_of(const foods::LineReading& read, const foods::Food* food, bool first,
                                         const foods::Catalogue& catalogue) {
  const std::optional<Interval<Mass>> weight =
      first || food == nullptr ? read.weight : catalogue.weigh(read.amount, *food, read.states);
  if (!weight) return std::nullopt;
  Interval<double> grams{in_grams(weight->low), in_grams(weight->high)};
  if (read.optional) grams.low = 0;
  return grams;
}

/// As the card has it: canned black beans are no dry ones.
std::string_view name_on_card(const Ingredient& line, const foods::Food* food) {
  for (const foods::Named& named : line.read.foods)
    if (food != nullptr && named.food == food && !named.name.empty()) return named.name;
  if (food != nullptr) return food->name;
  return line.read.name.empty() ? std::string_view(line.line->text) : std::string_view(line.read.name);
}

bool is_acid(const foods::Food* food) {
  return food != nullptr && (food->kind == "acid" || food->acid_class == foods::AcidClass::acid);
}

void add_food(const Reading& reading, const AcidData& data, const Ingredient& line, const foods::Food* food,
              bool first, Draft& draft) {
  CardMixture& card = draft.card;
  const std::string_view name = name_on_card(line, food);
  std::optional<AcidProfile> profile =
      food != nullptr ? data.profile(*food, *reading.catalogue) : data.unknown();
  if (!profile) {
    card.acid_unknown = true;
    return;
  }
  if (profile->leave_out) return;
  if (profile->usual_percent > 0 && line.read.strength_percent && profile->by_volume)
    data.set_strength(*profile, *line.read.strength_percent);
  const auto grams = grams_of(line.read, food, first, *reading.catalogue);
  if (!grams) {
    if (profile->inert || line.read.to_taste) return;
    if (is_acid(food)) card.acid_unknown = true;
    card.no_amount.emplace_back(name.empty() ? line.line->text : name);
    return;
  }
  if (profile->by_default && !profile->inert) card.by_default.emplace_back(name);
  if (line.read.per_jar) draft.per_jar.push_back(card.mixture.parts.size());
  card.mixture.parts.push_back({name, *grams, *profile});
}

double batch_grams(const Draft& draft) {
  double grams = 0;
  for (std::size_t i = 0; i < draft.card.mixture.parts.size(); ++i) {
    if (std::find(draft.per_jar.begin(), draft.per_jar.end(), i) == draft.per_jar.end())
      grams += draft.card.mixture.parts[i].grams.high;
  }
  return grams;
}

/// How many jars a batch fills: what the card says, and what its weight fills, low to high.
std::optional<Interval<double>> jars_of(const Reading& reading, const AcidData& data, double grams) {
  std::optional<Interval<double>> jars;
  const auto* jar = reading.jars.front().jar;
  if (jar != nullptr && grams > 0 && jar->volume.si() > 0) {
    const double by_weight = grams / (in_millilitres(jar->volume) * data.bounds().jar_grams_per_ml);
    jars = Interval<double>::exactly(by_weight);
  }
  if (reading.recipe->makes && reading.recipe->makes->value.count.low.si() > 0) {
    const auto& count = reading.recipe->makes->value.count;
    const Interval<double> said{count.low.si(), count.high.si()};
    jars = jars ? Interval<double>{std::min(jars->low, said.low), said.high} : said;
  }
  return jars;
}

}  // namespace

CardMixture mixture_of(const Reading& reading, const AcidData& data) {
  Draft draft;
  draft.card.mixture.parts.reserve(reading.ingredients.size());
  for (const Ingredient& line : reading.ingredients) {
    if (!reading::in_jar(line)) continue;
    if (!line.read.all_of || line.read.foods.size() < 2) {
      add_food(reading, data, line, line.food, true, draft);
      continue;
    }
    for (const foods::Named& named : line.read.foods)
      add_food(reading, data, line, named.food, &named == &line.read.foods.front(), draft);
  }
  const double batch = batch_grams(draft);
  if (!draft.per_jar.empty() && batch > 0) {
    const auto jars = jars_of(reading, data, batch);
    if (!jars) draft.card.acid_unknown = true;
    for (const std::size_t i : draft.per_jar) {
      Part& part = draft.card.mixture.parts[i];
      if (jars) part.grams = {part.grams.low * jars->low, part.grams.high * std::max(jars->low, jars->high)};
    }
  }
  return std::move(draft.card);
}

}  // namespace sealworthy::science
