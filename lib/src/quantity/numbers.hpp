#pragma once

/// Numbers and words at a place of a text, with no allocation and no locale: what every reader of this
/// room is built on. Places are byte offsets; every function takes any bytes.

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace sealworthy::quantity {

/// The place of the first thing that is not a space (Unicode spaces and zero-width marks included).
std::size_t skip_space(std::string_view text, std::size_t at);
/// Bytes of the hyphen, dash or minus that stands at `at`, or 0.
std::size_t dash_at(std::string_view text, std::size_t at);
/// Bytes of the inch mark (", ″, ” or two primes) at `at`, or 0.
std::size_t inch_mark_at(std::string_view text, std::size_t at);

/// A run of ASCII letters, folded to lower case. Empty where none starts, or where the run is longer than any
/// word of the tables, or goes on in letters of another alphabet.
class Letters {
 public:
  Letters() = default;
  Letters(std::string_view text, std::size_t at);
  [[nodiscard]] std::string_view view() const { return {buffer_.data(), size_}; }
  [[nodiscard]] bool empty() const { return size_ == 0; }
  [[nodiscard]] std::size_t end() const { return end_; }
  [[nodiscard]] bool is(std::string_view word) const { return view() == word; }
  /// As written, for "T" against "t".
  [[nodiscard]] char first_raw() const { return raw_; }

 private:
  std::array<char, 24> buffer_{};
  std::size_t size_ = 0;
  std::size_t end_ = 0;
  char raw_ = 0;
};

struct Number {
  double value = 0;
  std::size_t end = 0;
  bool proper = false;    ///< a fraction below one and nothing before it: "1/2", "½"
  bool whole = false;     ///< digits only: "28", "1,000"
  bool in_words = false;  ///< "one", "half a"
  /// Of a mixed number ("4 1/2"): its whole part and where its fraction starts. 0 else.
  double whole_part = 0;
  std::size_t fraction_at = 0;
};

/// A number in figures that starts at `at`: "1 1/2", "1-1/2", "1½", "1 ½", "½", "1⁄2", "1.5", ".5", "1,5"
/// (decimal comma), "5,280" (thousands), "1 and 1/2". A comma before exactly three digits parts thousands,
/// unless the figure before it is 0; before one, two or more than three digits it is a decimal comma. "11/2"
/// is 1 1/2 whose space was lost: nobody measures in eleven halves (common practice of readers). Figures over
/// 12 digits are refused.
std::optional<Number> read_figure(std::string_view text, std::size_t at);

/// A number in figures or words: "one", "twelve", "half", "half a", "a half", "one-half", "three quarters",
/// "one and a half", "a couple of". "a" and "an" alone are one.
std::optional<Number> read_number(std::string_view text, std::size_t at);

/// Between the two ends of a range: "-", "–", " - ", "--", "to", "or" (if `or_too`), "through". The place
/// after it, or nullopt.
std::optional<std::size_t> range_mark(std::string_view text, std::size_t at, bool or_too);

}  // namespace sealworthy::quantity
