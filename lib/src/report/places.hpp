#pragma once

/// How the formats for build services name the place and the rank of a finding.

#include <sealworthy/finding.hpp>
#include <string>
#include <string_view>

namespace sealworthy::report {

/// The path with forward slashes, relative to `base` where it lies below it, without `.` and doubled slashes;
/// "stdin" for "-".
std::string shown_path(std::string_view path, std::string_view base);
/// The file a finding points into: the recipe's, or the kitchen file.
std::string_view file_of(const RecipeReport& report, const Finding& finding);
/// The card's own line that the finding points at; empty where there is none.
std::string_view line_of(const RecipeReport& report, const Finding& finding);
/// As a URI reference (RFC 3986): other bytes than unreserved ones and slashes are percent-encoded.
std::string uri_of(std::string_view shown_path);
/// UTF-8 with what is none replaced by U+FFFD.
std::string valid_utf8(std::string_view text);
/// How build services rank a finding: "error" (danger, warning), "warning" (caution) or "note" (notice).
std::string_view level_of(Severity severity);
/// The title, or the number of the recipe in its file.
std::string name_of(const RecipeReport& report);

}  // namespace sealworthy::report
