#pragma once

/// Phrases of a rule looked for in the words of a title or line: whole words, folded, "no" before one
/// understood.

#include <string>
#include <string_view>
#include <vector>

#include "text/words.hpp"

namespace sealworthy::checks {

class Phrases {
 public:
  Phrases() = default;
  explicit Phrases(const std::vector<std::string>& phrases);

  [[nodiscard]] bool empty() const { return phrases_.empty(); }
  /// The first phrase that stands in the words and has no "no", "not", "never" or "without" just before it;
  /// "" for none.
  [[nodiscard]] std::string_view in(const text::Words& words) const;
  /// True if one of the phrases is this state, as a line's reading has it ("on-the-cob").
  [[nodiscard]] bool is(std::string_view state) const;

 private:
  struct Phrase {
    std::string text;  ///< "pie filling"
    std::vector<std::string> words;
  };
  std::vector<Phrase> phrases_;
};

}  // namespace sealworthy::checks
