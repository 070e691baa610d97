#pragma once

/// The catalogue of foods, and reading an ingredient line against it.

#include <memory>
#include <optional>
#include <sealworthy/finding.hpp>
#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/amount.hpp"
#include "yaml/document.hpp"

namespace sealworthy::foods {

/// neutral: sugar, salt, water, spirits, dry herbs and spices, pure starch or pectin.
enum class AcidClass { acid, borderline, low_acid, neutral };

struct Measure {     ///< grams of household measures, from rules/foods
  std::string form;  ///< "raw, sliced"
  std::optional<double> cup_g, tbsp_g, tsp_g;
  /// "medium" -> 182; where pieces of several kinds are counted, the kind behind the size: "small-stalk"
  /// -> 17.
  std::vector<std::pair<std::string, double>> each_g;
  std::vector<std::string> states;  ///< the states that `form` tells
};

/// What a cook should know of a food, with the publication that says so.
struct Caution {
  std::string says;
  std::string source;
  Read read = Read::reprint;
};

struct Food {
  std::string id;
  std::string name;
  std::string kind;  ///< vegetable, fruit, berry, meat, fish, dairy, thickener, spice, acid ...
  AcidClass acid_class = AcidClass::low_acid;
  std::string guide_class;        ///< "acid", "acidified", "none" or ""
  std::vector<std::string> tags;  ///< starchy, dense, dried, oily, leafy, thickening, dairy, tropical ...
  std::optional<Interval<double>> ph;          ///< hull of the natural ranges
  std::optional<double> acid_percent;          ///< usual strength of an acidulant
  std::optional<Interval<double>> acid_range;  ///< strengths met on labels or in law
  /// The food of which it is a kind and for which it may stand ("paste-tomato" -> "tomato"), else "". With
  /// the tag `variety` it differs from the parent in colour or breed only.
  std::string parent;
  std::vector<Measure> measures;
  std::vector<Caution> cautions;

  [[nodiscard]] bool has_tag(std::string_view tag) const;
};

/// One food that a line names. Alternatives ("lime or orange juice") give several readings of one line.
struct Named {
  const Food* food = nullptr;  ///< nullptr: not in the catalogue
  std::string name;            ///< the words taken as the name, as written
  bool slip = false;           ///< recognised through a one-letter slip; `name` is as written
  /// Its own amount where the line gives one ("3 eggs, 1 egg yolk"); empty for the first food of a line.
  std::optional<quantity::Amount> amount;
};

/// What one ingredient line says.
struct LineReading {
  quantity::Amount amount;
  std::vector<quantity::Amount>
      more;  ///< further amounts to be added ("1 cup plus 2 tablespoons" is already summed in
             ///< `amount`; amounts of another dimension land here), e.g. an equal in another unit
  std::vector<Named>
      foods;  ///< one, or the alternatives of an "or"; more than one with `all_of` for "salt and pepper"
  bool all_of = false;
  std::string name;  ///< the whole name as written, alternatives and all: "lime or orange juice"
  std::vector<std::string>
      states;  ///< folded words that matter: peeled, chopped, pureed, cooked, dried, canned, frozen,
               ///< thawed, smoked, bottled, fresh, unpeeled, whole, sliced, diced, ground, strained ...
  std::optional<Interval<PieceSize>> piece;  ///< "cut in 1-inch pieces"
  std::optional<double> strength_percent;    ///< "vinegar (5%)", "5 percent acidity"
  bool optional = false;                     ///< "optional", "if liked", "to taste"
  bool to_taste = false;
  bool not_eaten =
      false;  ///< for soaking, for rinsing, for a spice bag taken out, against browning: not in the jar
  bool per_jar = false;  ///< "... per jar", "in each quart", "to each pint"
  std::optional<quantity::JarText> per_jar_of;
  /// Words that name something the catalogue does not know. A food may stand beside them: of "tomato leather"
  /// it is the tomato, so that a check may raise an alarm; none may clear the line.
  std::vector<std::string> unknown;
  /// Weight of the amount, from densities and piece weights; an interval where a size is missing. nullopt:
  /// not known.
  std::optional<Interval<Mass>> weight;
};

struct LoadError {  ///< a wrong row of rules/, with its file
  std::string file;
  yaml::Error error;
};

class Catalogue {
 public:
  Catalogue();
  ~Catalogue();
  Catalogue(Catalogue&&) noexcept;
  Catalogue& operator=(Catalogue&&) noexcept;

  /// Adds the foods of one document of rules/foods. Errors are appended; good entries stay.
  void load(std::string_view file, const yaml::Document& document, std::vector<LoadError>& errors);
  /// To be called once after the last load; builds the name index. A name given twice is an error.
  void finish(std::vector<LoadError>& errors);

  [[nodiscard]] const Food* find(std::string_view id) const;
  [[nodiscard]] std::span<const Food> all() const;
  /// The food that a whole text names ("green tomatoes", "tomato"), with no amount or state around it.
  [[nodiscard]] const Food* named(std::string_view text) const;
  /// True if `food` is `ancestor` or a kind or form of it, by `parent` links.
  [[nodiscard]] bool is_a(const Food& food, std::string_view ancestor) const;
  [[nodiscard]] bool is_a(const Food& food, const Food& ancestor) const;

  /// Reads an ingredient line. Never throws but for bad_alloc; safe from several threads.
  /// Cost: linear in the line (a trie over words), plus a lookup of slips for words not known.
  [[nodiscard]] LineReading read_line(std::string_view line, quantity::Units units) const;
  /// The same for the spelled-out form.
  [[nodiscard]] LineReading read_parts(std::string_view food, std::string_view amount,
                                       std::span<const std::string_view> states, quantity::Units units) const;
  /// Weight of an amount of a food in a state; nullopt where no density or piece weight is known.
  [[nodiscard]] std::optional<Interval<Mass>> weigh(const quantity::Amount& amount, const Food& food,
                                                    std::span<const std::string> states) const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace sealworthy::foods
