#pragma once

/// Single values as a command line gives them, read the same way as in a card.

#include <sealworthy/checker.hpp>
#include <string_view>
#include <variant>

namespace sealworthy {

/// "5,280 ft", "1600 m", "0-1,000 ft", "above 6,000 ft"; a bare number is feet. Takes -1,500 to 40,000 ft;
/// the error says what is wanted.
std::variant<Interval<Altitude>, InputError> read_altitude(std::string_view text);

}  // namespace sealworthy
