#pragma once

/// Finds the patterns that a sentence tells.

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "phrases/figures.hpp"
#include "phrases/lexicon.hpp"
#include "phrases/negation.hpp"
#include "phrases/phrases.hpp"

namespace sealworthy::phrases {

/// A place where an alternative of a list stands in the sentence.
struct Hit {
  static constexpr std::size_t most_words = 8;
  std::uint8_t first = 0, last = 0;  ///< words, `last` one past the end
  std::uint8_t count = 0;
  bool denied = false;        ///< its alternative asks for a thing not done
  std::uint8_t figure = 255;  ///< a figure among its words, by its number in the sentence
  std::array<std::uint8_t, most_words> words{};  ///< those that the pattern names
};

/// A pattern told by a sentence.
struct Told {
  std::uint16_t pattern = 0;
  std::size_t first = 0, last = 0;                ///< words of the sentence
  std::size_t figure_first = 0, figure_last = 0;  ///< the first figure that the pattern asked for, if any
};

/// Patterns by their rarest word, so that a sentence tries only those that could be in it.
class Index {
 public:
  /// `patterns` must outlive the index, and `phrases` be finished.
  Index(const Phrases& phrases, std::span<const Pattern> patterns);

  /// Room for one sentence's work; make one for many sentences.
  class Room {
   public:
    explicit Room(const Index& index);

   private:
    friend class Index;
    friend class Sentence;
    std::vector<std::uint64_t> bits;  ///< terms there, lists asked, lists there, patterns tried
    std::array<Hit, 160> hits;
    std::array<Figure, most_figures> figures;
    Polarity polarity;
  };

  /// Appends the patterns that a sentence tells.
  /// Cost: one look at each term of each word, and a few bit tests for each pattern whose rarest word is there.
  void find(const Line& line, Room& room, std::vector<Told>& out) const;
  /// True if a sentence takes back what the one before it told: "That is not safe.", "Don't."
  bool takes_back(const Line& line, Room& room) const;
  /// True if one of these groups of lists stands in the sentence, told as done.
  bool stands(std::span<const std::vector<std::uint16_t>> groups, const Line& line, Room& room) const;

 private:
  friend class Sentence;
  [[nodiscard]] double cost(std::uint16_t list);
  [[nodiscard]] double cost(const Element& element);
  void key_terms(std::uint16_t list, std::vector<Term>& out);

  const Phrases& phrases_;
  std::span<const Pattern> patterns_;
  std::vector<std::uint32_t> first_;    ///< of each term: where its patterns start in keyed_
  std::vector<std::uint16_t> keyed_;    ///< patterns, by the term that they are tried at
  std::size_t term_words_, list_words_, pattern_words_;
  std::vector<double> costs_;  ///< of each list, negative until asked
};

}  // namespace sealworthy::phrases
