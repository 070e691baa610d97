#pragma once

/// From the names in a line to foods: alternatives, several foods, foods with amounts of their own.

#include "foods/index.hpp"
#include "foods/line_amounts.hpp"
#include "foods/remarks.hpp"
#include "foods/tokens.hpp"

namespace sealworthy::foods {

/// Fills in `foods`, `all_of`, `name`, `unknown` and `more`, whose amounts must be read and the names
/// matched. `given` are states told beside the line. Returns the states that hold for the line's food.
TellsStates read_items(const Tokens& tokens, LineAmounts& amounts, const TellsStates& given,
                       const Index& index, LineReading& reading);

}  // namespace sealworthy::foods
