#pragma once

/// Which jars a process without a jar size is for, where others name theirs.

#include <vector>

#include "prose/sentence.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy::prose {

/// "Fill pint or quart jars. Process 20 minutes, quarts 25 minutes": the 20 minutes are for the pints, where
/// every size that is named has a process of its own by the same method and for the same altitudes. Else the
/// process stays one for all sizes, so that none goes unjudged.
void give_open_processes_the_rest(recipe::Recipe& recipe, const std::vector<Sentence>& sentences);

}  // namespace sealworthy::prose
