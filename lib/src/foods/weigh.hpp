#pragma once

/// Weights of amounts from household measures (rules/foods: `measures`).

#include <optional>
#include <span>

#include "foods/index.hpp"

namespace sealworthy::foods {

/// Weight of an amount of a food in a state. An interval where several measures fit or the size of pieces is
/// not said; nullopt where no measure is known. "about" is left to the reader of the amount.
[[nodiscard]] std::optional<Interval<Mass>> weigh_amount(const quantity::Amount& amount, FoodId food,
                                                         std::span<const StateId> states, const Index& index);

}  // namespace sealworthy::foods
