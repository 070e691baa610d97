#include "report/places.hpp"

#include <fmt/format.h>
#include <utf8.h>

#include <algorithm>
#include <filesystem>
#include <iterator>

namespace sealworthy::report {

std::string shown_path(std::string_view path, std::string_view base) {
  if (path == "-") return "stdin";
  const auto normal = std::filesystem::path(path).lexically_normal();
  if (!normal.is_absolute() || base.empty()) return normal.generic_string();
  const auto relative = normal.lexically_relative(std::filesystem::path(base).lexically_normal());
  const bool below = !relative.empty() && *relative.begin() != "..";
  return below ? relative.generic_string() : normal.generic_string();
}

std::string_view file_of(const RecipeReport& report, const Finding& finding) {
  return finding.from_kitchen && !report.kitchen.empty() ? report.kitchen : report.path;
}

std::string_view line_of(const RecipeReport& report, const Finding& finding) {
  if (finding.from_kitchen) return {};
  const auto& numbers = report.source_line_numbers;
  const auto it = std::lower_bound(numbers.begin(), numbers.end(), finding.at.line);
  if (it == numbers.end() || *it != finding.at.line) return {};
  return report.source_lines[static_cast<std::size_t>(it - numbers.begin())];
}

std::string uri_of(std::string_view shown_path) {
  constexpr std::string_view unreserved = "-._~/";
  std::string uri = shown_path.starts_with('/') ? "file://" : "";
  for (const char c : shown_path) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (letter || unreserved.find(c) != std::string_view::npos)
      uri += c;
    else
      uri += fmt::format("%{:02X}", static_cast<unsigned char>(c));
  }
  return uri;
}

std::string valid_utf8(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  utf8::replace_invalid(text.begin(), text.end(), std::back_inserter(out));
  return out;
}

std::string name_of(const RecipeReport& report) {
  return report.title.empty() ? fmt::format("recipe {} of the file", report.document) : report.title;
}

std::string_view level_of(Severity severity) {
  switch (severity) {
    case Severity::danger:
    case Severity::warning:
      return "error";
    case Severity::caution:
      return "warning";
    case Severity::notice:
      break;
  }
  return "note";
}

}  // namespace sealworthy::report
