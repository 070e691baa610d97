#pragma once

/// Which ingredients of a card stand for which lines of a formula.

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include "reading/reading.hpp"
#include "tested/product.hpp"

namespace sealworthy::tested {

/// Lines of a formula, one bit each; formulas are shorter than 64 lines.
using Lines = std::uint64_t;
constexpr Lines line_bit(std::size_t line) { return line < 64 ? Lines{1} << line : 0; }

/// What kind of line a line is.
struct LineFacts {
  Lines water = 0;
  Lines flavor = 0;  ///< nothing but dry spice, herb, food color
  Lines not_eaten = 0;
  bool acid = false;  ///< the formula rests on an acid, which water would thin
};
LineFacts facts_of(const Formula& formula, const foods::Catalogue& catalogue);

/// Lines and the ingredients to be compared with them: one with one, or sums where a food stands in several
/// lines or ingredients ("6 cups of peppers" beside a line of red and a line of green ones).
struct Pair {
  Lines lines = 0;
  std::size_t first_line = 0;
  std::vector<std::size_t> ingredients;  ///< indices into Reading::ingredients
};

struct Pairing {
  std::vector<Pair> pairs;
  std::vector<std::size_t> unplaced;  ///< ingredients that go into the jar and that no line is for ...
  std::vector<std::size_t> water;     ///< ... water among them
  /// Foods that a line names beside one that has a place ("peppers and corn"), and that have none themselves.
  std::vector<std::pair<std::size_t, const foods::Named*>> beside;
};

Pairing pair_up(const Formula& formula, const LineFacts& facts, const reading::Reading& reading);

}  // namespace sealworthy::tested
