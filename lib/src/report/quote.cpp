#include "report/quote.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>

#include "report/wrap.hpp"
#include "text/one_line.hpp"

namespace sealworthy::report {
namespace {

constexpr std::string_view gap = "... ";

/// The byte at which a column begins; past the end: the size.
std::size_t byte_of(std::string_view line, int column) {
  int at = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const bool continues = (static_cast<unsigned char>(line[i]) & 0xC0U) == 0x80U;
    if (!continues && ++at == column) return i;
  }
  return line.size();
}

/// After the closing quote; the size where none is.
std::size_t end_of_string(std::string_view line, std::size_t begin) {
  for (std::size_t i = begin + 1; i < line.size(); ++i) {
    if (line[i] == '\\')
      ++i;
    else if (line[i] == '"')
      return i + 1;
  }
  return line.size();
}

/// What a string of JSON says; as it stands where it is none.
std::string said_in(std::string_view quoted) {
  const auto json = nlohmann::json::parse(quoted, nullptr, false);
  if (json.is_string()) return json.get<std::string>();
  quoted.remove_prefix(1);
  if (quoted.ends_with('"')) quoted.remove_suffix(1);
  return std::string(quoted);
}

bool ends_sentence(std::string_view text, std::size_t i) {
  const char c = text[i];
  return (c == '.' || c == '!' || c == '?') && i + 1 < text.size() && text[i + 1] == ' ';
}

bool tag_at(std::string_view text, std::size_t i) {
  if (text[i] != '<' || i + 1 >= text.size()) return false;
  const char next = text[i + 1];
  return next == '/' || (next >= 'a' && next <= 'z') || (next >= 'A' && next <= 'Z');
}

/// Where the sentence around `at` begins.
std::size_t sentence_begin(std::string_view text, std::size_t at) {
  std::size_t begin = std::min(at, text.size());
  while (begin > 0 && text[begin - 1] != '>' && !(begin > 1 && ends_sentence(text, begin - 2))) --begin;
  return begin;
}

std::size_t sentence_end(std::string_view text, std::size_t at) {
  for (std::size_t i = at; i < text.size(); ++i) {
    if (tag_at(text, i)) return i;
    if (ends_sentence(text, i)) return i + 1;
  }
  return text.size();
}

/// The text from a place on, which is to be seen; what goes before is cut off where it takes more than half
/// of the room.
std::string from_place(std::string_view text, std::size_t begin, std::size_t at, int room) {
  const bool far = columns(text.substr(begin, at - begin)) > room / 2;
  const std::string shown(text.substr(far ? at : begin));
  return cut((far ? std::string(gap) : std::string()) + shown, room);
}

std::string in_room(const std::string& said, std::string_view found, int room) {
  if (columns(said) <= room || found.empty()) return cut(said, room);
  const std::size_t at = said.find(found);
  if (at == std::string::npos || columns(said.substr(0, at)) + columns(found) + 3 <= room)
    return cut(said, room);
  const std::size_t begin = sentence_begin(said, at);
  const auto rest = std::string_view(said).substr(0, sentence_end(said, at));
  return from_place(rest, begin, at, room);
}

}  // namespace

Quote quote(std::string_view line, int column, std::string_view found, int room) {
  if (columns(line) <= room) return {std::string(line), false};
  if (column < 1) return {cut(line, room), false};
  const std::size_t at = byte_of(line, column);
  if (at >= line.size()) return {cut(line, room), false};
  if (line[at] == '"') {
    const auto quoted = line.substr(at, end_of_string(line, at) - at);
    return {in_room(text::one_line(said_in(quoted)), found, room), true};
  }
  const std::size_t begin = sentence_begin(line, at);
  const bool far = columns(line.substr(begin, at - begin)) > room / 2;
  return {from_place(line.substr(0, sentence_end(line, at)), begin, at, room), far || begin > 0};
}

}  // namespace sealworthy::report
