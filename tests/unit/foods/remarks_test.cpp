#include <doctest/doctest.h>

#include "loaded.hpp"

using namespace foods_test;
using sealworthy::in_inches;
using sealworthy::in_us_fluid_ounces;

TEST_CASE("states") {
  const auto states = [](const char* line) { return joined(read(line).states); };
  CHECK(states("7 cups diced, seeded, peeled and cored tomatoes") == "diced seeded peeled cored");
  CHECK(states("2 cups pumpkin, cooked and mashed") == "cooked mashed");
  CHECK(states("tomatoes, not peeled") == "unpeeled");
  CHECK(states("tomatoes with skins on") == "unpeeled");
  CHECK(states("2 lb cucumbers, unpeeled") == "unpeeled");
  CHECK(states("3 lb smoked salmon") == "smoked");
  CHECK(states("2 cups frozen corn, thawed") == "frozen thawed");
  CHECK(states("2 cups strawberries, put through a sieve") == "strained");
  CHECK(states("1 quart tomatoes, pureed") == "pureed");
  CHECK(states("6 peppers, chopped with seeds removed") == "chopped seeded");
  CHECK(states("2 quarts tomatoes (you can use canned if you need to)") == "");
  CHECK(states("1 cup apples (not frozen)") == "fresh");
  CHECK(states("3 slices bacon") == "");
}

TEST_CASE("size of pieces") {
  const auto check = [](const char* line, double low, double high) {
    CAPTURE(line);
    const auto found = read(line).piece;
    REQUIRE(found);
    CHECK(in_inches(found->low) == doctest::Approx(low));
    CHECK(in_inches(found->high) == doctest::Approx(high));
  };
  check("14 lb green beans, cut in 1-inch pieces", 1, 1);
  check("4 lb cucumbers (1/4\" slices)", 0.25, 0.25);
  check("8 lb 3- to 4-inch cucumbers", 3, 4);
  CHECK_FALSE(read("7 lb beets, leave 1 inch of stem").piece);
  CHECK_FALSE(read("7 lb beets").piece);
}

TEST_CASE("strength of vinegar") {
  CHECK(read("4 cups vinegar (5% acidity)").strength_percent == 5.0);
  CHECK(read("6 C 5% Distilled White Vinegar").strength_percent == 5.0);
  CHECK(read("1 qt vinegar, 5 percent").strength_percent == 5.0);
  CHECK(joined(read("1 ½ cups white vinegar 5% acidity").unknown) == "");
  CHECK(read("1 qt vinegar (50 grain)").strength_percent == 5.0);
  CHECK(read("1 qt vinegar").strength_percent == std::nullopt);
  CHECK(read("1 cup 2% milk").strength_percent == std::nullopt);
  CHECK(read("3 cups 100% grape juice").strength_percent == std::nullopt);
  CHECK(read("5% vinegar, 2 cups").amount.stated.high == 2);
}

TEST_CASE("what goes into every jar") {
  const auto jar = [](const char* line) {
    const auto reading = read(line);
    if (!reading.per_jar) return std::string("no");
    return reading.per_jar_of ? reading.per_jar_of->name : std::string("any");
  };
  CHECK(jar("2 tbsp bottled lemon juice per quart jar") == "quart");
  CHECK(jar("1/4 tsp citric acid to each pint jar") == "pint");
  CHECK(jar("1 tsp salt in each quart") == "quart");
  CHECK(jar("1/2 teaspoon mustard seeds, per jar") == "any");
  CHECK(jar("Garlic cloves (4 per jar)") == "any");
  CHECK(jar("4 lb okra (about 35 pods per jar)") == "no");
  CHECK(jar("3 lb sugar to each quart of vinegar") == "no");
  CHECK(jar("1 tsp each salt and pepper") == "no");
  CHECK(read("Garlic cloves (4 per jar)").amount.stated.high == 4);
}

TEST_CASE("what is not eaten, and what may be left out") {
  CHECK(read("1/2 cup canning salt for soaking").not_eaten);
  CHECK(read("1 cup lemon juice to prevent browning").not_eaten);
  CHECK(read("2 tbsp whole allspice, tied in a bag").not_eaten);
  CHECK(read("3 cinnamon sticks in a spice bag, removed").not_eaten);
  CHECK_FALSE(read("2 tbsp lemon juice in each jar, to prevent browning").not_eaten);
  CHECK_FALSE(read("2 tbsp lemon juice").not_eaten);
  CHECK(read("1 tsp salt (optional)").optional);
  CHECK(read("1 tsp salt, if desired").optional);
  CHECK(read("Salt and pepper to taste").to_taste);
  CHECK_FALSE(read("1 tsp salt").optional);
}

TEST_CASE("further amounts of the same food") {
  const auto more = read("2 cups (10 ounces) raspberries");
  REQUIRE(more.more.size() == 1);
  CHECK(more.more[0].unit == "oz");
  CHECK(read("3 lb tomatoes").more.empty());
}

TEST_CASE("the spelled-out form") {
  const std::vector<std::string_view> chopped{"chopped", "1-inch pieces"};
  const auto onion = catalogue().read_parts("onion", "2 cups", chopped, quantity::Units::us);
  CHECK(ids(onion) == "onion");
  CHECK(onion.amount.unit == "cup");
  CHECK(joined(onion.states) == "chopped chunks");
  REQUIRE(onion.piece);
  CHECK(in_inches(onion.piece->low) == 1.0);
  const std::vector<std::string_view> bottled{"bottled"};
  CHECK(ids(catalogue().read_parts("lemon juice", "2 tbsp", bottled, quantity::Units::us)) ==
        "lemon-juice-bottled");
  const std::vector<std::string_view> odd{"hand-polished"};
  CHECK(joined(catalogue().read_parts("apple", "3", odd, quantity::Units::us).states) == "hand polished");
}
