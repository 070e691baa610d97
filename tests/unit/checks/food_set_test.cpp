#include "checks/food_set.hpp"

#include <doctest/doctest.h>

#include "knowledge/knowledge.hpp"

using namespace sealworthy;
using checks::FoodSet;

namespace {

const knowledge::Knowledge& known() { return knowledge::Knowledge::builtin(); }

const foods::Food& food(std::string_view id) {
  const auto* found = known().catalogue.find(id);
  REQUIRE(found != nullptr);
  return *found;
}

struct Read {
  FoodSet set;
  std::vector<foods::LoadError> errors;
};

Read read(std::string_view with_text) {
  static std::vector<std::vector<yaml::DocumentOrError>> kept;
  kept.push_back(yaml::read_documents(with_text));
  Read out;
  checks::Fields with(std::get<yaml::Document>(kept.back().at(0)).root(), "with", {"x.yaml", out.errors});
  out.set = checks::FoodIndex(known().catalogue).read(with, "foods", "not-foods");
  with.done();
  return out;
}

}  // namespace

TEST_CASE("a set holds foods by id, kind and tag, less what is left out") {
  const auto [set, errors] = read("foods: [egg, 'kind:dairy', 'tag:leafy']\nnot-foods: [lettuce]\n");
  CHECK(errors.empty());
  CHECK(set.has(food("egg")));
  CHECK(set.has(food("cream")));
  CHECK(set.has(food("spinach")));
  CHECK_FALSE(set.has(food("lettuce")));
  CHECK_FALSE(set.has(food("carrot")));
}

TEST_CASE("a food stands for its kinds and forms") {
  for (const auto& child : known().catalogue.all()) {
    if (child.parent.empty()) continue;
    const auto [set, errors] = read("foods: " + child.parent + "\n");
    REQUIRE(errors.empty());
    CHECK(set.has(child));
    CHECK(set.has(food(child.parent)));
  }
}

TEST_CASE("a set that nobody names is unset and holds nothing") {
  const auto [set, errors] = read("not-foods: [egg]\n");
  CHECK(set.unset());
  CHECK_FALSE(set.has(food("egg")));
}

TEST_CASE("a name that is no food is an error with the nearest that is") {
  const auto [set, errors] = read("foods: [zuchini, 'kind:dairies', 'tag:leavy']\n");
  REQUIRE(errors.size() == 3);
  CHECK(errors[0].error.message == "no such food as 'zuchini'");
  CHECK(errors[0].error.suggestion == "did you mean 'zucchini'?");
}

TEST_CASE("a product lists its own foods and its formula's") {
  const checks::FoodIndex index(known().catalogue);
  const checks::ProductFoods products(known().tables, index);
  const auto* relish = known().tables.find("pickled-corn-relish");
  REQUIRE(relish != nullptr);
  CHECK(products.listed(*relish).has(food("wheat-flour")));
  CHECK(products.in_formula(*relish).has(food("wheat-flour")));
  CHECK_FALSE(products.listed(*relish).has(food("cornstarch")));
  const auto* beans = known().tables.find("beans-snap-and-italian-pieces");
  REQUIRE(beans != nullptr);
  CHECK(products.listed(*beans).has(food("green-bean")));
  CHECK_FALSE(products.in_formula(*beans).has(food("green-bean")));
}
