#pragma once

/// A table of words filled by the compiler and looked up by the hash that Letters brings along.

#include <algorithm>
#include <array>
#include <cstdint>
#include <string_view>

#include "quantity/scan.hpp"

namespace sealworthy::quantity {

/// Calls `each` with every word of a list parted by single spaces.
template <class Each>
constexpr void words_of(std::string_view list, Each each) {
  while (!list.empty()) {
    const auto space = std::min(list.find(' '), list.size());
    each(list.substr(0, space));
    list.remove_prefix(std::min(space + 1, list.size()));
  }
}

constexpr std::uint32_t hash_of(std::string_view word) {
  auto hash = Letters::hash_start;
  for (const char c : word) hash = Letters::hash_step(hash, c);
  return hash;
}

/// Open addressing over `Size` slots, a power of two and more than twice the words. A word given twice does
/// not compile.
template <class T, std::size_t Size>
class WordTable {
  static_assert((Size & (Size - 1)) == 0);

 public:
  constexpr void add(std::string_view word, const T& value) {
    auto at = hash_of(word) % Size;
    while (!slots_[at].word.empty()) {
      if (slots_[at].word == word) throw "a word is given twice";
      at = (at + 1) % Size;
    }
    if (++used_ > Size / 2) throw "the table is too small";
    slots_[at] = {word, value};
  }

  /// What the word means; nullptr where it is not in the table. Never throws.
  [[nodiscard]] constexpr const T* find(std::string_view word, std::uint32_t hash) const {
    if (word.empty()) return nullptr;
    for (auto at = hash % Size; !slots_[at].word.empty(); at = (at + 1) % Size)
      if (slots_[at].word == word) return &slots_[at].value;
    return nullptr;
  }
  [[nodiscard]] const T* find(const Letters& word) const { return find(word.view(), word.hash()); }

 private:
  struct Slot {
    std::string_view word;
    T value{};
  };
  std::array<Slot, Size> slots_{};
  std::size_t used_ = 0;
};

}  // namespace sealworthy::quantity
