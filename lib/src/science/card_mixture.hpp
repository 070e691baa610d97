#pragma once

/// What a card puts into its jars, as a mixture of acids and bases.

#include <string>
#include <vector>

#include "reading/reading.hpp"
#include "science/mixture.hpp"

namespace sealworthy::science {

struct CardMixture {
  Mixture mixture;
  std::vector<std::string> by_default;  ///< foods without a known composition, which count at the default
  std::vector<std::string> no_amount;   ///< foods that were left out, because their weight is not known
  bool acid_unknown = false;  ///< an acid's amount or strength is not known: nothing can be said of the pH
};

/// Ingredients that are not in the jar, and fats, are left out. Acid given per jar is divided by what fills a
/// jar; with `makes` by the jars, where that leaves less of it.
CardMixture mixture_of(const reading::Reading& reading, const AcidData& data);

}  // namespace sealworthy::science
