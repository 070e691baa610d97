#include "reading/build.hpp"

#include "knowledge/knowledge.hpp"
#include "reading/altitude.hpp"
#include "reading/canners.hpp"
#include "reading/ingredients.hpp"
#include "reading/jar_class.hpp"
#include "reading/jars.hpp"
#include "reading/match.hpp"
#include "tested/compare.hpp"

namespace sealworthy::reading {
namespace {

void read_words(Reading& reading) {
  const recipe::Recipe& recipe = *reading.recipe;
  reading.title = Sentences(recipe.title.value);
  reading.steps.reserve(recipe.steps.size());
  for (const auto& step : recipe.steps) reading.steps.push_back({step.at, step.value, Sentences(step.value)});
}

}  // namespace

Reading build(const recipe::Recipe& recipe, const Settings& settings, const knowledge::Knowledge& knowledge) {
  Reading reading;
  reading.recipe = &recipe;
  reading.kitchen = settings.kitchen;
  reading.today = settings.today;
  reading.tables = &knowledge.tables;
  reading.catalogue = &knowledge.catalogue;
  reading.match_index = &knowledge.match_index;
  read_ingredients(reading);
  read_words(reading);
  knowledge.card_words.read(reading);
  read_canners(reading, knowledge.methods);
  read_jars(reading, knowledge.methods);
  read_altitude(reading, settings);
  reading.against = settings.against;
  reading.match = match(reading);
  reading.compared = reading.match.compared;
  if (const auto* product = reading.match.product;
      product != nullptr && product->formula && reading.compared == nullptr)
    reading.compared = std::make_shared<const tested::FormulaComparison>(tested::compare(*product, reading));
  look_up_tables(reading);
  read_jar_class(reading);
  return reading;
}

}  // namespace sealworthy::reading
