#pragma once

/// What foods bring to the acidity of a mixture (rules/science), ready for use.

#include <array>
#include <optional>
#include <sealworthy/acidity.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "yaml/document.hpp"

namespace sealworthy::science {

/// How far an estimate leans to the unsafe side. best: as likely too low as too high. bound: every food at
/// the highest pH of its rows, its buffers 1.5 times (or 0.67 where it gives acid), acids as the law or the
/// label has them. strict: the same without activity, and acids at the weakest that was measured.
enum class Level { best, bound, strict };
constexpr std::size_t level_count = 3;
inline constexpr std::array all_levels{Level::best, Level::bound, Level::strict};
constexpr std::size_t index_of(Level level) { return static_cast<std::size_t>(level); }
constexpr Activity activity_of(Level level) {
  return level == Level::strict ? Activity::none : Activity::davies;
}

/// What one food, acid or base brings, per kg of it.
struct AcidProfile {
  std::array<AcidAmounts, level_count> mol{};  ///< by level
  std::array<double, level_count> base{};      ///< eq per kg
  std::array<double, level_count> own_ph{7, 7, 7};
  bool leans = true;        ///< a food, to which the bounds' factors apply; false: an acid or base as bought
  bool by_default = false;  ///< no composition is known
  bool inert = false;       ///< water, sugar, salt: only their weight counts
  bool leave_out = false;   ///< fat: not even that
  bool by_volume = false;   ///< strengths are g per 100 ml (vinegar)
  std::size_t acid = 0;     ///< the acid of an addition
  double grams_per_mol = 0;
  double grams_per_ml = 1;
  double usual_percent = 0;  ///< 0: no acid as bought
  double strict_share = 1;
  bool from_memory = false;
};

struct AcidBounds {
  double limit = 7;  ///< the pH above which botulism can grow
  double above = 1, below = 1;
  double jar_grams_per_ml = 1;
};

class AcidData {
 public:
  /// Takes a document with `weak-acids:`, `additions:`, `defaults:`, `bounds:` or `acidity:`. A row that is
  /// wrong is told and left out. Acids must be loaded before the foods that name them.
  void load_acids(std::string_view file, const yaml::Document& document, const foods::Catalogue& catalogue,
                  std::vector<foods::LoadError>& errors);
  void load_foods(std::string_view file, const yaml::Document& document, const foods::Catalogue& catalogue,
                  std::vector<foods::LoadError>& errors);

  /// A food's own row, else that of the food it is a kind of, else the default. nullopt: an acid of unknown
  /// strength, or a food that nothing is known of. Cost: a search by id, and a copy of the profile.
  [[nodiscard]] std::optional<AcidProfile> profile(const foods::Food& food,
                                                   const foods::Catalogue& catalogue) const;
  /// What a food that is not in the catalogue is taken for.
  [[nodiscard]] const AcidProfile& unknown() const { return unknown_; }
  [[nodiscard]] std::span<const WeakAcid> acids() const { return acids_; }
  [[nodiscard]] const std::string& acid_name(std::size_t acid) const { return names_[acid]; }
  [[nodiscard]] std::optional<std::size_t> acid(std::string_view id) const;
  [[nodiscard]] double grams_per_mol(std::size_t acid) const { return grams_per_mol_[acid]; }
  [[nodiscard]] const AcidBounds& bounds() const { return bounds_; }
  /// Bases by level, from the acids and the pH that `profile` holds.
  void settle(AcidProfile& profile) const;
  /// The same acid at the strength that a card or a label gives, in percent.
  void set_strength(AcidProfile& profile, double percent) const;

 private:
  struct Row {
    const foods::Food* food = nullptr;
    AcidProfile profile;
  };
  struct Default {
    std::vector<std::string> kinds;
    std::vector<foods::AcidClass> classes;
    AcidProfile profile;
  };
  friend class AcidLoader;
  friend class FoodRows;
  void sort();
  [[nodiscard]] const AcidProfile* row(const foods::Food& food) const;
  [[nodiscard]] std::optional<AcidProfile> by_default(const foods::Food& food) const;

  std::vector<WeakAcid> acids_;
  std::vector<std::string> ids_, names_;
  std::vector<double> grams_per_mol_;
  std::vector<Row> rows_;  ///< sorted by food
  std::vector<Default> defaults_;
  AcidProfile unknown_;
  AcidBounds bounds_;
};

}  // namespace sealworthy::science
