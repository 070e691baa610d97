#include <doctest/doctest.h>

#include "loaded.hpp"

using namespace foods_test;

namespace {

std::string first_error(std::string_view text) {
  foods::Catalogue catalogue;
  std::vector<foods::LoadError> errors;
  load_text(catalogue, "house.yaml", text, errors);
  catalogue.finish(errors);
  if (errors.empty()) return "none";
  const auto& error = errors.front();
  return error.file + ":" + std::to_string(error.error.at.line) + " " + error.error.message +
         (error.error.suggestion.empty() ? "" : " | " + error.error.suggestion);
}

}  // namespace

TEST_CASE("wrong rows are told with their place, and the rest is kept") {
  CHECK(first_error("foods:\n  - {id: a, name: Ayote, kind: vegetable, class: low-acid}\n") == "none");
  CHECK(first_error("foods:\n  - {id: a, name: Ayote, kind: vegetable, class: sour}\n") ==
        "house.yaml:2 'class' is acid, borderline, low-acid or neutral");
  CHECK(first_error("foods:\n  - {id: a, name: Ayote, kind: vegetable, class: acid, parnt: b}\n") ==
        "house.yaml:2 no such key: 'parnt' | did you mean 'parent'?");
  CHECK(first_error("foods:\n  - {id: a, name: Ayote, kind: vegetable, class: acid, parent: b}\n") ==
        "house.yaml:2 no food is called 'b'");
  CHECK(
      first_error("foods:\n  - {id: a, name: Ayote, kind: v, class: acid}\n  - {id: b, name: Ayote, kind: v, "
                  "class: acid}\n") == "house.yaml:3 the name 'Ayote' is given twice | it already names 'a'");
  CHECK(first_error("foods:\n  - {id: a, name: Ayote, kind: v, class: acid}\n  - {id: a, name: Bel, kind: v, "
                    "class: acid}\n") == "house.yaml:3 the id 'a' is given twice");
  CHECK(first_error("foods:\n  - id: a\n    name: Ayote\n    kind: v\n    class: acid\n    ph:\n"
                    "      - {low: 5, high: 4, as: x, source: s, read: memory}\n") ==
        "house.yaml:7 a pH range runs from 'low' to 'high', between 0 and 14");
  CHECK(first_error("foods:\n  - id: a\n    name: Ayote\n    kind: v\n    class: acid\n    ph:\n"
                    "      - {low: 3, high: 4, as: x, source: s, read: memory}\n") ==
        "house.yaml:7 no source is called 's' | the sources stand under 'food-sources:'");
  CHECK(first_error("foods:\n  - {id: a, name: Ayote, kind: v, class: acid, instead: [{food: a, states: "
                    "[glazed]}]}\n") == "house.yaml:2 no state is called 'glazed'");
  CHECK(first_error("foods: 3\n") == "house.yaml:1 a list is wanted here");
}

TEST_CASE("a food that is its own ancestor is refused") {
  CHECK(first_error("foods:\n  - {id: a, name: Ayote, kind: v, class: acid, parent: b}\n"
                    "  - {id: b, name: Bel, kind: v, class: acid, parent: a}\n") ==
        "house.yaml:2 a food is its own ancestor");
}

TEST_CASE("a plural that another food has is not taken from it") {
  foods::Catalogue catalogue;
  std::vector<foods::LoadError> errors;
  load_text(catalogue, "house.yaml",
            "foods:\n  - {id: spice, name: Bel, kind: spice, class: neutral}\n"
            "  - {id: fruit, name: Bel fruit, names: [bels], kind: fruit, class: acid}\n",
            errors);
  catalogue.finish(errors);
  CHECK(errors.empty());
  CHECK(catalogue.named("bel")->id == "spice");
  CHECK(catalogue.named("bels")->id == "fruit");
}
