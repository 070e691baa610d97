#include "science/mixture.hpp"

#include <cmath>

namespace sealworthy::science {
namespace {

constexpr double per_milli = 1e-3;

/// Acids and base of a batch, each part weighed as the level asks for a mixture of a pH.
struct Sums {
  AcidAmounts mol{};
  double base = 0;
  double kg = 0;
};

bool gives_base(const AcidProfile& profile) { return profile.acid == 0 && profile.usual_percent == 0; }

/// Grams of a part and the factor on what it brings, the way that leaves the pH higher.
std::pair<double, double> worse_end(const Part& part, const AcidData& data, Level level, double ph) {
  if (level == Level::best) return {(part.grams.low + part.grams.high) / 2, 1};
  const AcidProfile& profile = part.profile;
  if (profile.inert) return {part.grams.high, 1};
  if (!profile.leans) return {gives_base(profile) ? part.grams.high : part.grams.low, 1};
  const bool above = profile.own_ph[index_of(level)] > ph;
  return {above ? part.grams.high : part.grams.low, above ? data.bounds().above : data.bounds().below};
}

Sums sums_of(const Mixture& mixture, const AcidData& data, Level level, double ph) {
  Sums sums;
  sums.base = mixture.extra_base;
  const std::size_t acids = data.acids().size();
  for (const Part& part : mixture.parts) {
    if (part.profile.leave_out) continue;
    const auto [grams, factor] = worse_end(part, data, level, ph);
    const double kg = grams * per_milli;
    sums.kg += kg;
    if (part.profile.inert) continue;
    sums.base += kg * factor * part.profile.base[index_of(level)];
    const AcidAmounts& mol = part.profile.mol[index_of(level)];
    for (std::size_t i = 0; i < acids; ++i) sums.mol[i] += kg * factor * mol[i];
  }
  return sums;
}

std::optional<Equilibrium> solve(Sums sums, const AcidData& data, Level level) {
  if (!(sums.kg > 0)) return std::nullopt;
  for (double& mol : sums.mol) mol /= sums.kg;
  return value_of(equilibrium(data.acids(), sums.mol, sums.base / sums.kg, activity_of(level)));
}

}  // namespace

std::optional<Equilibrium> ph_of(const Mixture& mixture, const AcidData& data, Level level) {
  // Which foods lie above the mixture depends on its pH; a food exactly at it pulls neither way, so that a
  // few rounds settle it.
  constexpr int rounds = 12;
  constexpr double enough = 1e-6;
  double ph = data.bounds().limit;
  std::optional<Equilibrium> found;
  for (int i = 0; i < rounds; ++i) {
    found = solve(sums_of(mixture, data, level, ph), data, level);
    if (!found || level == Level::best || std::abs(found->ph - ph) < enough) break;
    ph = found->ph;
  }
  return found;
}

std::optional<MixturePh> ph_of(const Mixture& mixture, const AcidData& data) {
  MixturePh result;
  double strength = 0;
  for (const Level level : all_levels) {
    const auto found = ph_of(mixture, data, level);
    if (!found) return std::nullopt;
    result.ph[index_of(level)] = found->ph;
    result.residual[index_of(level)] = found->residual;
    if (level == Level::best) strength = found->ionic_strength;
  }
  // The bounds lean on every choice, so they lie at or above the best estimate; rounding must not turn that.
  for (const Level level : {Level::bound, Level::strict}) {
    double& ph = result.ph[index_of(level)];
    ph = std::max(ph, result.ph[index_of(level) - 1]);
  }
  result.pulls.reserve(mixture.parts.size());
  for (const Part& part : mixture.parts) {
    const auto& profile = part.profile;
    const double charge = charge_at(result.ph[0], data.acids(), profile.mol[0], strength);
    const bool counts = !profile.inert && !profile.leave_out;
    const double grams = (part.grams.low + part.grams.high) / 2;  // eq per kg is meq per g
    result.pulls.push_back({counts ? grams * (charge - profile.base[0]) : 0});
  }
  return result;
}

}  // namespace sealworthy::science
