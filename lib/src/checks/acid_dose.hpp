#pragma once

/// How much of each acid that a product takes goes into one jar of a card.

#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "reading/reading.hpp"
#include "tested/product.hpp"

namespace sealworthy::checks {

/// Acids that are dosed as a listed one, though they are not it: pairs of listed and other catalogue id.
using CountsAs = std::vector<std::pair<std::string, std::string>>;

/// The acid of one jar beside the product's dose for it.
struct AcidDose {
  const tested::AcidPerJar* asked = nullptr;  ///< for this size, else for the next larger; nullptr: none
  double scale = 1;            ///< volume of the jar over that of the size dosed: below 1 for a smaller jar
  double best = 0;             ///< share of the dose that the best single choice comes to
  double total = 0;            ///< of all choices together
  std::size_t choice = 0;      ///< the best one, in asked->one_of
  bool any = false;            ///< some acid that counts is there
  bool batch = false;          ///< it is given for the batch ...
  bool batch_unknown = false;  ///< ... and can't be divided
  bool other_kind = false;     ///< it only counts as the listed one, or is weaker than it
  const reading::Ingredient* line = nullptr;  ///< the best choice's
};

/// Reads every amount at its lower end; what is optional counts as left out. Of "or" the weaker counts.
AcidDose acid_dose(const reading::Reading& reading, const reading::JarProcess& jar,
                   const CountsAs& counts_as);

/// "2 tablespoons of bottled lemon juice, 1/2 teaspoon of citric acid or 4 tablespoons of vinegar (5 %)"
std::string dose_words(const tested::AcidPerJar& asked, const foods::Catalogue& catalogue);

}  // namespace sealworthy::checks
