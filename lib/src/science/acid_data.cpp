#include "science/acid_data.hpp"

#include <algorithm>

namespace sealworthy::science {

std::optional<std::size_t> AcidData::acid(std::string_view id) const {
  const auto found = std::find(ids_.begin(), ids_.end(), id);
  if (found == ids_.end()) return std::nullopt;
  return static_cast<std::size_t>(found - ids_.begin());
}

void AcidData::settle(AcidProfile& profile) const {
  for (const Level level : all_levels) {
    const std::size_t i = index_of(level);
    profile.base[i] =
        value_of(base_at(profile.own_ph[i], acids_, profile.mol[i], activity_of(level))).value_or(0);
  }
}

void AcidData::set_strength(AcidProfile& profile, double percent) const {
  if (profile.grams_per_mol <= 0) return;
  const double mol = percent * 10 / (profile.by_volume ? profile.grams_per_ml : 1) / profile.grams_per_mol;
  for (const Level level : all_levels)
    profile.mol[index_of(level)][profile.acid] = level == Level::strict ? mol * profile.strict_share : mol;
}

const AcidProfile* AcidData::row(const foods::Food& food) const {
  const auto found = std::lower_bound(rows_.begin(), rows_.end(), food.id,
                                      [](const Row& r, const std::string& id) { return r.food->id < id; });
  return found != rows_.end() && found->food->id == food.id ? &found->profile : nullptr;
}

std::optional<AcidProfile> AcidData::by_default(const foods::Food& food) const {
  const auto fits = [&](const Default& one) {
    const bool kind =
        one.kinds.empty() || std::find(one.kinds.begin(), one.kinds.end(), food.kind) != one.kinds.end();
    return kind && (one.classes.empty() ||
                    std::find(one.classes.begin(), one.classes.end(), food.acid_class) != one.classes.end());
  };
  const auto found = std::find_if(defaults_.begin(), defaults_.end(), fits);
  if (found == defaults_.end()) return std::nullopt;
  AcidProfile profile = found->profile;
  if (profile.inert || profile.leave_out || !food.ph) return profile;
  profile.own_ph = {(food.ph->low + food.ph->high) / 2, food.ph->high, food.ph->high};
  settle(profile);
  return profile;
}

std::optional<AcidProfile> AcidData::profile(const foods::Food& food,
                                             const foods::Catalogue& catalogue) const {
  constexpr int longest_chain = 8;
  const foods::Food* at = &food;
  for (int i = 0; at != nullptr && i < longest_chain; ++i) {
    if (const AcidProfile* found = row(*at)) {
      AcidProfile profile = *found;
      if (profile.usual_percent > 0 && at != &food && food.acid_percent)
        set_strength(profile, *food.acid_percent);
      return profile;
    }
    at = at->parent.empty() ? nullptr : catalogue.find(at->parent);
  }
  if (food.kind == "acid") return std::nullopt;  // how strong it is, nobody says
  return by_default(food);
}

}  // namespace sealworthy::science
