#pragma once

/// A card as YAML text, for cards that the program writes: every value in quotes where it might be read as
/// something else.

#include <string>
#include <string_view>
#include <vector>

#include "recipe/recipe.hpp"

namespace sealworthy::plan {

/// A text as a YAML scalar: plain where that is safe, else in double quotes.
std::string scalar(std::string_view text);

/// The recipe with its lines and its yield replaced; `lines` has one text for each ingredient.
std::string write_card(const recipe::Recipe& recipe, const std::vector<std::string>& lines,
                       std::string_view makes);

}  // namespace sealworthy::plan
