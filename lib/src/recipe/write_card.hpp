#pragma once

/// Recipe -> YAML card, for cards that the program writes.

#include <string>
#include <string_view>

#include "recipe/recipe.hpp"

namespace sealworthy::recipe {

/// A text as a YAML scalar, on one line: plain where nothing in it could be read as something else, else in
/// double quotes.
std::string yaml_scalar(std::string_view text);

/// The card in its own words. Of a recipe that was understood from prose the figures in usual words; what was
/// not found is a comment that says so, and each doubt a comment.
std::string write_card(const Recipe& recipe);

}  // namespace sealworthy::recipe
