#include "checks/method_against_acid_class.hpp"

#include <optional>
#include <string>
#include <vector>

#include "checks/against_table.hpp"
#include "checks/cases.hpp"
#include "reading/ingredients.hpp"

namespace sealworthy::checks {
namespace {

using foods::AcidClass;
using reading::Ingredient;
using reading::JarProcess;
using reading::MethodKind;
using reading::Reading;

enum class Case { low_acid, steam_low_acid, mixture, mixture_acid };
const std::vector<std::string_view> case_names{"low-acid", "steam-low-acid", "mixture", "mixture-acid"};

/// What goes into the jars, in grams.
struct Shares {
  double low_acid = 0;        ///< at most, of what could be weighed
  double least_low_acid = 0;  ///< at least
  double all = 0;             ///< at least
  double acid = 0;            ///< as five percent acid
  bool weighed = true;        ///< every low-acid food could be
  bool acid_weighed = true;   ///< every acid could be
  const Ingredient* low_acid_line = nullptr;
  const Ingredient* fat_line = nullptr;  ///< fat takes up no acid; alone it is low-acid food
  bool acid_food = false;
  bool borderline = false;
  bool acid_line = false;
};

/// Household acids are told as strength in percent; vinegar and bottled juice have about this.
constexpr double usual_strength = 5;

void add_acid(const Ingredient& line, Shares& shares) {
  if (line.read.optional) return;
  shares.acid_line = true;
  if (!line.read.weight || line.read.per_jar) {
    shares.acid_weighed = false;
    return;
  }
  const double strength =
      line.read.strength_percent.value_or(line.food->acid_percent.value_or(usual_strength));
  shares.acid += in_grams(line.read.weight->low) * strength / usual_strength;
}

void add_low_acid(const Ingredient& line, Shares& shares) {
  if (shares.low_acid_line == nullptr) shares.low_acid_line = &line;
  if (!line.read.weight) {
    shares.weighed = false;
    return;
  }
  shares.low_acid += in_grams(line.read.weight->high);
  if (!line.read.optional) shares.least_low_acid += in_grams(line.read.weight->low);
}

Shares shares_of(const Reading& reading) {
  Shares shares;
  for (const Ingredient& line : reading.ingredients) {
    if (!reading::in_jar(line) || line.food == nullptr) continue;
    if (line.read.weight && !line.read.optional) shares.all += in_grams(line.read.weight->low);
    if (line.food->kind == "acid") {
      add_acid(line, shares);
    } else if (line.food->kind == "fat") {
      if (shares.fat_line == nullptr) shares.fat_line = &line;
    } else if (line.food->acid_class == AcidClass::low_acid) {
      add_low_acid(line, shares);
    } else {
      shares.acid_food |= line.food->acid_class == AcidClass::acid;
      shares.borderline |= line.food->acid_class == AcidClass::borderline;
    }
  }
  const bool nothing_else = !shares.acid_food && !shares.borderline && !shares.acid_line;
  if (shares.low_acid_line == nullptr && nothing_else) shares.low_acid_line = shares.fat_line;
  return shares;
}

/// The food that makes the line low-acid, in the card's own words.
std::string name_on_card(const Ingredient& line) {
  for (const foods::Named& named : line.read.foods) {
    if (named.food == line.food && !named.name.empty()) return named.name;
  }
  return line.food->name;
}

class MethodAgainstAcidClass final : public Check {
 public:
  MethodAgainstAcidClass(std::span<const Rule* const> rules, Maker& maker)
      : cases_(rules, maker, case_names, [this](const Rule&, Fields& with) {
          if (const auto least = with.number("least-acid")) least_acid_ = *least / 100;
          if (const auto small = with.number("small-share")) small_share_ = *small / 100;
        }) {}

  void run(const Reading& reading, Results& results) const override {
    for (const JarProcess& jar : reading.jars) {
      const bool steam = jar.method == MethodKind::steam;
      if (!steam && jar.method != MethodKind::boiling_water && jar.method != MethodKind::low_temperature)
        continue;
      const auto found = judge_jar(reading, steam);
      if (!found) continue;
      tell(reading, jar, *found, results);
      return;  // the foods are the same in every jar
    }
  }

 private:
  std::optional<Case> judge_jar(const Reading& reading, bool steam) const {
    const Case low_acid = steam ? Case::steam_low_acid : Case::low_acid;
    const tested::Product* product = reading.match.product;
    if (product != nullptr && !reading.match.doubtful) {
      if (product->acid_class == tested::ProductClass::low_acid) return low_acid;
      return std::nullopt;
    }
    // A ferment makes its own acid; whether it was let to is told elsewhere.
    if (product != nullptr && product->acid_class == tested::ProductClass::fermented) return std::nullopt;
    const Shares shares = shares_of(reading);
    if (shares.low_acid_line == nullptr) return std::nullopt;
    if (!shares.acid_line && !shares.acid_food && !shares.borderline) return low_acid;
    if (shares.weighed && shares.acid_weighed && shares.low_acid <= small_share_ * shares.all)
      return untested(product);
    if (!shares.acid_line || (shares.acid_weighed && shares.acid < least_acid_ * least_low_acid(shares)))
      return Case::mixture;
    return untested(product);
  }

  /// What can't be weighed only adds to what can.
  static double least_low_acid(const Shares& shares) {
    return shares.weighed ? shares.low_acid : shares.least_low_acid;
  }

  /// With an acidified product near, the comparison with its formula says what there is to say.
  static std::optional<Case> untested(const tested::Product* product) {
    const bool compared = product != nullptr && product->acid_class != tested::ProductClass::acid &&
                          product->acid_class != tested::ProductClass::low_acid;
    return compared ? std::nullopt : std::optional(Case::mixture_acid);
  }

  void tell(const Reading& reading, const JarProcess& jar, Case which, Results& results) const {
    const Rule* rule = cases_.find(which, reading);
    if (rule == nullptr) return;
    const Shares shares = shares_of(reading);
    std::string food;
    if (shares.low_acid_line != nullptr) {
      food = name_on_card(*shares.low_acid_line);
    } else if (reading.match.product != nullptr) {
      food = reading.match.product->title;
    }
    const Position at = jar.process->method ? jar.process->method->at : process_at(reading, jar);
    results.add(*rule, at, {{"found", std::string(jar.method_name)}, {"food", food}});
  }

  double least_acid_ = 0;
  double small_share_ = 0;
  Cases cases_;  // last: its making fills the figures above
};

}  // namespace

std::unique_ptr<Check> make_method_against_acid_class(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<MethodAgainstAcidClass>(rules, maker);
}

}  // namespace sealworthy::checks
