#include "report/markup.hpp"

#include <algorithm>

namespace sealworthy::report {

std::string escaped(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

std::string filled(std::string_view text,
                   const std::vector<std::pair<std::string_view, std::string>>& values) {
  std::string out;
  while (!text.empty()) {
    const auto at = text.find('@');
    out += text.substr(0, at);
    if (at == std::string_view::npos) break;
    const auto end = text.find('@', at + 1);
    const auto name = end == std::string_view::npos ? std::string_view() : text.substr(at + 1, end - at - 1);
    const auto value =
        std::find_if(values.begin(), values.end(), [&](const auto& v) { return v.first == name; });
    if (name.empty() || value == values.end()) {
      out += '@';
      text.remove_prefix(at + 1);
    } else {
      out += value->second;
      text.remove_prefix(end + 1);
    }
  }
  return out;
}

}  // namespace sealworthy::report
