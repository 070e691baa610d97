#pragma once

/// A card beside the tested formula, in two columns.

#include <sealworthy/report.hpp>
#include <string>

namespace sealworthy::report {

/// Lines of at most 80 columns, or of the style's width where that is less: a mark, the card's words, the
/// formula's words, each line ended. Below 60 columns the formula's words stand under the card's.
std::string side_by_side(const Comparison& comparison, const TextStyle& style);

}  // namespace sealworthy::report
