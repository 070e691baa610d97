#include "report/wrap.hpp"

namespace sealworthy::report {
namespace {

bool continues(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; }

}  // namespace

int columns(std::string_view text) {
  int n = 0;
  for (const char byte : text)
    if (!continues(byte)) ++n;
  return n;
}

std::string wrap(std::string_view lead, std::string_view text, int indent, int width) {
  std::string out(lead);
  int used = columns(lead);
  bool fresh = true;
  while (!text.empty()) {
    const auto start = text.find_first_not_of(" \n\t");
    if (start == std::string_view::npos) break;
    text.remove_prefix(start);
    const auto end = text.find_first_of(" \n\t");
    const auto word = text.substr(0, end);
    const int need = columns(word);
    if (!fresh && used + 1 + need > width) {
      out += '\n';
      out.append(static_cast<std::size_t>(indent), ' ');
      used = indent;
      fresh = true;
    }
    if (!fresh) {
      out += ' ';
      ++used;
    }
    out += word;
    used += need;
    fresh = false;
    text.remove_prefix(word.size());
  }
  return out += '\n';
}

std::string cut(std::string_view text, int width) {
  if (columns(text) <= width) return std::string(text);
  std::size_t at = 0;
  for (int n = 0; at < text.size(); ++at) {
    if (continues(text[at])) continue;
    if (n++ == width - 3) break;
  }
  return std::string(text.substr(0, at)) + "...";
}

}  // namespace sealworthy::report
