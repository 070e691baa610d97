#pragma once

/// The tables of a loaded catalogue that the line reader works on.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "foods/lexicon.hpp"
#include "foods/phrases.hpp"
#include "foods/slips.hpp"
#include "foods/trie.hpp"

namespace sealworthy::foods {

using FoodId = std::uint32_t;
inline constexpr FoodId no_food = 0xFFFFFFFF;

/// The food that a name ends at, by the number of its last word: "pepper" is not "peppers".
struct NameEnd {
  FoodId one = no_food;
  FoodId many = no_food;
  WordId one_word = no_word;  ///< the last word as the rules spell it
  WordId many_word = no_word;
};

/// Another food that is meant where a state or a unit says so: "dried" basil, a "can" of tomatoes.
struct Instead {
  FoodId food = no_food;
  std::vector<Trie::Node> names;       ///< only under these names; empty: under any
  std::vector<StateId> states;         ///< any of these
  std::vector<std::string> units;      ///< any of these; "each" is a bare count
  std::vector<std::string> not_units;  ///< and none of these: "2 tbsp cloves, crushed" are the spice
};

struct Index {
  Lexicon lexicon;
  Phrases phrases;
  Trie names;                          ///< over singulars
  std::vector<NameEnd> name_ends;      ///< by node of `names`
  std::vector<Trie::Node> name_first;  ///< the child of the root, by lemma
  std::vector<Food> foods;
  std::vector<std::vector<Instead>> instead;                      ///< by food
  std::vector<FoodId> parents;                                    ///< by food
  std::vector<std::vector<std::vector<StateId>>> measure_states;  ///< by food and measure
  Slips slips;

  [[nodiscard]] FoodId food_at(Trie::Node node, bool plural) const {
    if (node >= name_ends.size()) return no_food;
    const auto& end = name_ends[node];
    const FoodId wanted = plural ? end.many : end.one;
    return wanted != no_food ? wanted : plural ? end.one : end.many;
  }
};

}  // namespace sealworthy::foods
