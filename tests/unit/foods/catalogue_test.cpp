#include "foods/catalogue.hpp"

#include <doctest/doctest.h>

#include <set>

#include "loaded.hpp"

using namespace foods_test;
using sealworthy::foods::AcidClass;

TEST_CASE("rules/foods loads without an error") {
  for (const auto& error : loaded().errors)
    FAIL_CHECK(error.file << ":" << error.error.at.line << ": " << error.error.message);
  CHECK(catalogue().all().size() >= 617);
}

TEST_CASE("a food is found by its id and knows its facts") {
  const auto* tomato = catalogue().find("tomato");
  REQUIRE(tomato != nullptr);
  CHECK(tomato->acid_class == AcidClass::borderline);
  CHECK(tomato->guide_class == "acidified");
  CHECK(tomato->has_tag("tomato"));
  REQUIRE(tomato->ph);
  CHECK(tomato->ph->low <= 4.3);
  CHECK(tomato->ph->high >= 4.6);
  CHECK_FALSE(tomato->cautions.empty());
  CHECK(catalogue().find("tomatoe") == nullptr);
  const auto* vinegar = catalogue().find("vinegar");
  REQUIRE(vinegar != nullptr);
  CHECK(vinegar->acid_percent == 5.0);
  REQUIRE(vinegar->acid_range);
  CHECK(vinegar->acid_range->low == 4.0);
}

TEST_CASE("rows of worked forms do not widen the natural range") {
  // "Cucumbers, pickled 4.2-4.6" and "Beets, canned, acidified 4.3-4.6" are no cucumbers and beets as they
  // grow
  CHECK(catalogue().find("cucumber")->ph->low > 4.6);
  CHECK(catalogue().find("beet")->ph->low > 4.6);
}

TEST_CASE("kinds lead to the food of which they are a kind") {
  const auto is = [](std::string_view food, std::string_view ancestor) {
    return catalogue().is_a(*catalogue().find(food), ancestor);
  };
  CHECK(is("paste-tomato", "tomato"));
  CHECK(is("red-onion", "onion"));
  CHECK(is("jalapeno", "chile-hot"));
  CHECK(is("jalapeno", "pepper"));
  CHECK(is("tomato", "tomato"));
  CHECK(is("pinto-bean", "dry-bean-unspecified"));
  CHECK_FALSE(is("green-tomato", "tomato"));
  CHECK_FALSE(is("tomato-paste", "tomato"));
  CHECK_FALSE(is("black-pepper", "pepper"));
  CHECK_FALSE(is("vinegar-homemade", "vinegar"));
  CHECK_FALSE(is("vinegar-rice", "vinegar"));
  CHECK_FALSE(is("asian-pear", "pear"));
  CHECK_FALSE(is("tomato", "paste-tomato"));
}

TEST_CASE("a variety has a parent of the same class") {
  for (const auto& food : catalogue().all()) {
    if (!food.has_tag("variety")) continue;
    CAPTURE(food.id);
    const auto* parent = catalogue().find(food.parent);
    REQUIRE(parent != nullptr);
    CHECK(parent->acid_class == food.acid_class);
    CHECK(parent->kind == food.kind);
    CHECK(parent->guide_class == food.guide_class);
  }
}

TEST_CASE("every name that was gathered for the catalogue means its food") {
  std::size_t names = 0;
  for (const auto& row : data_rows("food-names.tsv")) {
    REQUIRE(row.size() == 2);
    CAPTURE(row[1]);
    const auto* food = catalogue().named(row[1]);
    REQUIRE(food != nullptr);
    CHECK_MESSAGE(catalogue().is_a(*food, row[0]), "names " << food->id << ", not " << row[0]);
    ++names;
  }
  CHECK(names > 4700);
}

TEST_CASE("the foods of tested formulas are recognised") {
  for (const auto& row : data_rows("formula-foods.txt")) {
    REQUIRE(row.size() == 2);
    CAPTURE(row[0]);
    const auto reading = read(row[0]);
    std::string found;
    for (const auto& named : reading.foods)
      found += (found.empty() ? "" : " ") + (named.food == nullptr ? std::string("?") : named.food->id);
    CHECK(found == row[1]);
    CHECK(reading.unknown.empty());
  }
}

TEST_CASE("classes agree with the list of the FDA, but for rows with a reason") {
  // US FDA/CFSAN, Approximate pH of Foods and Food Products; 21 CFR 114.3: acid is a natural pH of 4.6 or
  // below.
  constexpr double acid_limit = 4.6;
  std::size_t compared = 0;
  for (const auto& row : data_rows("ph-list-fda.tsv")) {
    REQUIRE(row.size() >= 5);
    if (row[4] == "-") continue;
    CAPTURE(row[0]);
    const auto* food = catalogue().find(row[4]);
    REQUIRE(food != nullptr);
    const double low = std::stod(row[1]);
    const double high = std::stod(row[2]);
    const bool agrees = food->acid_class == AcidClass::acid       ? high <= acid_limit
                        : food->acid_class == AcidClass::low_acid ? low > acid_limit
                                                                  : true;
    const bool has_reason = row.size() > 5 && !row[5].empty();
    CHECK(agrees != has_reason);
    ++compared;
  }
  CHECK(compared > 290);
}
