#pragma once

/// A card's steps beside its own `process:`.

#include <vector>

#include "prose/vocabulary.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy::prose {

/// Takes from the steps what the card has no key for, as from the directions of a page: the process, jars,
/// headspace and pack, what goes into each jar, and what is not clear about a process that was taken. The
/// card's own words go before. True if the process was taken. Cost: nothing for a card that has them all, or
/// no steps; else that of reading a page.
bool fill_from_steps(recipe::Recipe& card, const Vocabulary& vocabulary);

/// A doubt for each process that the steps tell and no entry of `process:` agrees with (another method, time
/// or pressure for its jars and altitude): which of the two is followed can't be told. Views live in the
/// card. None for a card without `process:`. Cost: nothing where the steps tell no time, else that of reading
/// them.
std::vector<recipe::Doubt> other_processes(const recipe::Recipe& card, const Vocabulary& vocabulary,
                                           const reading::Methods& methods);

/// Where the steps say that the writer's kitchen is, to be judged there too. Views live in the card.
std::vector<recipe::Placed<Altitude>> homes_told(const recipe::Recipe& card, const Vocabulary& vocabulary);

}  // namespace sealworthy::prose
