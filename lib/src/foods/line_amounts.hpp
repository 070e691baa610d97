#pragma once

/// The amounts of an ingredient line.

#include <boost/container/small_vector.hpp>
#include <cstddef>
#include <optional>

#include "foods/tokens.hpp"
#include "quantity/amount.hpp"

namespace sealworthy::foods {

struct FurtherAmount {
  std::size_t token = 0;  ///< where it starts
  quantity::Amount amount;
  bool used = false;  ///< another food's amount
};

struct LineAmounts {
  quantity::Amount first;  ///< of the line
  boost::container::small_vector<FurtherAmount, 2> further;
};

/// Reads the amounts and marks their words as spent.
[[nodiscard]] LineAmounts read_amounts(Tokens& tokens, quantity::Units units);

}  // namespace sealworthy::foods
