#pragma once

/// Byte offsets of a text -> lines and columns.

#include <cstddef>
#include <sealworthy/position.hpp>
#include <string_view>

namespace sealworthy::text {

/// Columns count code points; a line ends at LF, CR LF or a lone CR. Offsets that come in order cost one pass
/// over the text in all; one that goes back starts again from the beginning.
class Locator {
 public:
  /// `start`: where the text begins in its file.
  explicit Locator(std::string_view text, Position start = {1, 1})
      : text_(text), start_(start), place_(start) {}

  /// The place of a byte; one past the end stands for the end.
  Position at(std::size_t offset);

 private:
  std::string_view text_;
  Position start_, place_;
  std::size_t seen_ = 0;  ///< the byte that `place_` is the place of
};

}  // namespace sealworthy::text
