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
  bool denied = false;                           ///< its alternative asks for a thing not done
  std::uint8_t figure = 255;                     ///< a figure among its words, by its number in the sentence
  std::array<std::uint8_t, most_words> words{};  ///< those that the pattern names
};

/// A pattern told by a sentence.
struct Told {
  std::uint16_t pattern = 0;
  std::size_t first = 0, last = 0;                ///< words of the sentence
  std::size_t figure_first = 0, figure_last = 0;  ///< the first figure that the pattern asked for, if any
};

/// Which patterns a sentence could tell: for each word the items that it may stand for, as bits of a plane
/// with one bit a pattern. Or-ing the planes of a sentence's words and and-ing the planes leaves the patterns
/// whose items all have a word there.
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
    std::vector<std::uint64_t> bits;           ///< terms there, lists asked, lists there, planes
    std::vector<std::uint16_t> first_present;  ///< of each list there: its first alternative that may stand
    std::array<Hit, 160> hits;
    std::array<Figure, most_figures> figures;
    Polarity polarity;
  };

  /// Appends the patterns that a sentence tells, in their order.
  /// Cost: some bit operations for each word that a pattern names, and a closer look at the few patterns
  /// left.
  void find(const Line& line, Room& room, std::vector<Told>& out) const;
  /// True if a sentence takes back what the one before it told: "That is not safe.", "Don't."
  bool takes_back(const Line& line, Room& room) const;
  /// True if the sentence tells one of these groups.
  bool stands(std::span<const Items> groups, const Line& line, Room& room) const;

 private:
  friend class Sentence;
  static constexpr std::size_t planes = 4;  ///< items of a pattern past the fourth wait for the closer look
  static constexpr Term nothing = 0xFFFF;
  struct Mask {
    std::uint16_t word = 0;
    Term beside = nothing;  ///< a term that must be there too
    std::uint64_t bits = 0;
  };
  /// The rarest word of an alternative, and the next rarest where there is one.
  struct Key {
    Term term = nothing;
    Term beside = nothing;
  };
  /// The items of a pattern in the order in which to look for them: what is likely to be missing first.
  struct Order {
    std::array<std::uint8_t, Items::most> items{};
    std::uint8_t unsure = 0;  ///< so many of them can be missing although the planes let them through
  };
  struct Costs;
  [[nodiscard]] Order order_of(const Pattern& pattern) const;
  void keys_of(ListIndex list, Costs& costs, Term beside, std::vector<Key>& out) const;

  const Phrases& phrases_;
  std::span<const Pattern> patterns_;
  std::size_t term_words_, list_words_, plane_words_;
  std::vector<std::uint64_t> start_;       ///< the planes of an empty sentence
  std::vector<std::uint32_t> first_mask_;  ///< of each term
  std::vector<Mask> masks_;
  std::vector<Order> orders_;  ///< of each pattern
};

}  // namespace sealworthy::phrases
