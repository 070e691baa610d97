#pragma once

/// Any file -> its recipes, whether written as cards or published as pages of prose.

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "knowledge/knowledge.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy::knowledge {

struct FoundRecipe {
  int number = 1;     ///< from 1 within its file
  std::string title;  ///< of one that can't be read, where it could be told
  std::variant<recipe::Recipe, yaml::Error> recipe;
};

struct FoundRecipes {
  std::vector<FoundRecipe> recipes;
  std::size_t skipped = 0;  ///< recipes that are not about canning, and files of pages without any recipe
};

/// What of a file is wanted.
struct Asked {
  bool all = false;    ///< recipes that are not about canning too
  bool named = false;  ///< this very file: what can't be read of it is told whatever it speaks of
};

/// A recipe that stands twice in a file (as JSON-LD and as
/// microdata) is told once; in a file with a recipe a line each line stands for itself. Never throws but for
/// bad_alloc.
FoundRecipes find_recipes(std::string_view path, std::string_view text, const Knowledge& knowledge,
                          const Asked& asked);

/// Some lines of a file with a recipe a line; `first_line`: the number of the first. Recipes are numbered
/// from 1 in these lines. Lines without a recipe count as nothing.
FoundRecipes find_in_lines(std::string_view lines, int first_line, const Knowledge& knowledge, bool all);

}  // namespace sealworthy::knowledge
