#pragma once

/// Steps split into sentences and words.

#include <cstddef>
#include <sealworthy/position.hpp>
#include <string_view>
#include <vector>

#include "text/words.hpp"

namespace sealworthy::reading {

/// A run of words between sentence marks: indices into Sentences::words, `last` one past the end.
struct Sentence {
  std::size_t first = 0;
  std::size_t last = 0;
  bool question = false;  ///< ends in a question mark
};

struct Sentences {
  text::Words words{std::string_view()};
  std::vector<Sentence> all;

  Sentences() = default;
  /// Splits at . ! ? ; and at line ends; "1.5", "in." of a measure, a line that goes on with a small letter
  /// and the number of a numbered step ("1. Boil", left out of the sentence) do not end one. A run of more
  /// than 96 words is cut.
  explicit Sentences(std::string_view text);
};

/// One item of `steps:`.
struct StepText {
  Position at;
  std::string_view text;
  Sentences sentences;
};

}  // namespace sealworthy::reading
