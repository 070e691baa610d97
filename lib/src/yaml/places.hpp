#pragma once

#include <yaml-cpp/mark.h>

#include <span>
#include <string_view>

#include "yaml/shorten.hpp"
#include "yaml/split.hpp"

namespace sealworthy::yaml {

/// Turns the parser's marks into places of the file. A Mark counts bytes, also in its column; a Position
/// counts code points. Marks come nearly in order, so a wide text is counted once, not once a mark.
class Places {
 public:
  /// `left_out`: where the parser was shown a shorter text than the chunk's.
  explicit Places(const Chunk& chunk, std::span<const StandIn> left_out = {})
      : chunk_(&chunk), left_out_(left_out) {}

  /// The byte of the chunk that a mark points at; a mark outside the text points at its end.
  [[nodiscard]] std::size_t offset(const YAML::Mark& mark) const;
  [[nodiscard]] Position of(const YAML::Mark& mark) {
    if (chunk_->ascii && mark.line >= 0 && mark.column >= 0)
      return {chunk_->line + mark.line, mark.column + 1};
    return at(offset(mark));
  }
  Position at(std::size_t offset);
  [[nodiscard]] const Chunk& chunk() const { return *chunk_; }

  // Neighbourhood of a byte.
  [[nodiscard]] std::size_t line_begin(std::size_t offset) const;
  [[nodiscard]] std::size_t line_end(std::size_t offset) const;  ///< before the line break
  [[nodiscard]] std::string_view line_at(std::size_t offset) const;

 private:
  const Chunk* chunk_;
  std::span<const StandIn> left_out_;
  std::size_t seen_ = 0;  // of this byte the position is known:
  Position seen_at_{0, 1};
};

}  // namespace sealworthy::yaml
