#pragma once

/// The parser matches several patterns at every byte of a scalar: some 1,500 instructions a byte, nearly all
/// the cost of reading (measured with callgrind). Most bytes of a card are plain text at the end of a line,
/// where nothing can end the text but the line. There the parser is shown a stand-in of one letter, and the
/// builder puts the text back.
///
/// Why that can't change what is read: the builder takes a stand-in only when the parser reports a plain
/// scalar, in block context, at exactly that line and column, whose value is the stand-in and nothing more.
/// Then the text that stood there, which begins with a letter or digit and holds neither `:` nor `#` nor a
/// tab, would have been one plain scalar up to the end of its line too. When any stand-in is not taken so, or
/// the short text is refused for any reason, the builder starts again with the full text. tests/fuzz holds
/// both ways against each other.

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy::yaml {

struct StandIn {
  int line = 0;             ///< from 0, as the parser counts
  int column = 0;           ///< in bytes, as the parser counts
  std::string_view text;    ///< what stands there
  std::size_t dropped = 0;  ///< bytes left out up to the end of this line, those of earlier lines included
};

struct ShortText {
  static constexpr char letter = 'x';
  std::string text;
  std::vector<StandIn> stand_ins;  ///< in order
};

/// Fills `out`, whose memory is used again. Every token of the short text has the line and column that it has
/// in the full one. Cost: one pass.
void shorten(std::string_view full, ShortText& out);

}  // namespace sealworthy::yaml
