#pragma once

/// From the words of a name to a food.

#include <string>

#include "foods/name_region.hpp"
#include "foods/tokens.hpp"

namespace sealworthy::foods {

/// A part of the name, read.
struct NamePart {
  std::string name;  ///< without cuts and other words that are no part of a name, what is borrowed put behind
  std::string written;  ///< as it stands in the line, where that differs; else ""
  FoodId food = no_food;
  Trie::Node node = Trie::none;  ///< of the food's name
  bool slip = false;
  bool whole = true;  ///< false: words are left over that make it another food, or one not known
};

/// Reads one alternative. `shared` is the last alternative, whose last words the others may borrow ("*lime*
/// or orange juice"); nullptr for that one itself.
[[nodiscard]] NamePart read_name(const Tokens& tokens, const Part& part, const Part* shared,
                                 const Index& index);
/// Reads a name put together from two places of the line: "beans (lima)" as "lima beans". no_food unless
/// every word is used.
[[nodiscard]] NamePart read_joined(const Tokens& tokens, const Part& first, const Part& second,
                                   const Index& index);

}  // namespace sealworthy::foods
