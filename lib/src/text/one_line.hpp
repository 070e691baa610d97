#pragma once

#include <string>
#include <string_view>

namespace sealworthy::text {

/// The text on one line, as it may stand in a comment or a report: line ends (Unicode's too), tabs and
/// control characters are a blank, and there is one blank between words.
std::string one_line(std::string_view text);

}  // namespace sealworthy::text
