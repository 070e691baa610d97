#pragma once

/// Which ingredients of a card stand for which lines of a formula.

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include "reading/reading.hpp"
#include "tested/product.hpp"

namespace sealworthy::tested {

/// Of a formula whose lines have their foods.
LineFacts facts_of(const Formula& formula);

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

Pairing pair_up(const Formula& formula, const reading::Reading& reading);

}  // namespace sealworthy::tested
