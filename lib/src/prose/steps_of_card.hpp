#pragma once

/// A card's steps beside its own `process:`.

#include <vector>

#include "prose/vocabulary.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy::prose {

/// A doubt for each process that the steps tell and no entry of `process:` agrees with (another method, time
/// or pressure for its jars and altitude): which of the two is followed can't be told. Views live in the
/// card. None for a card without `process:`. Cost: nothing where the steps tell no time, else that of reading
/// them.
std::vector<recipe::Doubt> other_processes(const recipe::Recipe& card, const Vocabulary& vocabulary,
                                           const reading::Methods& methods);

/// Where the steps say that the writer's kitchen is, to be judged there too. Views live in the card.
std::vector<recipe::Placed<Altitude>> homes_told(const recipe::Recipe& card, const Vocabulary& vocabulary);

}  // namespace sealworthy::prose
