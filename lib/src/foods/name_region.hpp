#pragma once

/// Where in a line the name stands: from behind the amount up to the remarks, cut at "or" and "and".

#include <boost/container/small_vector.hpp>
#include <cstddef>

#include "foods/tokens.hpp"

namespace sealworthy::foods {

/// Tokens [first, last] of one alternative; amounts and bracketed remarks may stand between.
struct Part {
  std::size_t first = 0;
  std::size_t last = 0;
};

struct NameRegion {
  boost::container::small_vector<Part, 4> parts;
  bool either = false;  ///< joined by "or" somewhere
  std::size_t end = 0;  ///< the first token behind
};

/// The name that starts at or after token `from`. No parts: none was found up to the end of the line.
[[nodiscard]] NameRegion find_name(const Tokens& tokens, std::size_t from);

/// True if the token may be part of a name at this depth of brackets: not of an amount, not in brackets.
[[nodiscard]] inline bool at_depth(const Token& token, std::size_t depth) {
  return !token.spent && token.depth == depth;
}

}  // namespace sealworthy::foods
