#pragma once

/// Numbers as people write them, at a place of a text. No allocation, no locale.

#include <cstddef>
#include <optional>
#include <string_view>

namespace sealworthy::quantity {

struct Number {
  double value = 0;
  std::size_t end = 0;
  bool proper = false;   ///< a fraction below one with nothing before it: "1/2", "½", "half"
  bool whole = false;    ///< a whole number: "28", "1,000", "two"
  bool article = false;  ///< only "a" or "an"
  /// Of a mixed number ("4 1/2"): its whole part and where its fraction starts. 0 else.
  double whole_part = 0;
  std::size_t fraction_at = 0;
};

/// A number in figures that starts at `at`: "1 1/2", "1-1/2", "1½", "1 ½", "½", "1⁄2", "1.5", ".5", "1,5"
/// (decimal comma), "5,280" (thousands), "1 and 1/2", "1 and a half". A comma before exactly three digits
/// parts thousands, unless the figure before it is 0; before one, two or more than three digits it is a
/// decimal comma. "11/2" is 1 1/2 whose space was lost: nobody measures in eleven halves (common practice of
/// readers). Figures of more than 12 digits are refused.
std::optional<Number> read_figure(std::string_view text, std::size_t at);

/// A number in figures or words: "one", "twenty-four", "half", "half a", "a half", "one-half", "three
/// quarters", "one and a half", "a couple of". "a" and "an" alone are one, with `article` set.
std::optional<Number> read_number(std::string_view text, std::size_t at);

/// What stands between the two ends of a range: "-", "–", " - ", "--", "to", "or", "through", "up to". The
/// place of the upper end, or nullopt.
std::optional<std::size_t> range_mark(std::string_view text, std::size_t at);

}  // namespace sealworthy::quantity
