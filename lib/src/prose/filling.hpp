#pragma once

/// What directions tell of the filling: headspace, jars, pack, and what goes into each jar.

#include <optional>
#include <string_view>
#include <vector>

#include "prose/sentence.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy::prose {

/// A headspace with the jar that it is for, if one stands beside it.
struct HeadspaceTold {
  recipe::Placed<Interval<Headspace>> value;
  std::optional<quantity::JarText> jar;
};

/// "leave 1/2-inch headspace", "headspace of 1 inch", "to within 1/4 inch of the rim". A size of pieces is
/// none.
void find_headspaces(const Sentence& sentence, std::vector<HeadspaceTold>& out);

/// "Ladle hot into hot jars" is hot, "pack raw peaches" raw; a hot liquid poured over the food tells nothing,
/// unless the recipe is one of that liquid (`title` ends with its name).
std::optional<recipe::Placed<recipe::Pack>> find_pack(const Sentence& sentence, const Sentence* title);

/// Hot where the food was heated and then, with nothing between that cools it or adds to it, filled into the
/// jars: "Simmer 5 minutes. Fill hot pint jars." Nothing is told where a liquid alone was heated (unless the
/// recipe is for it: `title`), another food is filled, or a liquid is poured over what stands in the jars.
std::optional<recipe::Placed<recipe::Pack>> find_pack_by_heat(const std::vector<Sentence>& sentences,
                                                              const Sentence* title);

/// What a sentence puts into each jar, as a line of the ingredients would say it.
struct PerJar {
  Position at;
  std::string_view amount;                                ///< "2 tablespoons"
  std::string_view food;                                  ///< "bottled lemon juice"
  std::optional<recipe::Placed<quantity::JarText>> size;  ///< "per quart"
  bool optional = false;                                  ///< "if desired"
};
void find_per_jar(const Sentence& sentence, quantity::Units units, std::vector<PerJar>& out);

}  // namespace sealworthy::prose
