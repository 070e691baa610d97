#pragma once

/// The phrase language: ways of telling a practice, written so that a person who knows food safety can read
/// and extend them.
///
/// A pattern is a list of items that must all stand near each other in one sentence, in any order:
///
///     - [FLIP, JARS, upside down | head down]
///     - [not WIPE, rim | jar top]
///     - [vent, under 10 minutes]
///
/// An item is one or more ways of saying a thing with `|` between them. In each:
///   jar              the word in any form: jar, jars (turn: turns, turned, turning)
///   =left            that form only
///   upside down      words that follow each other; the, your, each ... between them are read over
///   cool ~ jar       up to five words may stand between, but no comma, "and" or "then"
///   JARS             any entry of the list of that name in `vocabulary:` (there "not" is a word like others)
///   not wipe         told as not done: "don't wipe", "no need to wipe", "without wiping", "skip wiping",
///                    "wiping is unnecessary"; but not "never skip wiping". Without `not` a thing told as not
///                    done, warned of or only supposed ("if you ...") does not count.
///   under 10 minutes, over 75 F, from 150 to 190 F, any minutes
///                    a figure of that kind: minutes, hours, days, weeks, months, years; F; inches; pounds;
///                    cups; feet. Of a range the low end counts for `under`, the high end for `over`.
/// A pattern may also be a map:
///   words:           the list of items
///   in-order: yes    the items stand in the order given
///   reach: 8         how near: words from the first to the last item, a comma counted as two more (else 18)
///   unless: [...]    does not count if the sentence tells one of these too; an entry may be a list of items
///                    that must all stand there
///
/// phrases/phrase_reader.hpp reads it; phrases/match.hpp finds patterns in sentences.

#include <array>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "phrases/figures.hpp"
#include "phrases/lexicon.hpp"

namespace sealworthy::phrases {

using ListIndex = std::uint16_t;

/// One thing of an alternative, with what may stand between it and the thing before.
struct Element {
  enum class Kind : std::uint8_t { word, list, figure };
  Kind kind = Kind::word;
  bool loose = false;       ///< "~": a few words may stand before it
  std::uint16_t index = 0;  ///< a Term, a list or a figure test
};
/// A way of saying a thing: elements in their order.
struct Alternative {
  std::uint64_t term_bits = 0;  ///< of its words, as in Token: rules most sentences out at once
  std::uint32_t first = 0;      ///< of its elements
  std::uint8_t count = 0;
  bool denied = false;  ///< asks for a thing not done
};
/// An item, or a list of the vocabulary: any of its alternatives.
struct List {
  std::uint32_t first = 0;  ///< of its alternatives
  std::uint32_t count = 0;
};
/// Holds for a figure whose low end is below and whose high end is above.
struct FigureTest {
  Dimension dimension = Dimension::minutes;
  double above = 0, below = 0;
};

/// Items that must all be there.
struct Items {
  static constexpr std::size_t most = 8;
  std::array<ListIndex, most> lists{};
  std::uint8_t count = 0;

  [[nodiscard]] std::span<const ListIndex> all() const { return {lists.data(), count}; }
};

struct Pattern {
  Items items;
  bool in_order = false;
  bool on_condition = false;  ///< asks for "if" itself, so that a supposed thing counts
  std::uint8_t reach = 18;
  std::vector<Items> unless;
};

/// Words, lists and figure tests of all patterns; filled by a PhraseReader, then read by many threads.
class Phrases {
 public:
  [[nodiscard]] const Lexicon& lexicon() const { return lexicon_; }
  [[nodiscard]] std::size_t list_count() const { return lists_.size(); }
  [[nodiscard]] std::span<const Alternative> alternatives(ListIndex list) const {
    return std::span(alternatives_).subspan(lists_[list].first, lists_[list].count);
  }
  [[nodiscard]] std::span<const Element> elements(const Alternative& alternative) const {
    return std::span(elements_).subspan(alternative.first, alternative.count);
  }
  [[nodiscard]] const FigureTest& test(std::size_t index) const { return tests_[index]; }
  /// How many places name a term: how common a word is, as far as patterns can tell.
  [[nodiscard]] std::uint32_t uses(Term term) const { return uses_[term]; }
  /// Words that take back what a sentence tells, "that is not safe": the list TAKEN-BACK; nullptr if none.
  [[nodiscard]] const ListIndex* taken_back() const { return has_taken_back_ ? &taken_back_ : nullptr; }

 private:
  friend class PhraseReader;
  Lexicon lexicon_;
  std::vector<List> lists_;
  std::vector<Alternative> alternatives_;
  std::vector<Element> elements_;
  std::vector<FigureTest> tests_;
  std::vector<std::uint32_t> uses_;
  ListIndex taken_back_ = 0;
  bool has_taken_back_ = false;
};

}  // namespace sealworthy::phrases
