#pragma once

/// Whether any of some words stands in bytes of any kind, faster than they could be split into words.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy::text {

/// Words are found in either case, whole: letters before or behind make another word. A blank in a phrase
/// stands for any blank, a hyphen or "&nbsp;".
class ByteScan {
 public:
  /// A word or phrase of at least two lower-case letters.
  void add(std::string_view words);
  /// Cost: one pass up to the first word found.
  [[nodiscard]] bool finds(std::string_view bytes) const;

 private:
  std::array<std::uint8_t, 256> kinds_{};  ///< by byte: a letter, the first one of some word
  /// By the first letter: which letters the words have second, a bit each.
  std::array<std::uint32_t, 32> seconds_{};
  std::vector<std::string> words_;
};

}  // namespace sealworthy::text
