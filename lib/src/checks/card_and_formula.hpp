#pragma once

/// Questions that several checks ask of a card and the formula that it was compared with.

#include <string_view>

#include "checks/phrases.hpp"
#include "reading/reading.hpp"

namespace sealworthy::checks {

/// True if the card has what the compared formula has and nothing known beside it, in the canner that the
/// formula is for: no amount differs for certain. The match itself may be doubtful (a word of the title).
bool keeps_to_formula(const reading::Reading& reading);

/// The phrase by which a step tells a form of the ingredient: one of `told` in a sentence that names no other
/// food of the card, or this one as well, and none of `not_told`. "" for none.
std::string_view told_in_steps(const reading::Reading& reading, const reading::Ingredient& ingredient,
                               const Phrases& told, const Phrases& not_told);

}  // namespace sealworthy::checks
