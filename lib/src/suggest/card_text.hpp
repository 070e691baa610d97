#pragma once

/// Small texts of a suggested card.

#include <sealworthy/finding.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "recipe/recipe.hpp"

namespace sealworthy {
struct RecipeReport;
}

namespace sealworthy::suggest {

/// A text behind "#": one line.
std::string comment(std::string_view text);
/// The words of a line without quotes and braces, for comparing it with the card's.
std::string bare(std::string_view yaml);
/// "hot pack: boil 5 minutes." -> "Boil 5 minutes."
std::string sentence(std::string step);
/// For each of the card's steps, whether a finding above notice points into it.
std::vector<bool> faulty_steps(const recipe::Recipe& recipe, const RecipeReport& report);
/// What keeps a suggested card from being tested.
std::string open_points(const RecipeReport& report);

}  // namespace sealworthy::suggest
