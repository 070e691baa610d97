#include "text/one_line.hpp"

#include <algorithm>

namespace sealworthy::text {
namespace {

/// How many bytes of the text's begin are a blank, a line end or a control character; 0: none.
std::size_t blank_bytes(std::string_view text) {
  const auto byte = [&](std::size_t i) {
    return static_cast<unsigned char>(i < text.size() ? text[i] : 'x');
  };
  if (byte(0) <= 0x20 || byte(0) == 0x7f) return 1;
  if (byte(0) == 0xc2 && byte(1) >= 0x80 && byte(1) <= 0x9f) return 2;  // U+0080 to U+009F
  const bool separator = byte(0) == 0xe2 && byte(1) == 0x80 && (byte(2) == 0xa8 || byte(2) == 0xa9);
  return separator ? 3 : 0;  // U+2028, U+2029
}

}  // namespace

std::string one_line(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::size_t blank = blank_bytes(text);
    if (blank == 0)
      out += text.front();
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
    text.remove_prefix(std::max<std::size_t>(blank, 1));
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

}  // namespace sealworthy::text
