#pragma once

#include <compare>

namespace sealworthy {

/// A place in a source text. Lines and columns count from 1; a column counts Unicode code points, not bytes.
/// `line == 0` means "no place known".
struct Position {
  int line = 0;
  int column = 0;

  friend constexpr bool operator==(const Position&, const Position&) = default;
  friend constexpr auto operator<=>(const Position&,
                                    const Position&) = default;  // NOLINT(modernize-use-nullptr)
};

}  // namespace sealworthy
