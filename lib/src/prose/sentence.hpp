#pragma once

/// One sentence of directions with everything in it that may belong to a process: verbs, methods, jar sizes,
/// times, pressures, altitudes, gauges. What they belong to is worked out by prose/process.hpp.

#include <algorithm>
#include <initializer_list>
#include <memory>
#include <string_view>
#include <utility>
#include <vector>

#include "phrases/lexicon.hpp"
#include "phrases/negation.hpp"
#include "prose/vocabulary.hpp"
#include "quantity/amount.hpp"
#include "reading/sentences.hpp"
#include "recipe/page.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy::prose {

/// A thing that a sentence names.
struct Mark {
  enum class Kind : std::uint8_t {
    process,   ///< a verb of processing
    work,      ///< a verb of other work, that may own a time
    increase,  ///< "add 5 minutes"
    method,
    jar,
    time,      ///< minutes
    pressure,  ///< psi
    altitude,  ///< feet
    length,    ///< inches
    gauge,
    pack,
    number,  ///< a figure without a unit
  };
  Kind kind = Kind::process;
  std::size_t first = 0, last = 0;  ///< words of the sentence, `last` one past the end
  Interval<double> figure;          ///< of times, pressures, lengths, numbers
  Interval<double> feet;            ///< of altitudes; high may be infinite
  MethodAt method;
  quantity::JarText jar;
  recipe::Gauge gauge = recipe::Gauge::dial;
  recipe::Pack pack = recipe::Pack::hot;
  bool denied = false;
  bool heats_jars = false;  ///< a verb of heat that may be the process where filled jars stand in it
  bool step = false;        ///< "for each 1,000 ft"
};

/// A sentence, read. Views into the page's text and what `split` holds.
struct Sentence {
  std::shared_ptr<const reading::Sentences> split;
  const recipe::PageText* source = nullptr;
  std::string_view text;  ///< of the whole step
  std::size_t begin = 0;  ///< bytes of the step
  std::size_t end = 0;
  std::vector<phrases::Token> tokens;
  std::vector<std::pair<std::size_t, std::size_t>> bytes;  ///< of each word within `text`
  std::vector<Senses> senses;
  phrases::Polarity polarity;
  std::vector<Mark> marks;  ///< in the order of their words
  bool question = false;
  bool overfull = false;  ///< holds more figures than are read

  [[nodiscard]] bool has(Sense sense) const;
  [[nodiscard]] bool has(Mark::Kind kind) const;
  [[nodiscard]] bool denied(std::size_t word) const { return polarity.denied(word, 0); }
  /// The words from `first` up to `last` as written.
  [[nodiscard]] std::string_view words(std::size_t first, std::size_t last) const;
  [[nodiscard]] std::string_view all_words() const { return text.substr(begin, end - begin); }
  /// Where a word stands in the source.
  [[nodiscard]] Position at(std::size_t word) const;
};

inline bool one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// The sentences of a step. Cost: a few look-ups a word.
std::vector<Sentence> read_sentences(const recipe::PageText& step, const Vocabulary& vocabulary,
                                     quantity::Units units);

}  // namespace sealworthy::prose
