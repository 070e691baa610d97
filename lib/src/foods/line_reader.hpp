#pragma once

/// An ingredient line, read.

#include <span>
#include <string_view>

#include "foods/catalogue.hpp"
#include "foods/index.hpp"

namespace sealworthy::foods {

[[nodiscard]] LineReading read_line(std::string_view line, quantity::Units units, const Index& index);
[[nodiscard]] LineReading read_parts(std::string_view food, std::string_view amount,
                                     std::span<const std::string_view> states, quantity::Units units,
                                     const Index& index);
/// The food that a whole text names; nullptr if any word of weight is left over.
[[nodiscard]] const Food* read_whole_name(std::string_view text, const Index& index);

}  // namespace sealworthy::foods
