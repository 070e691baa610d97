#pragma once

/// Page -> Recipe: what the title, the ingredient lines and the directions of a published recipe say.

#include <variant>

#include "prose/vocabulary.hpp"
#include "recipe/page.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy::prose {

struct Understood {
  recipe::Recipe recipe;  ///< its views live in the page's arena and in what the recipe adds to it
  /// The page is about canning: it names a process, or jars that are filled and closed with lids.
  bool canning = false;
};

/// Fills a recipe from prose: ingredients, steps, processes (prose/process.hpp), jars, headspace, pack,
/// yield, and what the directions put into each jar. What is not told stays missing; what can be read in two
/// ways is the worse of them or a doubt. An error: a page without ingredients. Never throws but for
/// bad_alloc. Cost: linear in the text; some 100 microseconds for a page of 3 kB.
std::variant<Understood, yaml::Error> understand(const recipe::Page& page, const Vocabulary& vocabulary);

}  // namespace sealworthy::prose
