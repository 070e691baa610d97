#pragma once

/// The food that is meant when a state or a unit says so.

#include <boost/container/small_vector.hpp>
#include <string_view>

#include "foods/index.hpp"
#include "foods/remarks.hpp"

namespace sealworthy::foods {

using Meant = boost::container::small_vector<FoodId, 2>;

/// The food meant by a name in a line with these states and this unit ("each" for a bare count, "" without an
/// amount): "tomatoes" with the unit "can" are canned tomatoes. Two foods where the line leaves the choice
/// ("lemon juice, fresh or bottled"). Rows of the food itself come first, then those of the foods it is a
/// kind of.
[[nodiscard]] Meant meant_food(FoodId food, Trie::Node name, const TellsStates& told, std::string_view unit,
                               const Index& index);

}  // namespace sealworthy::foods
