#pragma once

/// Which words of a sentence are told as done and which as not done: "do not invert the jars, but process
/// them" denies the first half alone; "never skip venting" denies nothing.
///
/// How: every word that denies ("not", "without", "skip", "instead of", "unnecessary" ...) covers the words
/// up to the end of its clause or noun phrase, or the whole of its clause. A word covered an odd number of
/// times is denied. English grammar only: no word of canning stands here.

#include <array>
#include <cstdint>
#include <span>
#include <string_view>
#include <utility>

#include "phrases/lexicon.hpp"

namespace sealworthy::phrases {

/// The words of English that the analysis goes by, each form by itself.
std::span<const std::pair<std::string_view, std::uint32_t>> grammar_words();

struct Polarity {
  std::array<std::uint32_t, Line::longest> covers;  ///< for each word: bits of the deniers that cover it
  std::array<std::uint32_t, Line::longest> own;     ///< for each word: its bit if it is a denier
  std::array<bool, Line::longest> supposed;         ///< stands in an "if ..." clause

  /// True if a word is denied, leaving out the deniers in `used` (those a pattern asked for itself).
  [[nodiscard]] bool denied(std::size_t word, std::uint32_t used) const;
};

/// Cost: a few passes over the sentence; run only once a pattern's words are all there.
void analyse(std::span<const Token> tokens, Polarity& out);

/// "Don't.", "do not do it": a sentence that does nothing but take back the one before.
bool takes_back(std::span<const Token> tokens);

}  // namespace sealworthy::phrases
