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
};

struct Sentences {
  text::Words words{std::string_view()};
  std::vector<Sentence> all;

  Sentences() = default;
  /// Splits at sentence marks and line ends; "1.5" and "in." of a measure do not end a sentence.
  explicit Sentences(std::string_view text);
};

/// One item of `steps:`.
struct StepText {
  Position at;
  std::string_view text;
  Sentences sentences;
};

}  // namespace sealworthy::reading
