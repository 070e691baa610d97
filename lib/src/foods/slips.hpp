#pragma once

/// One-letter slips in the words of food names ("vineger", "cuccumbers").

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "foods/lexicon.hpp"

namespace sealworthy::foods {

/// Finds the word that an unknown one was meant to be. One edit never changes both ends of a word, so only
/// words that share the first or the last letter are compared.
class Slips {
 public:
  static constexpr std::size_t shortest = 5;  ///< letters of a word in which a slip is looked for
  static constexpr std::size_t longest = 24;

  void build(const Lexicon& lexicon);
  /// The word of a food name that is one letter added, left out, changed or swapped away from `word`; no_word
  /// if there is none, or if words of different meaning are. A word that names a food by itself goes before
  /// one that occurs in longer names only.
  /// Cost: a comparison with some hundred words, the first time that a thread asks for a word; recipes use
  /// few words often.
  [[nodiscard]] WordId meant(std::string_view word, const Lexicon& lexicon) const;

 private:
  [[nodiscard]] WordId find(std::string_view word, const Lexicon& lexicon) const;
  struct Candidates {
    WordId name = no_word;  ///< names a food by itself
    WordId part = no_word;
    bool names_differ = false;
    bool parts_differ = false;
  };
  static void search(const std::vector<WordId>& words, std::string_view word, const Lexicon& lexicon,
                     Candidates& found);

  std::uint64_t number_ = 0;  ///< of this one among all that the process built
  /// By letter; within a letter by length.
  std::array<std::vector<WordId>, 26> by_first_, by_last_;
};

/// True if the two differ by exactly one letter added, left out, changed or swapped with its neighbour.
[[nodiscard]] bool one_slip_apart(std::string_view a, std::string_view b);

}  // namespace sealworthy::foods
