#include "yaml/split.hpp"

#include <utf8.h>

#include <algorithm>
#include <array>
#include <cstdio>

namespace sealworthy::yaml {
namespace {

constexpr std::string_view bom = "\xEF\xBB\xBF";

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r'; }

std::string_view take_line(std::string_view& rest) {
  const std::size_t end = rest.find('\n');
  const std::string_view line = rest.substr(0, end);
  rest.remove_prefix(end == std::string_view::npos ? rest.size() : end + 1);
  return line;
}

bool is_marker(std::string_view line, std::string_view marker) {
  return line.starts_with(marker) && (line.size() == marker.size() || is_blank(line[marker.size()]));
}

bool holds_content(std::string_view line) {
  const auto first = std::find_if_not(line.begin(), line.end(), is_blank);
  return first != line.end() && *first != '#';
}

/// Whether a chunk is a document at all, or only blanks, comments and directives around markers.
bool holds_document(std::string_view text) {
  bool started = is_marker(text.substr(0, text.find('\n')), "---");
  if (started) text.remove_prefix(3);
  while (!text.empty()) {
    const std::string_view line = take_line(text);
    if (!started && line.starts_with('%')) continue;
    if (holds_content(line)) return true;
  }
  return false;
}

enum Mark : unsigned char { plain = 0, wide = 1, control = 2, tab = 4, hash = 8, opener = 16 };

constexpr std::array<unsigned char, 256> marks = [] {
  std::array<unsigned char, 256> table{};
  for (std::size_t c = 0; c < 256; ++c) table[c] = c >= 0x80 ? wide : c < 0x20 || c == 0x7F ? control : plain;
  table['\t'] = tab;
  table['\n'] = table['\r'] = plain;
  table['#'] = hash;
  table['['] = table['{'] = table[','] = opener;
  return table;
}();

Error bad_utf8(const Chunk& chunk, std::size_t offset) {
  return {position_of(chunk, offset), "This character is not UTF-8, so the text can't be read reliably.",
          "Save the file with the encoding UTF-8."};
}

Error bad_control(const Chunk& chunk, std::size_t offset, unsigned code) {
  std::array<char, 16> hex{};
  std::snprintf(hex.data(), hex.size(), "U+%04X", code);
  return {position_of(chunk, offset),
          std::string("An invisible control character (") + hex.data() + ") stands here.",
          "Delete it: often the text before and after it was copied from a document of another kind."};
}

/// A control character of the range U+0080 to U+009F but the line break U+0085; two bytes, C2 80 to C2 9F.
std::size_t find_wide_control(std::string_view text) {
  for (std::size_t at = text.find('\xC2'); at != std::string_view::npos; at = text.find('\xC2', at + 1)) {
    const auto next = static_cast<unsigned char>(text[at + 1]);
    if (next < 0xA0 && next != 0x85) return at;
  }
  return std::string_view::npos;
}

}  // namespace

int code_points(std::string_view text) {
  return static_cast<int>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80; }));
}

Position position_of(const Chunk& chunk, std::size_t offset) {
  const std::string_view before = chunk.text.substr(0, std::min(offset, chunk.text.size()));
  const std::size_t line_start = before.rfind('\n') + 1;  // npos + 1 is 0
  return {chunk.line + static_cast<int>(std::count(before.begin(), before.end(), '\n')),
          code_points(before.substr(line_start)) + 1};
}

std::optional<Error> unfit_file(std::string_view text, const Limits& limits) {
  if (text.size() > limits.bytes)
    return Error{{1, 1},
                 "The file has " + std::to_string(text.size()) + " bytes; at most " +
                     std::to_string(limits.bytes) + " are read.",
                 "Split it into several files."};
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
    return Error{{1, 1}, "The file is UTF-16 text, which is not read.", "Save it with the encoding UTF-8."};
  const std::size_t nul = text.find('\0');
  if (nul != std::string_view::npos)
    return Error{position_of(Chunk{.text = text}, nul), "This is not a text file: it holds a zero byte.",
                 "Give a recipe written as plain YAML text."};
  return std::nullopt;
}

std::vector<Chunk> split(std::string_view text) {
  std::vector<Chunk> chunks;
  const char* begin = text.data();
  int line_number = 1;
  int begin_line = 1;
  const auto close = [&](const char* end) {
    std::string_view body(begin, static_cast<std::size_t>(end - begin));
    while (body.starts_with(bom)) body.remove_prefix(bom.size());
    if (holds_document(body)) chunks.push_back({.text = body, .line = begin_line});
  };
  for (std::string_view rest = text; !rest.empty(); ++line_number) {
    const char* line_begin = rest.data();
    const std::string_view line = take_line(rest);
    const bool ends = is_marker(line, "...") && !holds_content(line.substr(3));  // else the parser refuses it
    if (!ends && !is_marker(line, "---")) continue;
    close(line_begin);
    begin = ends ? rest.data() : line_begin;
    begin_line = ends ? line_number + 1 : line_number;
  }
  close(text.data() + text.size());
  return chunks;
}

std::optional<Error> survey(Chunk& chunk) {
  unsigned found = 0;
  for (const char c : chunk.text) {
    const unsigned mark = marks[static_cast<unsigned char>(c)];
    found |= mark;
    chunk.openers += mark >> 4U;
  }
  chunk.ascii = (found & wide) == 0;
  chunk.tabs = (found & tab) != 0;
  chunk.hashes = (found & hash) != 0;
  if (!chunk.ascii) {
    const auto bad = utf8::find_invalid(chunk.text.begin(), chunk.text.end());
    if (bad != chunk.text.end()) return bad_utf8(chunk, static_cast<std::size_t>(bad - chunk.text.begin()));
    const std::size_t at = find_wide_control(chunk.text);
    if (at != std::string_view::npos)
      return bad_control(chunk, at, static_cast<unsigned char>(chunk.text[at + 1]));
  }
  if ((found & control) != 0) {
    const auto bad = std::find_if(chunk.text.begin(), chunk.text.end(),
                                  [](char c) { return marks[static_cast<unsigned char>(c)] == control; });
    return bad_control(chunk, static_cast<std::size_t>(bad - chunk.text.begin()),
                       static_cast<unsigned char>(*bad));
  }
  return std::nullopt;
}

}  // namespace sealworthy::yaml
