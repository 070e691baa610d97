#pragma once

/// The words of a card or page that a report shows under a finding.

#include <sealworthy/finding.hpp>
#include <string>
#include <string_view>

namespace sealworthy::report {

struct Quote {
  std::string text;   ///< at most the room asked for
  bool part = false;  ///< it begins within the line: the column tells more than the line
};

/// The line where it fits into `room` columns; else the words meant: the text in quotes that stands at the
/// column (a string of JSON, its escapes read), or the sentence around it. Of a longer text in quotes the
/// sentence with `found` in it, if there is one. `column` counts code points from 1; 0: none is known. Never
/// throws but for bad_alloc. Cost: linear in the line.
Quote quote(std::string_view line, int column, std::string_view found, int room);

}  // namespace sealworthy::report
