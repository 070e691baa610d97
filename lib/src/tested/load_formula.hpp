#pragma once

/// Reading a tested formula: its lines, its further versions, what may and may not be changed.

#include "tested/load_context.hpp"

namespace sealworthy::tested {

/// Reads `formula:`; further `versions:` of it go to `versions`.
Formula load_formula(const yaml::Node& node, Read product_read, const LoadContext& context,
                     std::vector<Formula>& versions);

/// An amount that takes up the whole text; an error at the node where it does not.
std::optional<quantity::Amount> read_whole_amount(const yaml::Node& node, const LoadContext& context);
/// "5 %" or 5.
std::optional<double> read_strength(checks::Fields& fields, const LoadContext& context);

}  // namespace sealworthy::tested
