#pragma once

/// The pH of what goes into a jar, at three levels of caution (acid_data.hpp), and what drives it.

#include <optional>
#include <sealworthy/interval.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "science/acid_data.hpp"

namespace sealworthy::science {

struct Part {
  std::string_view name;   ///< for people; the card's or the catalogue's, which outlive the part
  Interval<double> grams;  ///< in one batch
  AcidProfile profile;
};

struct Mixture {
  std::vector<Part> parts;
  double extra_base = 0;  ///< eq in the batch
};

/// What a part does to the best estimate: acid that it gives to the others (negative: takes from them).
struct Pull {
  double meq = 0;
};

struct MixturePh {
  std::array<double, level_count> ph{};
  std::array<double, level_count> residual{};
  std::vector<Pull> pulls;  ///< one a part, at the best estimate
};

/// nullopt: nothing that weighs anything, or amounts beyond the solver's ranges.
/// Each part counts at the worse end of its grams, at the best level at the middle. Cost: about 10
/// microseconds for a dozen parts.
std::optional<MixturePh> ph_of(const Mixture& mixture, const AcidData& data);
/// One level alone.
std::optional<Equilibrium> ph_of(const Mixture& mixture, const AcidData& data, Level level);

}  // namespace sealworthy::science
