#pragma once

#include "prose/sentence.hpp"

namespace sealworthy::prose {

/// Fills Sentence::marks from its tokens and senses.
void find_marks(Sentence& sentence, const Vocabulary& vocabulary, quantity::Units units);

}  // namespace sealworthy::prose
