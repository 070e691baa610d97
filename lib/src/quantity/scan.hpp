#pragma once

/// Looking at a text byte by byte: spaces, dashes, marks and words, with no allocation and no locale. Places
/// are byte offsets; every function takes any bytes and any offset.

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace sealworthy::quantity {

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

constexpr unsigned byte_at(std::string_view text, std::size_t at) {
  return at < text.size() ? static_cast<unsigned char>(text[at]) : 0U;
}
constexpr bool char_at(std::string_view text, std::size_t at, char c) {
  return at < text.size() && text[at] == c;
}
constexpr bool digit_at(std::string_view text, std::size_t at) {
  return at < text.size() && is_digit(text[at]);
}
constexpr bool letter_at(std::string_view text, std::size_t at) {
  return at < text.size() && is_letter(text[at]);
}
constexpr bool starts_at(std::string_view text, std::size_t at, std::string_view what) {
  return at <= text.size() && text.substr(at).starts_with(what);
}

namespace detail {
std::size_t skip_wide_space(std::string_view text, std::size_t at);
std::size_t wide_dash_at(std::string_view text, std::size_t at);
}  // namespace detail

/// The place of the first thing that is not a space (Unicode spaces and zero-width marks included).
inline std::size_t skip_space(std::string_view text, std::size_t at) {
  if (at < text.size() && text[at] == ' ') ++at;
  if (at < text.size() && text[at] > ' ') return at;  // plain ASCII: the usual case
  return detail::skip_wide_space(text, at);
}
inline bool at_end(std::string_view text, std::size_t at) { return skip_space(text, at) >= text.size(); }

/// Bytes of the hyphen, dash or minus that stands at `at`, or 0.
inline std::size_t dash_at(std::string_view text, std::size_t at) {
  const auto c = byte_at(text, at);
  if (c == '-') return 1;
  return c == 0xE2 ? detail::wide_dash_at(text, at) : 0;
}

/// Past spaces and one hyphen, as between a figure and its unit ("28-ounce", "1/2 - cup").
inline std::size_t past_hyphen(std::string_view text, std::size_t at) {
  const auto next = skip_space(text, at);
  const auto dash = dash_at(text, next);
  return dash == 0 ? next : skip_space(text, next + dash);
}

/// Bytes of the inch mark (", ″, ” or two primes) at `at`, or 0. A mark that opens a quotation (`8 "toes"`)
/// is none.
std::size_t inch_mark_at(std::string_view text, std::size_t at);

/// A run of ASCII letters, folded to lower case. Empty where none starts, where the run is longer than any
/// word that means something here, or where it goes on in letters of another alphabet.
class Letters {
 public:
  Letters() = default;
  Letters(std::string_view text, std::size_t at) : begin_(at), end_(at) {
    if (letter_at(text, at)) scan(text);
  }

  [[nodiscard]] std::string_view view() const { return {buffer_.data(), size_}; }
  [[nodiscard]] bool empty() const { return size_ == 0; }
  [[nodiscard]] std::size_t begin() const { return begin_; }
  [[nodiscard]] std::size_t end() const { return end_; }
  [[nodiscard]] bool is(std::string_view word) const { return view() == word; }
  /// FNV-1a of the folded word.
  [[nodiscard]] std::uint32_t hash() const { return hash_; }

  static constexpr std::uint32_t hash_start = 2166136261U;
  static constexpr std::uint32_t hash_step(std::uint32_t hash, char c) {
    return (hash ^ static_cast<unsigned char>(c)) * 16777619U;
  }

 private:
  void scan(std::string_view text);

  std::array<char, 20> buffer_;
  std::size_t size_ = 0;
  std::size_t begin_ = 0;
  std::size_t end_ = 0;
  std::uint32_t hash_ = hash_start;
};

/// Whether a word that begins with this small letter may stand at `at`: spares looking at words that can't be
/// meant.
constexpr bool may_begin(std::string_view text, std::size_t at, char letter) {
  return at < text.size() && (text[at] | 0x20) == letter;
}

/// The next word, past spaces and one hyphen.
inline Letters next_word(std::string_view text, std::size_t at) { return {text, past_hyphen(text, at)}; }

namespace detail {
std::optional<std::size_t> words_at(std::string_view text, std::size_t at, std::string_view phrase);
}

/// The place after the words of `phrase` (small letters, single spaces), if they stand at `at`, spaces before
/// them allowed.
inline std::optional<std::size_t> phrase_at(std::string_view text, std::size_t at, std::string_view phrase) {
  const auto place = skip_space(text, at);
  if (!may_begin(text, place, phrase[0])) return std::nullopt;
  return detail::words_at(text, place, phrase);
}

}  // namespace sealworthy::quantity
