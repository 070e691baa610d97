#include "reading/ingredients.hpp"

namespace sealworthy::reading {
namespace {

int badness(const foods::Food& food) {
  switch (food.acid_class) {
    case foods::AcidClass::low_acid:
      return 3;
    case foods::AcidClass::borderline:
      return 2;
    case foods::AcidClass::acid:
      return 1;
    case foods::AcidClass::neutral:
      return 0;
  }
  return 0;
}

foods::LineReading read(const recipe::IngredientLine& line, const foods::Catalogue& catalogue,
                        quantity::Units units) {
  foods::LineReading result = line.food.empty()
                                  ? catalogue.read_line(line.text, units)
                                  : catalogue.read_parts(line.food, line.amount, line.states, units);
  // "each jar:" before the line says it for the whole line, whatever the words after it say.
  if (line.per_jar) {
    result.per_jar = true;
    if (line.per_jar_of) result.per_jar_of = line.per_jar_of->value;
  }
  return result;
}

}  // namespace

const foods::Food* worse_food(const std::vector<foods::Named>& foods) {
  const foods::Food* worst = nullptr;
  for (const foods::Named& named : foods) {
    if (named.food == nullptr) continue;
    if (worst == nullptr || badness(*named.food) > badness(*worst)) worst = named.food;
  }
  return worst;
}

void read_ingredients(Reading& reading) {
  const recipe::Recipe& recipe = *reading.recipe;
  reading.ingredients.reserve(recipe.ingredients.size());
  for (const recipe::IngredientLine& line : recipe.ingredients) {
    Ingredient ingredient{&line, read(line, *reading.catalogue, recipe.units), nullptr};
    ingredient.food = worse_food(ingredient.read.foods);
    reading.ingredients.push_back(std::move(ingredient));
  }
}

}  // namespace sealworthy::reading
