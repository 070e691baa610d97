#include <fmt/format.h>

#include <sealworthy/formats.hpp>

#include "report/places.hpp"

namespace sealworthy {
namespace {

/// A command ends with its line: what would end it, or a property, is percent-encoded.
std::string escaped(std::string_view text, std::string_view special) {
  std::string out;
  for (const char c : report::valid_utf8(text)) {
    if (special.find(c) != std::string_view::npos)
      out += fmt::format("%{:02X}", static_cast<unsigned char>(c));
    else
      out += c;
  }
  return out;
}

std::string as_text(std::string_view text) { return escaped(text, "%\r\n"); }
std::string as_property(std::string_view text) { return escaped(text, "%\r\n:,"); }

std::string_view command_of(Severity severity) {
  const auto level = report::level_of(severity);
  return level == "note" ? "notice" : level;
}

}  // namespace

std::string AnnotationWriter::recipe(const RecipeReport& report) {
  std::string out;
  for (const auto& finding : report.findings) {
    if (!finding.counts()) continue;
    const auto path = report::shown_path(report::file_of(report, finding), base_);
    out += fmt::format("::{} file={}", command_of(finding.severity), as_property(path));
    if (finding.at.line > 0) out += fmt::format(",line={},col={}", finding.at.line, finding.at.column);
    const auto title =
        fmt::format("{}: {} ({})", report::name_of(report), to_string(finding.severity), finding.rule);
    auto text = finding.message;
    if (!finding.why.empty()) text += "\n" + finding.why;
    if (!finding.instead.empty()) text += "\nInstead: " + finding.instead;
    out += fmt::format(",title={}::{}\n", as_property(title), as_text(text));
  }
  return out;
}

}  // namespace sealworthy
