#pragma once

#include <optional>

#include "prose/sentence.hpp"

namespace sealworthy::prose {

/// Fills Sentence::marks from its tokens and senses.
void find_marks(Sentence& sentence, const Vocabulary& vocabulary, quantity::Units units);

/// The jar size that begins at a word. `taken`: the words that other marks hold.
std::optional<Mark> jar_at(const Sentence& sentence, std::size_t word, const std::vector<bool>& taken,
                           quantity::Units units);

/// Altitudes that are told by those before them ("15 pounds above that", "if you are higher") or without
/// their unit ("12 pounds from 2,001 to 4,000"). To be called once the other marks are in their order.
void find_altitudes_told_back(Sentence& sentence);

/// Where the writer's own kitchen is, "at our place (6,200 ft)". None where it is supposed ("if you live
/// at"), or a range that others read their own altitude from. "Above 5,000 ft" is taken for 5,000 ft.
std::optional<recipe::Placed<Altitude>> find_home(const Sentence& sentence);

/// True if words of this sense end just before `word`, a determiner or "about" let be.
bool ends_before(const Sentence& sentence, std::size_t word, Sense sense);

}  // namespace sealworthy::prose
