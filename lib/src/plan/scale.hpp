#pragma once

/// Ingredient lines at another batch size.

#include <string>
#include <string_view>

#include "foods/catalogue.hpp"

namespace sealworthy::plan {

/// The line with every amount in it times `factor`; what has no figure stays as it is.
std::string scaled_line(std::string_view text, const foods::LineReading& read, double factor);

/// The first amount of the line times `factor`: "14 tablespoons"; empty without a figure.
std::string amount_times(const foods::LineReading& read, double factor);

}  // namespace sealworthy::plan
