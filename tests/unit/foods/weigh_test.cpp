#include <doctest/doctest.h>

#include "loaded.hpp"

using namespace foods_test;
using sealworthy::in_grams;
using sealworthy::in_pounds;

namespace {
std::pair<double, double> grams(const char* line) {
  const auto weight = read(line).weight;
  return weight ? std::pair(in_grams(weight->low), in_grams(weight->high)) : std::pair(0.0, 0.0);
}
}  // namespace

// Figures: USDA National Nutrient Database for Standard Reference, Release 28, household weights.
TEST_CASE("weights from cups, spoons and pieces") {
  CHECK(grams("1 cup sugar").first == doctest::Approx(200));
  CHECK(grams("2 tbsp honey").first == doctest::Approx(339.0 / 8));
  CHECK(grams("1 cup chopped onion").first == doctest::Approx(160));
  CHECK(grams("1 cup sliced onion").first == doctest::Approx(115));
  CHECK(grams("1 medium apple").first == doctest::Approx(161));  // peeled
  CHECK(grams("1 medium apple").second == doctest::Approx(182));
  CHECK(grams("3 cloves garlic").first == doctest::Approx(9));
  CHECK(grams("1 large egg").first == doctest::Approx(50));
  CHECK(grams("juice of 1 lemon").first == doctest::Approx(48));
  CHECK(grams("1 stick butter").first == doctest::Approx(113));
}

TEST_CASE("what is not said widens the weight") {
  const auto [low, high] = grams("2 onions");
  CHECK(low == doctest::Approx(2 * 70));
  CHECK(high == doctest::Approx(2 * 150));
  const auto cucumbers = grams("1 cup cucumbers");
  CHECK(cucumbers.first < cucumbers.second);
}

TEST_CASE("weights that the line gives go before measures") {
  CHECK(grams("2 cups (10 ounces) raspberries").first == doctest::Approx(283.495));
  CHECK(grams("6 tomatoes, about 2 pounds").first == doctest::Approx(907.185));
  CHECK(grams("2 (28-ounce) cans tomatoes").first == doctest::Approx(2 * 793.787));
  CHECK(read("14 lb green beans").weight->low == sealworthy::pounds(14));
}

TEST_CASE("a kind without measures of its own weighs like its parent") {
  CHECK(grams("1 cup chopped red onion").first == doctest::Approx(160));
  CHECK(grams("1 medium green bell pepper").first == doctest::Approx(119));
}

TEST_CASE("no measure, no weight") {
  CHECK_FALSE(read("1 cup saltpeter").weight.has_value());
  CHECK_FALSE(read("1 cup kiviak").weight.has_value());
  CHECK_FALSE(read("salt to taste").weight.has_value());
}
