#pragma once

/// Ingredient lines read against the catalogue.

#include "reading/reading.hpp"

namespace sealworthy::reading {

/// Fills Reading::ingredients, one entry a line of the card.
void read_ingredients(Reading& reading);

/// Of several foods the one that is worse to have in a jar: low-acid before borderline before acid before
/// neutral; the first of equals. nullptr where none is known.
const foods::Food* worse_food(const std::vector<foods::Named>& foods);

/// True for a line whose food ends up in the jar: not soaked away, not a bag taken out.
inline bool in_jar(const Ingredient& ingredient) { return !ingredient.read.not_eaten; }

}  // namespace sealworthy::reading
