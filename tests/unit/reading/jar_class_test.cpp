#include "reading/jar_class.hpp"

#include <doctest/doctest.h>

#include "card.hpp"

namespace sealworthy::reading {
namespace {

JarClass class_of(const std::string& ingredients, const std::string& rest = "") {
  return read_card_text("recipe: Jars\ningredients: [" + ingredients + "]\n" + rest)->jar_class;
}

TEST_CASE("a matched product's class decides") {
  CHECK(class_of("25 lb cabbage, 3/4 cup canning salt", "follows: sauerkraut\n") == JarClass::fermented);
  CHECK(class_of("10 lb peaches", "follows: peaches-halved-or-sliced\n") == JarClass::acid);
}

TEST_CASE("without a match the foods decide where they leave no doubt") {
  CHECK(class_of("3 lb celeriac, 2 lb leeks") == JarClass::low_acid);
  CHECK(class_of("3 lb leeks, 2 cups white vinegar") == JarClass::unknown);
  CHECK(class_of("3 lb zorbleroot") == JarClass::unknown);
}

TEST_CASE("the worse of alternatives counts") {
  auto card = read_card_text("recipe: Jars\ningredients: [2 lb leeks or apples]\n");
  CHECK(card->low_acid_food);
}

TEST_CASE("acid that may be left out is not added") {
  CHECK(read_card_text("recipe: Jars\ningredients: [2 lb leeks, 1 cup white vinegar]\n")->acid_added);
  CHECK_FALSE(read_card_text("recipe: Jars\ningredients: [2 lb leeks, \"1 cup white vinegar, optional\"]\n")
                  ->acid_added);
}

}  // namespace
}  // namespace sealworthy::reading
