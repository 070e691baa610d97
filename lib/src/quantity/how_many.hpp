#pragma once

/// How many jars a text tells of, for read_yield and read_jars.

#include <cstddef>
#include <optional>
#include <string_view>

#include "quantity/amount.hpp"
#include "quantity/numbers.hpp"

namespace sealworthy::quantity {

struct HowMany {
  Interval<double> number;
  std::size_t end = 0;
  /// Of "4 1/2-pint jars": the size that stands in the figure's fraction.
  std::optional<Number> size;
  /// Said as a number of things by its form: "6-7", "a dozen", "6 x".
  bool counts = false;
};

/// The number at `at`: "7", "6 to 7", "2 dozen", "6 x".
std::optional<HowMany> how_many(std::string_view text, std::size_t at);

}  // namespace sealworthy::quantity
