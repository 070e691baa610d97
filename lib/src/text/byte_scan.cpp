#include "text/byte_scan.hpp"

#include <algorithm>

namespace sealworthy::text {
namespace {

constexpr std::uint8_t letter = 1;
constexpr std::uint8_t begins_word = 2;
constexpr std::string_view no_break = "&nbsp;";
constexpr std::string_view no_break_utf8 = "\xC2\xA0";

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
bool is_letter(char c) { return lower(c) >= 'a' && lower(c) <= 'z'; }
/// A letter as a number below 32, the same for either case.
unsigned number_of(char c) { return static_cast<unsigned char>(c) & 31U; }
bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '-'; }

/// How many bytes at the beginning of `bytes` part words.
std::size_t blanks(std::string_view bytes) {
  std::size_t n = 0;
  for (;;) {
    const std::string_view rest = bytes.substr(n);
    if (!rest.empty() && is_blank(rest.front()))
      ++n;
    else if (rest.starts_with(no_break))
      n += no_break.size();
    else if (rest.starts_with(no_break_utf8))
      n += no_break_utf8.size();
    else
      return n;
  }
}

bool stands_at(std::string_view bytes, std::string_view word) {
  std::size_t at = 0;
  for (const char c : word) {
    if (c == ' ') {
      const std::size_t n = blanks(bytes.substr(at));
      if (n == 0) return false;
      at += n;
    } else if (at >= bytes.size() || lower(bytes[at]) != c) {
      return false;
    } else {
      ++at;
    }
  }
  return at >= bytes.size() || !is_letter(bytes[at]);
}

}  // namespace

void ByteScan::add(std::string_view words) {
  if (words.size() < 2) return;
  for (std::size_t byte = 0; byte < kinds_.size(); ++byte) {
    const char c = static_cast<char>(byte);
    if (is_letter(c)) kinds_[byte] |= letter;
    if (lower(c) == words.front()) kinds_[byte] |= begins_word;
  }
  seconds_[number_of(words.front())] |= 1U << number_of(words[1]);
  words_.emplace_back(words);
}

bool ByteScan::finds(std::string_view bytes) const {
  std::uint8_t before = 0;
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    const std::uint8_t kind = kinds_[static_cast<unsigned char>(bytes[i])];
    const bool begins = (kind & begins_word) != 0 && (before & letter) == 0;
    before = kind;
    if (!begins || i + 1 == bytes.size()) continue;
    // Most words of a text part from those that are looked for at their second letter.
    if ((seconds_[number_of(bytes[i])] >> number_of(bytes[i + 1]) & 1U) == 0) continue;
    const std::string_view rest = bytes.substr(i);
    if (std::any_of(words_.begin(), words_.end(),
                    [&](const std::string& word) { return stands_at(rest, word); }))
      return true;
  }
  return false;
}

}  // namespace sealworthy::text
