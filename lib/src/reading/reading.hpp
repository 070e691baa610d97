#pragma once

/// What a recipe means: foods named, acid class worked out, the tested process matched, the kitchen applied.
/// A check sees this and nothing else.

#include <memory>
#include <optional>
#include <sealworthy/finding.hpp>
#include <string>
#include <vector>

#include "foods/catalogue.hpp"
#include "reading/sentences.hpp"
#include "recipe/kitchen.hpp"
#include "recipe/recipe.hpp"
#include "tested/tables.hpp"

namespace sealworthy::tested {
struct FormulaComparison;
}

namespace sealworthy::reading {

class MatchIndex;

/// Where the jars are meant to stand, from the title and the steps. No process is asked of a cold one.
enum class Keep { shelf, refrigerator, freezer };

/// What a method's trade word means (rules/methods.yaml). low_temperature: water at 180 to 185 F, for the
/// products that list it.
enum class MethodKind { unknown, boiling_water, steam, pressure, low_temperature, not_accepted };

struct Ingredient {
  const recipe::IngredientLine* line = nullptr;
  foods::LineReading read;
  /// The food that decides when the line leaves a choice (the worse of the alternatives); nullptr: none
  /// known.
  const foods::Food* food = nullptr;
};

/// One jar size of the card with the process that serves it.
struct JarProcess {
  const quantity::JarText* jar = nullptr;  ///< nullptr: the card names no jar
  Position jar_at;
  std::optional<tested::JarIndex> size;      ///< the tabled size that it counts as
  const recipe::Process* process = nullptr;  ///< nullptr: none is given
  MethodKind method = MethodKind::unknown;
  std::string_view method_id;    ///< id in rules/methods.yaml; "" unknown
  std::string_view method_name;  ///< for messages
  std::optional<recipe::Gauge> gauge;
  std::optional<recipe::Placed<Interval<Headspace>>> headspace;
  /// The altitudes at which this process is judged, highest first. Empty: none known, the lowest band.
  std::vector<Altitude> heights;
  /// What the matched product's tables hold for this jar by this method: every pack, both gauges where none
  /// is said, at the lowest altitude (`option->at` gives another). Empty: nothing is tabled.
  std::vector<tested::Needed> tabled;
};

/// A canner of the kitchen file, its trade word understood.
struct CannerAtHand {
  const recipe::Canner* canner = nullptr;
  MethodKind method = MethodKind::unknown;
  std::string_view method_name;
  std::optional<recipe::Gauge> gauge;
};

struct AltitudeUse {
  std::optional<Interval<Altitude>> kitchen;  ///< from --altitude or the kitchen file
  bool from_option = false;                   ///< --altitude, not the kitchen file
  std::optional<recipe::Placed<Interval<Altitude>>> card;
  /// The altitudes at which figures are judged: the worse end of each of the two, and where the writer's
  /// kitchen is, highest first. Empty: none known, the lowest band. JarProcess::heights says which of them a
  /// process is meant for.
  std::vector<Altitude> judged;
};

struct Match {
  enum class By { none, follows, found };
  const tested::Product* product = nullptr;  ///< the process compared with
  By by = By::none;
  bool doubtful = false;  ///< another product fits as well, or a form is unsaid: never `tested`
  std::string doubt;      ///< why, in words
  std::vector<const tested::Product*> also;  ///< the others that fit
  const tested::Product* next = nullptr;  ///< the next nearest, where it is no more than one change farther
  /// The comparison with `product`, where finding it has made one already.
  std::shared_ptr<const tested::FormulaComparison> compared;
  std::vector<std::string> assumed;  ///< forms taken for granted
  std::string unknown_follows;       ///< `follows:` names no product: what it says

  /// A tested process that the card names, or the only one that fits.
  [[nodiscard]] bool sure() const { return product != nullptr && (by == By::follows || !doubtful); }
};

/// What the jar holds, taken together.
enum class JarClass { unknown, acid, acidified, low_acid, sugar_preserve, fermented };

struct Reading {
  const recipe::Recipe* recipe = nullptr;
  const recipe::Kitchen* kitchen = nullptr;  ///< may be null
  std::optional<recipe::Date> today;
  std::vector<Ingredient> ingredients;
  Keep keep = Keep::shelf;
  Position keep_at;
  /// A process that the user asked to compare with (`--against`); it wins over the card's `follows:`.
  std::string_view against;
  Match match;
  /// The card's amounts beside the matched formula's; nullptr where nothing matches or it has no formula.
  std::shared_ptr<const tested::FormulaComparison> compared;
  JarClass jar_class = JarClass::unknown;  ///< the product's when matched without doubt, else from the foods
  bool low_acid_food = false;              ///< some food in the jar is low-acid
  bool acid_added = false;                 ///< vinegar, bottled juice or citric acid in a plausible share
  bool infant = false;                     ///< meant for a baby
  std::vector<JarProcess> jars;            ///< at least one, even when the card names no jar
  std::vector<CannerAtHand> canners;       ///< of the kitchen, in its order
  AltitudeUse altitude;
  Sentences title;
  std::vector<StepText> steps;
  const tested::Tables* tables = nullptr;
  const foods::Catalogue* catalogue = nullptr;
  const MatchIndex* match_index = nullptr;  ///< knowledge's, for match()

  [[nodiscard]] bool processed() const { return recipe != nullptr && !recipe->processes.empty(); }
};

}  // namespace sealworthy::reading
