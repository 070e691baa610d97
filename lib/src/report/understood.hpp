#pragma once

/// What was understood of a recipe beside its ingredients, each with the words it came from: for `read`.

#include <string>
#include <string_view>
#include <vector>

#include "recipe/recipe.hpp"

namespace sealworthy::report {

struct UnderstoodLine {
  std::string what;        ///< "time", "headspace"
  std::string value;       ///< "15 minutes"
  std::string_view words;  ///< as written
  Position at;
};

/// Title left out; in the order of a card: makes, pack, jars, headspace, then each process.
std::vector<UnderstoodLine> understood_lines(const recipe::Recipe& recipe);

/// The points of a process that directions left untold: "time", "headspace" ...
std::vector<std::string> not_found(const recipe::Recipe& recipe);

}  // namespace sealworthy::report
