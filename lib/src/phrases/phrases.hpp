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

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "phrases/figures.hpp"
#include "phrases/lexicon.hpp"
#include "yaml/document.hpp"

namespace sealworthy::phrases {

/// One thing of an alternative, with what may stand between it and the thing before.
struct Element {
  enum class Kind : std::uint8_t { word, list, figure };
  Kind kind = Kind::word;
  bool loose = false;       ///< "~": a few words may stand before it
  std::uint16_t index = 0;  ///< a Term, a list or a figure test
};
struct Alternative {
  std::vector<Element> elements;
  bool denied = false;
};
struct List {
  std::vector<Alternative> alternatives;
};
struct FigureTest {
  Dimension dimension = Dimension::minutes;
  double above = 0, below = 0;  ///< holds for low < below and high > above
};

struct Pattern {
  std::vector<std::uint16_t> items;  ///< lists
  bool in_order = false;
  bool on_condition = false;  ///< asks for "if" itself, so that a supposed thing counts
  int reach = 18;
  std::vector<std::vector<std::uint16_t>> unless;
};

/// Lists, words and tests of all patterns. Filled once, then read by many threads.
class Phrases {
 public:
  /// Words that take back what the sentence tells: "that is not safe". The list of this name, if there is one.
  static constexpr std::string_view taken_back = "TAKEN-BACK";

  /// Reads the lists of a `vocabulary:` map. A list may use others, wherever those stand.
  void define(std::string_view file, const yaml::Node& vocabulary, std::vector<foods::LoadError>& errors);
  /// Reads `told:` into `out` and `unless:` into `everywhere`; mistakes go to `errors` with their place.
  void read_patterns(std::string_view file, const yaml::Node& told, std::vector<Pattern>& out,
                     std::vector<foods::LoadError>& errors);
  std::vector<std::vector<std::uint16_t>> read_unless(std::string_view file, const yaml::Node& unless,
                                                      std::vector<foods::LoadError>& errors);
  void finish() { lexicon_.finish(); }

  [[nodiscard]] const Lexicon& lexicon() const { return lexicon_; }
  [[nodiscard]] const std::vector<List>& lists() const { return lists_; }
  [[nodiscard]] const std::vector<FigureTest>& tests() const { return tests_; }
  /// The list of a name; nullptr: none.
  [[nodiscard]] const std::uint16_t* named(std::string_view name) const;
  /// How many places name a term: how common a word is, as far as patterns can tell.
  [[nodiscard]] const std::vector<std::uint32_t>& uses() const { return uses_; }

 private:
  struct Place {
    std::string_view file;
    Position at;
    std::vector<foods::LoadError>* errors = nullptr;
    void wrong(std::string message, std::string suggestion = {}) const;
  };
  /// The list of an item's text, made once; nothing when it is wrong.
  bool read_item(const yaml::Node& item, const Place& place, std::uint16_t& out);
  bool read_items(const yaml::Node& node, const Place& place, std::vector<std::uint16_t>& out);
  bool read_pattern(const yaml::Node& node, const Place& place, Pattern& out);
  bool read_alternative(std::string_view text, const Place& place, Alternative& out, bool may_deny);
  bool read_figure(std::vector<std::string_view>& words, const Place& place, Element& out);
  std::uint16_t term(std::string_view word);
  std::uint16_t declare(std::string_view name);
  [[nodiscard]] bool mentions(std::uint16_t list, std::string_view word) const;
  /// True if a list comes to use itself; `path` holds the lists on the way.
  [[nodiscard]] bool circular(std::uint16_t list, std::vector<std::uint16_t>& path) const;

  Lexicon lexicon_;
  std::vector<List> lists_;
  std::vector<FigureTest> tests_;
  std::vector<std::uint32_t> uses_;
  std::map<std::string, std::uint16_t, std::less<>> names_;  ///< named lists
  std::map<std::string, std::uint16_t, std::less<>> items_;  ///< lists of item texts
  std::map<std::string, std::uint16_t, std::less<>> terms_;
};

}  // namespace sealworthy::phrases
