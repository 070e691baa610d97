#include "yaml/shorten.hpp"

#include <algorithm>

namespace sealworthy::yaml {
namespace {

// Shorter texts are not worth it, and `null`, `true` and the like stay what they are.
constexpr std::size_t worth_it = 6;

bool is_letter_or_digit(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

struct Line {
  std::string_view text;   // without the line break
  std::size_t indent = 0;  // spaces; npos for a line of blanks
};

Line line_at(std::string_view full, std::size_t begin) {
  const std::string_view text = full.substr(begin, std::min(full.find('\n', begin), full.size()) - begin);
  const std::size_t indent = text.find_first_not_of(' ');
  return {text, indent < text.size() && text[indent] != '\r' ? indent : std::string_view::npos};
}

/// After the colon of "name: value"; `begin` where no such name begins there.
std::size_t after_name(std::string_view text, std::size_t begin) {
  std::size_t at = begin;
  while (at < text.size() && (is_letter_or_digit(text[at]) || text[at] == ' ' || text[at] == '-')) ++at;
  const bool named = at > begin && at + 1 < text.size() && text[at] == ':' && text[at + 1] == ' ';
  return named ? at + 1 : begin;
}

/// Where the value begins on a line "- value", "name: value" or "- name: value"; npos where there is none.
std::size_t value_of(const Line& line) {
  constexpr std::size_t none = std::string_view::npos;
  std::size_t at = line.indent;
  if (line.text.substr(at).starts_with("- ")) at = line.text.find_first_not_of(' ', at + 1);
  if (at == none) return none;
  const std::size_t after = after_name(line.text, at);
  return after == line.indent ? none : line.text.find_first_not_of(' ', after);
}

bool can_stand_in(std::string_view value) {
  return value.size() >= worth_it &&
         (is_letter_or_digit(value.front()) || static_cast<unsigned char>(value.front()) >= 0x80) &&
         value.find_first_of(":#\t") == std::string_view::npos;
}

std::string_view trimmed_right(std::string_view text) {
  return text.substr(0, text.find_last_not_of(" \r") + 1);  // npos + 1 is 0
}

/// Whether a later line goes on with the value of a line indented so: the next that is not blank stands
/// deeper.
bool goes_on(std::string_view full, std::size_t begin, std::size_t indent) {
  while (begin < full.size()) {
    const Line line = line_at(full, begin);
    if (line.indent != std::string_view::npos) return line.indent > indent;
    begin += line.text.size() + 1;
  }
  return false;
}

}  // namespace

void shorten(std::string_view full, ShortText& out) {
  out.text.clear();
  out.stand_ins.clear();
  std::size_t dropped = 0;
  std::size_t block = std::string_view::npos;  // lines deeper than this belong to a block scalar
  int number = 0;
  for (std::size_t begin = 0; begin < full.size(); ++number) {
    const Line line = line_at(full, begin);
    const std::size_t next = std::min(begin + line.text.size() + 1, full.size());
    const std::string_view whole = full.substr(begin, next - begin);
    begin = next;
    const bool in_block =
        block != std::string_view::npos && (line.indent == std::string_view::npos || line.indent > block);
    if (!in_block) block = std::string_view::npos;
    const std::size_t at =
        in_block || line.indent == std::string_view::npos ? std::string_view::npos : value_of(line);
    if (at == std::string_view::npos) {
      out.text += whole;
      continue;
    }
    const std::string_view value = trimmed_right(line.text.substr(at));
    if (value.starts_with('|') || value.starts_with('>')) block = line.indent;
    if (!can_stand_in(value) || goes_on(full, next, line.indent)) {
      out.text += whole;
      continue;
    }
    out.text += line.text.substr(0, at);
    out.text += ShortText::letter;
    dropped += line.text.size() - at - 1;
    if (whole.ends_with('\n')) out.text += '\n';
    out.stand_ins.push_back({number, static_cast<int>(at), value, dropped});
  }
}

}  // namespace sealworthy::yaml
