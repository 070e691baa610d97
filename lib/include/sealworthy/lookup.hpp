#pragma once

/// Looking up tested processes: what the published tables ask for a food, in a jar, at an altitude.
///
///   const auto found = sealworthy::lookup(checker, {.words = "snap beans", .jar = "pint",
///                                                   .altitude = sealworthy::feet(5280)});
///   if (const auto* result = std::get_if<sealworthy::LookupResult>(&found))
///     for (const auto& answer : result->answers) ...
///
/// An answer is one row of a published table, read for one jar, pack and altitude band. Without an altitude
/// every band is an answer of its own, so that nobody takes the lowest one for theirs. Nothing is computed or
/// guessed: what no publication covers is left out, and said.
/// Cost: about a millisecond. Throws nothing but std::bad_alloc.

#include <optional>
#include <sealworthy/checker.hpp>
#include <sealworthy/finding.hpp>
#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <string>
#include <variant>
#include <vector>

namespace sealworthy {

struct LookupQuery {
  /// A product id, a title, a food and its form, in any order and number: "green beans", "tomatoes crushed",
  /// "strawberry jam", "kraut". A jar size, "hot pack" and "raw pack" may stand among them.
  std::string words = {};
  std::string jar = {};   ///< as a card says it: "pint", "12-oz", "500 ml"; empty: every size tabled
  std::string pack = {};  ///< "hot" or "raw"; empty: both
  std::string method =
      {};  ///< trade words: "water bath", "weighted-gauge pressure canner"; empty: every method
  std::optional<Altitude> altitude = {};
  /// Its altitude counts where none is given above; its canners limit the methods.
  std::optional<Kitchen> kitchen = {};
};

struct LookupAnswer {
  std::string id;           ///< of the product; goes into a card as `follows:`
  std::string title;        ///< "Beans, snap and Italian, pieces (green and wax)"
  std::string applies_to;   ///< the part of the product that the row is for: "soup with any seafood", else ""
  std::string method;       ///< "boiling-water", "pressure-dial" or "pressure-weighted"
  std::string pack;         ///< "hot", "raw", or "" where the source does not say
  std::string jar;          ///< the size asked for, else the row's
  std::string row_jar;      ///< the size whose time it is: `jar`, or the next larger one tabled
  Interval<Altitude> band;  ///< where the figures hold; high is infinite for a band without an upper end
  int minutes = 0;          ///< of processing, once the canner is at pressure or the water boils
  std::optional<int> psi;   ///< on the gauge; none for boiling water
  /// Of the water or steam around the jars, at the altitude asked for. It explains the figures, no more.
  std::optional<Temperature> temperature;
  Interval<double> headspace_in{0, 0};    ///< inches; the hull where solids and liquid differ
  std::string headspace;                  ///< in words: "solids 1 1/4 inches, liquid 1/2 inch"
  std::vector<std::string> acid_per_jar;  ///< any one of them: "2 tablespoons bottled lemon juice"
  std::string source;                     ///< "USDA Complete Guide (2015), Guide 4, page 4-9"
  Read read = Read::reprint;              ///< how this row was read
  bool steam = false;                     ///< an atmospheric steam canner may be used for it instead
  std::vector<std::string> notes;         ///< sentences for a cook: whose time it is, what rests on memory
};

/// A product that the words name, with what the answers have in common.
struct LookupProduct {
  std::string id;
  std::string title;
  std::string acid_class;  ///< "acid", "acidified", "low-acid", "fermented" or "sugar-preserve"
  std::string source;
  Read read = Read::reprint;
  std::vector<std::string> preparation;  ///< assumed and required steps, in words
  std::vector<std::string> canner_load;  ///< "14 lb for 7 quarts"
  std::string covering;                  ///< the liquid over the food, or ""
  std::string yields;                    ///< of the formula, or ""
  std::vector<std::string> formula;      ///< its lines, in words; empty: a food on its own
  std::vector<std::string> left_out;     ///< sentences: why a row, or all of them, is not an answer
  std::vector<std::string> notes;
};

struct LookupResult {
  std::optional<Altitude> altitude;  ///< what the answers were worked out for
  std::optional<Temperature>
      boiling_point;      ///< of water there; none where the altitude is beyond the tables of air
  std::string corrected;  ///< the words used, where slips were put right or words left out; else ""
  /// Words that no tested process fits and that were left out: "stew" of "beef stew". What is found is then
  /// not for what was asked; say so.
  std::string not_understood;
  /// Best match first; those without an answer come last, with the reason.
  std::vector<LookupProduct> products;
  std::vector<LookupAnswer> answers;  ///< in the order of `products`
};

/// An error for words, a jar, a pack or a method that mean nothing, with a suggestion.
std::variant<LookupResult, InputError> lookup(const Checker& checker, const LookupQuery& query);

}  // namespace sealworthy
