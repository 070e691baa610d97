#pragma once

/// Cutting a file into the texts of its documents, and refusing what is no YAML text before any parser sees
/// it.

#include <optional>
#include <string_view>
#include <vector>

#include "yaml/document.hpp"

namespace sealworthy::yaml {

/// The text of one document, from its `---` line (or the start of the file) to before the next marker.
struct Chunk {
  std::string_view text;
  int line = 1;             ///< line of the file on which it begins
  bool ascii = true;        ///< a byte is a column
  bool tabs = false;        ///< a tab stands somewhere
  bool hashes = false;      ///< a `#` stands somewhere
  std::size_t openers = 0;  ///< `[`, `{` and `,`: bounds what the parser may have to queue
};

/// Why the whole file can't be read as text: too long, UTF-16, or a NUL byte.
std::optional<Error> unfit_file(std::string_view text, const Limits& limits);

/// The chunks that hold more than blanks, comments and directives. A marker is a line that starts with `---`
/// or `...`, followed by a blank or the end of the line (YAML 1.2.2, 9.1): no scalar may hold one, so cutting
/// there is exact.
std::vector<Chunk> split(std::string_view text);

/// Fills in the flags of a chunk and says what keeps it from being YAML text: invalid UTF-8, or a control
/// character (YAML 1.2.2, 5.1).
std::optional<Error> survey(Chunk& chunk);

/// The line and column of a byte of a chunk, counted from the chunk's first byte. Cost: linear in the offset.
Position position_of(const Chunk& chunk, std::size_t offset);

/// Code points of a valid UTF-8 text.
int code_points(std::string_view text);

}  // namespace sealworthy::yaml
