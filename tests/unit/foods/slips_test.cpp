#include "foods/slips.hpp"

#include <doctest/doctest.h>

#include "loaded.hpp"

using namespace foods_test;
using sealworthy::foods::one_slip_apart;

TEST_CASE("one slip is a letter added, left out, changed or swapped") {
  CHECK(one_slip_apart("vineger", "vinegar"));
  CHECK(one_slip_apart("brocoli", "broccoli"));
  CHECK(one_slip_apart("cuccumber", "cucumber"));
  CHECK(one_slip_apart("bene", "been"));
  CHECK_FALSE(one_slip_apart("bean", "bean"));
  CHECK_FALSE(one_slip_apart("cinammon", "cinnamon"));
  CHECK_FALSE(one_slip_apart("bean", "beanss"));
}

TEST_CASE("slips in food names are recognised and marked") {
  const std::pair<const char*, const char*> slips[] = {
      {"tomatos", "tomato"},         {"4 lb potatos", "potato"},          {"2 lb cuccumbers", "cucumber"},
      {"3 cups vineger", "vinegar"}, {"1 lb brocoli", "broccoli"},        {"2 cups zuchini", "zucchini"},
      {"1 cup celry", "celery"},     {"4 tsp clery seed", "celery-seed"}, {"3 lb rutabegas", "rutabaga"},
      {"1 onyon, chopped", "onion"}, {"2 lb asparagas", "asparagus"}};
  for (const auto& slip : slips) {
    const auto* line = slip.first;
    const auto* food = slip.second;
    CAPTURE(line);
    const auto reading = read(line);
    REQUIRE(reading.foods.size() == 1);
    REQUIRE(reading.foods[0].food != nullptr);
    CHECK(reading.foods[0].food->id == food);
    CHECK(reading.foods[0].slip);
    CHECK(reading.unknown.empty());
  }
}

TEST_CASE("a word rightly spelled is no slip") {
  for (const auto* line :
       {"tomatoes", "2 mangos", "2 mangoes", "1 cup cherries", "3 lb chilies", "1 cup sliced okra"}) {
    CAPTURE(line);
    const auto reading = read(line);
    REQUIRE_FALSE(reading.foods.empty());
    CHECK_FALSE(reading.foods[0].slip);
  }
}

TEST_CASE("another word of English is never taken for a slip of a food") {
  for (const auto* line :
       {"2 cups snakes", "1 lb stripes", "3 beasts", "1 cup bread", "2 lb sports", "4 bunches roses"}) {
    CAPTURE(line);
    for (const auto& named : read(line).foods) CHECK_FALSE(named.slip);
  }
  CHECK(ids(read("1 lb gills")) == "?");  // 4 letters and more than one food near
}
