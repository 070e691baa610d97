#include "checks/acid_dose.hpp"

#include <algorithm>
#include <cctype>
#include <limits>
#include <span>
#include <string_view>

#include "quantity/figures.hpp"
#include "reading/ingredients.hpp"

namespace sealworthy::checks {
namespace {

using foods::Food;
using reading::Ingredient;
using reading::JarProcess;
using reading::Reading;
using Choice = tested::AcidPerJar::Choice;

Volume volume_of(const tested::Tables& tables, tested::JarIndex jar) {
  return tables.jars()[static_cast<std::size_t>(jar)].volume;
}

const tested::AcidPerJar* asked_for(const Reading& reading, const JarProcess& jar) {
  const tested::AcidPerJar* next_larger = nullptr;
  for (const tested::AcidPerJar& asked : reading.match.product->acid_per_jar) {
    if (!jar.size || asked.jar == *jar.size) return &asked;
    if (asked.jar < *jar.size) continue;
    if (next_larger == nullptr || asked.jar < next_larger->jar) next_larger = &asked;
  }
  return next_larger;
}

/// How an acid of the card stands to a listed choice: 2 it is it, 1 it is dosed as it, 0 neither.
int fits(const Reading& reading, const Food& food, const Choice& choice, const CountsAs& counts_as) {
  if (reading.catalogue->is_a(food, choice.food)) return 2;
  const bool counts = std::any_of(counts_as.begin(), counts_as.end(), [&](const auto& pair) {
    return pair.first == choice.food && pair.second == food.id;
  });
  return counts ? 1 : 0;
}

/// The line's amount over the choice's: by volume or weight where both have it, else by what they weigh.
double share_of(const Reading& reading, const Ingredient& line, const Choice& choice) {
  const auto* said = std::get_if<Interval<Volume>>(&line.read.amount.measure);
  const auto* asked = std::get_if<Interval<Volume>>(&choice.amount.measure);
  if (said != nullptr && asked != nullptr) return said->low / asked->low;
  const auto* said_mass = std::get_if<Interval<Mass>>(&line.read.amount.measure);
  const auto* asked_mass = std::get_if<Interval<Mass>>(&choice.amount.measure);
  if (said_mass != nullptr && asked_mass != nullptr) return said_mass->low / asked_mass->low;
  const Food* food = reading.catalogue->find(choice.food);
  if (food == nullptr || !line.read.weight) return 0;
  const auto weight = reading.catalogue->weigh(choice.amount, *food, {});
  return weight ? line.read.weight->low / weight->high : 0;
}

/// True if another line doses this very size: then one for another size is not for this jar.
bool other_line_for(const Reading& reading, const Ingredient& line, const JarProcess& jar) {
  return std::any_of(reading.ingredients.begin(), reading.ingredients.end(), [&](const Ingredient& other) {
    return &other != &line && other.read.per_jar && other.read.per_jar_of && other.food != nullptr &&
           other.food->kind == "acid" && reading.tables->jar_size(*other.read.per_jar_of) == jar.size;
  });
}

/// The part of a line's amount that goes into one such jar; nullopt: can't be told.
std::optional<double> part_in_jar(const Reading& reading, const Ingredient& line, const JarProcess& jar) {
  if (line.read.per_jar) {
    if (!line.read.per_jar_of || jar.jar == nullptr) return 1;
    if (reading.tables->jar_size(*line.read.per_jar_of) == jar.size) return 1;
    if (other_line_for(reading, line, jar)) return 0;
    // "2 tbsp per quart" in pints is half of it; "1 tbsp per pint" says nothing more of a quart.
    return std::min(1.0, jar.jar->volume / line.read.per_jar_of->volume);
  }
  if (!reading.recipe->makes || reading.recipe->makes->value.count.high.si() <= 0) return std::nullopt;
  const quantity::Yield& makes = reading.recipe->makes->value;
  const double jars = makes.count.high.si();
  if (!makes.jar || jar.jar == nullptr) return 1 / jars;
  return jar.jar->volume / makes.jar->volume / jars;
}

struct Tally {
  std::vector<double> shares;
  std::vector<const Ingredient*> lines;
};

/// One line's acid, added to its choice. Of alternatives the weaker share counts.
void add_line(const Reading& reading, const Ingredient& line, const JarProcess& jar,
              const CountsAs& counts_as, AcidDose& dose, Tally& tally) {
  double share = std::numeric_limits<double>::infinity();
  std::size_t choice = 0;
  bool fit = false;
  bool other_kind = false;
  for (const foods::Named& named : line.read.foods) {
    double best = 0;
    for (std::size_t i = 0; named.food != nullptr && i < dose.asked->one_of.size(); ++i) {
      const Choice& candidate = dose.asked->one_of[i];
      const int how = fits(reading, *named.food, candidate, counts_as);
      if (how == 0) continue;
      fit = true;
      const double of_dose = share_of(reading, line, candidate);
      if (of_dose <= best) continue;
      best = of_dose;
      if (of_dose < share) choice = i;
      const auto& strength = line.read.strength_percent;
      other_kind |=
          how == 1 || (strength && candidate.strength_percent && *strength < *candidate.strength_percent);
    }
    share = std::min(share, best);
  }
  if (!fit) return;
  dose.any = true;
  const auto part = part_in_jar(reading, line, jar);
  dose.batch |= !line.read.per_jar;
  dose.batch_unknown |= !part;
  dose.other_kind |= other_kind;
  tally.shares[choice] += share * part.value_or(0);
  if (tally.lines[choice] == nullptr) tally.lines[choice] = &line;
}

std::string lower_first(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
  return text;
}

/// "vinegar" of "Vinegar, kind not stated".
std::string short_name(const Food& food) { return lower_first(food.name.substr(0, food.name.find(','))); }

std::string amount_words(const quantity::Amount& amount) {
  if (const auto* volume = std::get_if<Interval<Volume>>(&amount.measure))
    return quantity::words(volume->low);
  if (const auto* mass = std::get_if<Interval<Mass>>(&amount.measure)) return quantity::words(mass->low);
  return quantity::kitchen_number(amount.stated.low);
}

}  // namespace

AcidDose acid_dose(const Reading& reading, const JarProcess& jar, const CountsAs& counts_as) {
  AcidDose dose;
  dose.asked = asked_for(reading, jar);
  if (dose.asked == nullptr) return dose;
  if (jar.size && dose.asked->jar != *jar.size)
    dose.scale = volume_of(*reading.tables, *jar.size) / volume_of(*reading.tables, dose.asked->jar);
  Tally tally{std::vector<double>(dose.asked->one_of.size()),
              std::vector<const Ingredient*>(dose.asked->one_of.size())};
  for (const Ingredient& line : reading.ingredients) {
    if (reading::in_jar(line) && !line.read.optional) add_line(reading, line, jar, counts_as, dose, tally);
  }
  for (std::size_t i = 0; i < tally.shares.size(); ++i) {
    dose.total += tally.shares[i];
    if (tally.lines[i] == nullptr || (dose.line != nullptr && tally.shares[i] <= dose.best)) continue;
    dose.best = tally.shares[i];
    dose.choice = i;
    dose.line = tally.lines[i];
  }
  return dose;
}

std::string dose_words(const tested::AcidPerJar& asked, const foods::Catalogue& catalogue) {
  std::string words;
  for (std::size_t i = 0; i < asked.one_of.size(); ++i) {
    const Choice& choice = asked.one_of[i];
    if (i > 0) words += i + 1 == asked.one_of.size() ? " or " : ", ";
    const Food* food = catalogue.find(choice.food);
    words += amount_words(choice.amount) + " of " + (food == nullptr ? choice.food : short_name(*food));
    if (choice.strength_percent) words += " (" + quantity::kitchen_number(*choice.strength_percent) + " %)";
  }
  return words;
}

}  // namespace sealworthy::checks
