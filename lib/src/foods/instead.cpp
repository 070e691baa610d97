#include "foods/instead.hpp"

#include <algorithm>

namespace sealworthy::foods {
namespace {

const Told* told_state(const Instead& row, const TellsStates& told) {
  for (const auto& t : told)
    if (std::find(row.states.begin(), row.states.end(), t.state) != row.states.end()) return &t;
  return nullptr;
}

}  // namespace

Meant meant_food(FoodId food, Trie::Node name, const TellsStates& told, std::string_view unit,
                 const Index& index) {
  for (FoodId at = food; at != no_food; at = index.parents[at])
    for (const auto& row : index.instead[at]) {
      if (!row.names.empty() &&
          (at != food || std::find(row.names.begin(), row.names.end(), name) == row.names.end()))
        continue;
      if (std::find(row.not_units.begin(), row.not_units.end(), unit) != row.not_units.end()) continue;
      const Told* state = told_state(row, told);
      if (state == nullptr && std::find(row.units.begin(), row.units.end(), unit) == row.units.end())
        continue;
      if (state != nullptr && state->choice && row.food != food) return {food, row.food};
      return {row.food};
    }
  return {food};
}

}  // namespace sealworthy::foods
