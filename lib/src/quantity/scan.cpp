#include "quantity/scan.hpp"

#include <algorithm>

namespace sealworthy::quantity {

namespace detail {

std::size_t skip_wide_space(std::string_view text, std::size_t at) {
  for (;;) {
    const auto c = byte_at(text, at);
    const auto second = byte_at(text, at + 1);
    const auto third = byte_at(text, at + 2);
    if (at >= text.size()) return text.size();
    // no-break space, soft hyphen; U+2000 to U+200F, narrow no-break space; word joiner, ideographic space,
    // byte order mark
    const bool two = c == 0xC2 && (second == 0xA0 || second == 0xAD);
    const bool three = (c == 0xE2 && second == 0x80 && ((third >= 0x80 && third <= 0x8F) || third == 0xAF)) ||
                       starts_at(text, at, "\xE2\x81\xA0") || starts_at(text, at, "\xE3\x80\x80") ||
                       starts_at(text, at, "\xEF\xBB\xBF");
    if (c == ' ' || c == '\t' || c == '\n' || c == '\r')
      ++at;
    else if (two || three)
      at += two ? 2 : 3;
    else
      return at;
  }
}

std::size_t wide_dash_at(std::string_view text, std::size_t at) {
  const auto second = byte_at(text, at + 1);
  const auto third = byte_at(text, at + 2);
  if (second == 0x80 && third >= 0x90 && third <= 0x95) return 3;  // U+2010 to U+2015
  if (second == 0x88 && third == 0x92) return 3;                   // U+2212
  return 0;
}

}  // namespace detail

std::size_t inch_mark_at(std::string_view text, std::size_t at) {
  std::size_t size = 0;
  if (char_at(text, at, '"')) size = 1;
  if (starts_at(text, at, "''")) size = 2;
  if (starts_at(text, at, "\xE2\x80\xB3") || starts_at(text, at, "\xE2\x80\x9D")) size = 3;
  if (starts_at(text, at, "\xE2\x80\xB2\xE2\x80\xB2") || starts_at(text, at, "\xE2\x80\x99\xE2\x80\x99"))
    size = 6;
  const bool quotation = at > 0 && char_at(text, at - 1, ' ') && letter_at(text, at + size);
  return quotation ? 0 : size;
}

void Letters::scan(std::string_view text) {
  std::size_t size = 0;
  std::uint32_t hash = hash_start;
  while (letter_at(text, begin_ + size)) {
    const auto folded = static_cast<char>(text[begin_ + size] | 0x20);
    if (size < buffer_.size()) buffer_[size] = folded;
    hash = hash_step(hash, folded);
    ++size;
  }
  hash_ = hash;
  end_ = begin_ + size;
  const auto next = byte_at(text, end_);
  const bool goes_on = next >= 0xC3 && next <= 0xDF;  // two-byte letters: é, ñ, Greek, Cyrillic
  if (!goes_on && size <= buffer_.size()) size_ = size;
}

std::optional<std::size_t> detail::words_at(std::string_view text, std::size_t at, std::string_view phrase) {
  while (!phrase.empty()) {
    const auto space = std::min(phrase.find(' '), phrase.size());
    const Letters word(text, skip_space(text, at));
    if (!word.is(phrase.substr(0, space))) return std::nullopt;
    phrase.remove_prefix(std::min(space + 1, phrase.size()));
    at = word.end();
  }
  return at;
}

}  // namespace sealworthy::quantity
