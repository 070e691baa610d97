#pragma once

/// What a line says beside the food and its amount: states, sizes, strengths, and where the food goes.

#include <boost/container/small_vector.hpp>

#include "foods/catalogue.hpp"
#include "foods/tokens.hpp"

namespace sealworthy::foods {

/// A state told in the line. `choice`: it stands in an "or" with another state ("fresh or bottled").
struct Told {
  StateId state = no_state;
  bool choice = false;
};
using TellsStates = boost::container::small_vector<Told, 8>;

/// The states told by tokens [from, to), each once. What is denied ("not peeled") or only allowed ("you can
/// use canned") is left out.
[[nodiscard]] TellsStates read_states(const Tokens& tokens, const Index& index, std::size_t from,
                                      std::size_t to);
/// Fills in optional, to_taste, not_eaten, per_jar, per_jar_of, strength_percent and piece.
void read_remarks(const Tokens& tokens, quantity::Units units, LineReading& reading);
/// True if the number at token i is no amount: a percentage, a length.
[[nodiscard]] bool other_figure(const Tokens& tokens, std::size_t i);

}  // namespace sealworthy::foods
