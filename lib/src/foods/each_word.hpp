#pragma once

#include <algorithm>
#include <string_view>

#include "text/words.hpp"

namespace sealworthy::foods {

/// Calls `take` with each folded word of a text of the rules. Most are plain lower-case words, which need no
/// folding: that halves the time to load the catalogue.
template <class Take>
void each_word(std::string_view text, Take&& take) {
  const auto simple = [](char c) { return (c >= 'a' && c <= 'z') || c == ' ' || c == '-'; };
  if (!std::all_of(text.begin(), text.end(), simple)) {
    const text::Words words(text);
    for (const auto& word : words) take(word.text);
    return;
  }
  for (std::size_t at = 0; at < text.size();) {
    const auto end = std::min(text.find_first_of(" -", at), text.size());
    if (end > at) take(text.substr(at, end - at));
    at = end + 1;
  }
}

}  // namespace sealworthy::foods
