#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace sealworthy::yaml {

/// The quotes and brackets of a text that the parser refused, found by a rough reading: enough to point at
/// the one that was never closed or that closed too early.
struct Quoting {
  struct Quoted {
    std::size_t begin = 0;  ///< of the opening quote
    std::size_t end = 0;    ///< after the closing quote
  };
  std::optional<std::size_t> open_quote;    ///< never closed
  std::optional<std::size_t> open_bracket;  ///< the innermost `[` or `{` never closed
  std::optional<Quoted> last_before;        ///< the last text in quotes that ends at or before `offset`
};
Quoting read_quoting(std::string_view text, std::size_t offset);

/// After the closing quote of the text in quotes that begins at `begin`; nullopt when it is never closed.
std::optional<std::size_t> end_of_quoted(std::string_view text, std::size_t begin);

}  // namespace sealworthy::yaml
