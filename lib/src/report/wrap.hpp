#pragma once

/// Lines that fit a terminal. Columns are counted in code points.

#include <string>
#include <string_view>

namespace sealworthy::report {

/// Code points of a text.
int columns(std::string_view text);
/// Breaks `text` at spaces so that no line passes `width`; the first line starts after `lead` (already as
/// wide as `indent` or wider), the others are indented. A word longer than a line stands alone. Ends with a
/// newline.
std::string wrap(std::string_view lead, std::string_view text, int indent, int width);
/// The text cut to `width` columns, with "..." where something was left out.
std::string cut(std::string_view text, int width);

}  // namespace sealworthy::report
