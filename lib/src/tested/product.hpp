#pragma once

/// Tested processes and formulas as rules/processes holds them.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <sealworthy/finding.hpp>
#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "quantity/amount.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy::tested {

struct Change;

/// acid: fruit as it is. acidified: safe by the acid of its formula or of each jar. sugar_preserve: jam and
/// jelly.
enum class ProductClass { acid, acidified, low_acid, fermented, sugar_preserve };
std::string_view to_string(ProductClass) noexcept;

/// The three kinds of table that the publications print.
enum class TableMethod { boiling_water, pressure_dial, pressure_weighted };
std::string_view to_string(TableMethod) noexcept;

/// A jar size that tables name: index into Tables::jars(), smallest first.
using JarIndex = int;

/// An altitude band; the upper figure belongs to the band. An open band ends at +infinity.
struct Band {
  Altitude from;
  Altitude to;
};

/// One choice that a table gives: the time and, in pressure tables, the pressure of each altitude band.
struct Option {
  struct Step {
    Band band;
    Duration time;                          ///< the same in every step of a pressure option
    std::optional<GaugePressure> pressure;  ///< of a pressure table
    bool not_recommended = false;           ///< the source rules this option out in this band
    Read read = Read::reprint;              ///< a row may have bands that were read and bands from memory
  };
  std::vector<Step> steps;  ///< ascending from the lowest band up, without gaps
  /// The step for an altitude; nullptr above the highest band. Below the lowest band the lowest one holds.
  /// How far up an open band may be trusted is not its business: Tables::needed sees to that.
  [[nodiscard]] const Step* at(Altitude altitude) const;
};

struct Row {
  TableMethod method = TableMethod::boiling_water;
  bool hot = false;  ///< packs that the row holds for; both false: the source does not say
  bool raw = false;
  JarIndex jar = 0;
  std::string applies_to;  ///< a part of the product ("soup with any seafood"), else ""
  /// Foods (ids, "kind:fish", "tag:leafy") any of which makes a card that part; empty: the part for all
  /// others.
  std::vector<std::string> applies_if;
  std::vector<Option> options;
  std::string source;  ///< "USDA Complete Guide (2015), Guide 4, page 4-9"
};

/// Acid that goes into each jar: any one of the choices is enough.
struct AcidPerJar {
  JarIndex jar = 0;
  struct Choice {
    std::string food;                        ///< catalogue id
    quantity::Amount amount;                 ///< at least
    std::optional<double> strength_percent;  ///< of a vinegar
  };
  std::vector<Choice> one_of;
};

/// Headspace, possibly by pack and jar; unset: for all.
struct HeadspaceRule {
  Interval<Headspace> inches;
  std::optional<recipe::Pack> pack;
  std::optional<JarIndex> jar;
  std::string part;  ///< "small beans", "solids", "liquid" or ""
};

/// One line of a tested formula.
struct FormulaLine {
  std::vector<std::string> foods;         ///< catalogue ids; several: any of them (or a mix, see any_mix)
  std::vector<const foods::Food*> named;  ///< those foods; filled by Tables::finish
  std::string text;                       ///< for people: "6 lb pickling cucumbers, sliced"
  std::string what;                       ///< the same without the amount: "pickling cucumbers, sliced"
  std::vector<quantity::Amount>
      amounts;       ///< alternatives that the source prints ("14 heads or 4 1/2 tbsp seed")
  std::string role;  ///< acid | low-acid | sugar | salt | pectin | fat | starch | flavor | ""
  std::vector<std::string> states;
  std::optional<double> strength_percent;
  bool any_mix = false;  ///< any mix of `foods` up to the amount
  bool at_most = false;
  bool optional = false;
  bool not_eaten = false;              ///< soak water, a bag taken out
  bool per_jar = false;                ///< "1 tsp per quart"
  std::optional<JarIndex> per_jar_of;  ///< that quart; unset: whatever jar is filled
  /// "sauce", "canning syrup": lines of a part keep their proportion among themselves; how much of the part
  /// goes with the rest is not printed. "" for the formula as a whole.
  std::string part;
};

/// Lines of a formula, one bit each; formulas are shorter than 64 lines.
using Lines = std::uint64_t;
constexpr Lines line_bit(std::size_t line) { return line < 64 ? Lines{1} << line : 0; }

/// What kind of line a line is.
struct LineFacts {
  Lines water = 0;
  Lines flavor = 0;  ///< nothing but dry spice, herb, food color
  Lines not_eaten = 0;
  bool acid = false;  ///< the formula rests on an acid, which water would thin
};

struct Formula {
  std::string name;  ///< which of several versions: "1 quart", "molasses sauce"; else ""
  std::string yields;
  Read read = Read::reprint;
  std::vector<FormulaLine> lines;
  std::vector<std::string> allowed;    ///< changes that a publication allows, in words
  std::vector<std::string> forbidden;  ///< changes that it forbids, in words
  std::vector<std::string> may;        ///< ids of rules/changes.yaml that its own list allows
  std::vector<std::string> may_not;    ///< ids of general ones that its own list rules out
  LineFacts facts;                     ///< filled by Tables::finish
};

/// How a card is recognised as this product; authored beside each product in rules/processes.
/// Foods are catalogue ids (kinds and forms of them are meant too, as far as they are no worse), or
/// "kind:fish", "tag:leafy". A formula's own lines tell its foods; the lists here only add to them. Forms are
/// those of rules/forms.yaml.
struct Identity {
  std::vector<std::string> all_of;  ///< must be there
  std::vector<std::string> any_of;  ///< at least `at_least` different ones of these must be there
  int at_least = 1;
  std::vector<std::string> may;  ///< further foods that may be there beside salt, water and those of any_of
  std::vector<std::string> form_any;   ///< one of these must be said: "juice", "crushed"
  std::vector<std::string> form_none;  ///< these rule it out: "pureed", "cream-style"
  std::vector<std::string> form_may;   ///< further forms that it covers beside those of its title and styles
  std::vector<std::string> names;      ///< title words that name it outright: "choice salsa"
  std::string asks;  ///< the form that cards leave unsaid, as a clause: "whether the meat is on the bone"
};

/// The size over which a form of the food ("cubed", "whole") heats too slowly.
struct PieceLimit {
  std::string form;  ///< "": every form
  PieceSize size;
};

struct Product {
  std::string id;
  std::string title;
  std::string publication;  ///< key of rules/sources.yaml
  std::string source;       ///< "USDA Complete Guide (2015), Guide 4, page 4-9"
  Read read = Read::reprint;
  ProductClass acid_class = ProductClass::low_acid;
  std::vector<std::string> foods;   ///< catalogue ids
  std::vector<std::string> styles;  ///< in words
  /// How much of the food fills a canner: "7 quarts" -> "14 lb".
  std::vector<std::pair<std::string, std::string>> canner_load;
  std::vector<HeadspaceRule> headspace;
  std::vector<AcidPerJar> acid_per_jar;
  std::vector<Row> rows;
  std::optional<Formula> formula;
  /// Changes that do no harm to the formula: those that it names, then those of its class.
  std::vector<const Change*> changes;
  std::vector<Formula> versions;  ///< further versions of the formula: another batch size, another sauce
  Identity identity;
  std::vector<JarIndex> jars_allowed;      ///< where the source lists them, else empty
  std::optional<PieceSize> largest_piece;  ///< the largest of piece_limits: over it no form is covered
  std::vector<PieceLimit> piece_limits;
  std::vector<std::string> assumed;   ///< ordinary preparation taken for granted: "peeled", "cored"
  std::vector<std::string> required;  ///< soak, boil, ferment ... that the process asks for, in words
  std::string covering;               ///< "water", "water, juice or syrup", "none", "" (not said)
  bool low_temperature_pasteurization = false;
  bool sterile_jars_under_10_minutes = false;
  Duration sterile_jars_under;     ///< the time below which the empty jars are boiled first; 0: never
  bool kept_cold = false;          ///< a refrigerator product: no process for the shelf
  bool no_tested_process = false;  ///< bodies disagree: never `tested`
  std::string why_no_process;      ///< of no_tested_process, in words
  std::string same_process_as;     ///< id of the product whose table this one borrows, else ""
  std::string jar_kind;            ///< "straight-sided, wide-mouth" where the source asks for it, else ""
  std::string canner;              ///< "16 to 22 quarts" where the source asks for a size, else ""
  std::vector<std::string> notes;
};

}  // namespace sealworthy::tested
