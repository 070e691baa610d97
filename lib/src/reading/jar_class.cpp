#include "reading/jar_class.hpp"

#include "reading/ingredients.hpp"

namespace sealworthy::reading {
namespace {

/// The classes of food that a card puts into its jars.
struct Holds {
  bool unknown = false;
  bool low_acid = false;
  bool borderline = false;
  bool acid = false;  ///< a food acid by nature: fruit
};

bool is_acidulant(const foods::Food& food) { return food.kind == "acid"; }

Holds look(const Reading& reading) {
  Holds holds;
  for (const Ingredient& ingredient : reading.ingredients) {
    if (!in_jar(ingredient)) continue;
    if (ingredient.food == nullptr) {
      holds.unknown = true;
      continue;
    }
    if (is_acidulant(*ingredient.food)) continue;
    holds.low_acid |= ingredient.food->acid_class == foods::AcidClass::low_acid;
    holds.borderline |= ingredient.food->acid_class == foods::AcidClass::borderline;
    holds.acid |= ingredient.food->acid_class == foods::AcidClass::acid;
  }
  return holds;
}

/// Acid told as five percent, against the low-acid food beside it. A spoonful of vinegar in a pot of soup
/// makes no pickle of it: the weakest tested ones have 15 percent, so that less than this is for taste
/// (common practice). What can't be weighed counts as enough.
constexpr double for_taste = 0.04;
constexpr double usual_strength = 5;

bool acid_added(const Reading& reading) {
  double acid = 0, low_acid = 0;
  bool any = false;
  for (const Ingredient& ingredient : reading.ingredients) {
    if (!in_jar(ingredient) || ingredient.read.optional || ingredient.food == nullptr) continue;
    const auto& weight = ingredient.read.weight;
    if (!is_acidulant(*ingredient.food)) {
      if (weight && ingredient.food->acid_class == foods::AcidClass::low_acid)
        low_acid += in_grams(weight->low);
      continue;
    }
    any = true;
    if (!weight || ingredient.read.per_jar) return true;
    const auto strength =
        ingredient.read.strength_percent.value_or(ingredient.food->acid_percent.value_or(usual_strength));
    acid += in_grams(weight->high) * strength / usual_strength;
  }
  return any && acid >= for_taste * low_acid;
}

JarClass from_foods(const Holds& holds, bool acid) {
  if (holds.low_acid && !acid && !holds.borderline && !holds.acid) return JarClass::low_acid;
  if (holds.unknown || holds.low_acid) return JarClass::unknown;
  if (holds.borderline) return acid ? JarClass::acidified : JarClass::unknown;
  return holds.acid ? JarClass::acid : JarClass::unknown;
}

}  // namespace

JarClass jar_class_of(tested::ProductClass product_class) {
  switch (product_class) {
    case tested::ProductClass::acid:
      return JarClass::acid;
    case tested::ProductClass::acidified:
      return JarClass::acidified;
    case tested::ProductClass::low_acid:
      return JarClass::low_acid;
    case tested::ProductClass::fermented:
      return JarClass::fermented;
    case tested::ProductClass::sugar_preserve:
      return JarClass::sugar_preserve;
  }
  return JarClass::unknown;
}

void read_jar_class(Reading& reading) {
  const Holds holds = look(reading);
  reading.low_acid_food = holds.low_acid;
  reading.acid_added = acid_added(reading);
  const tested::Product* product = reading.match.product;
  // A ferment makes its own acid: its foods alone would always read as low-acid.
  if (product != nullptr &&
      (reading.match.sure() || product->acid_class == tested::ProductClass::fermented)) {
    reading.jar_class = jar_class_of(product->acid_class);
    return;
  }
  reading.jar_class = from_foods(holds, reading.acid_added);
  if (reading.jar_class == JarClass::unknown && product != nullptr)
    reading.jar_class = jar_class_of(product->acid_class);
}

}  // namespace sealworthy::reading
