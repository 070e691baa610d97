#pragma once

/// One food in place of another: a line of the formula that is missing, and an ingredient that it has no
/// place for. Told as one change, where the two are alike: foods of one kind (two vegetables, two acids), or
/// the published amount of something else.

#include "tested/compare.hpp"

namespace sealworthy::tested {

/// Fills LineComparison::replaced_by and AddedIngredient::replaces. Each is used once; the most alike go
/// together, of equals the first.
void pair_replaced(const reading::Reading& reading, FormulaComparison& result);

}  // namespace sealworthy::tested
