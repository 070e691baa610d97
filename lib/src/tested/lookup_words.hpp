#pragma once

/// What a look-up asks for, and how its answers are put in words.

#include <sealworthy/lookup.hpp>
#include <string>
#include <variant>

#include "foods/catalogue.hpp"
#include "reading/match.hpp"
#include "reading/methods.hpp"
#include "tested/tables.hpp"

namespace sealworthy::tested {

/// What a look-up is made in.
struct LookupRules {
  const foods::Catalogue& catalogue;
  const Tables& tables;
  const reading::Methods& methods;
  const reading::MatchIndex& match_index;
};

/// A query, understood.
struct LookupWords {
  std::string words;  ///< what is left to name a product
  std::optional<JarIndex> jar;
  std::optional<recipe::Pack> pack;
  std::optional<Altitude> altitude;
  unsigned methods = 7;     ///< bits of TableMethod
  bool only_steam = false;  ///< a steam canner is asked for, or the only one at hand for boiling water
  std::string method_name;  ///< "a steam canner", for messages; "" where none is asked for

  [[nodiscard]] bool allows(TableMethod method) const {
    return (methods >> static_cast<unsigned>(method) & 1U) != 0;
  }
};

std::variant<LookupWords, InputError> read_query(const LookupQuery& query, const LookupRules& rules);

/// sealworthy::lookup for who holds the rules.
std::variant<LookupResult, InputError> lookup(const LookupRules& rules, const LookupQuery& query);

/// What the answers of a product have in common.
LookupProduct describe(const Product& product);
/// The headspace for a pack ("hot", "raw" or "") and a jar, as an interval and in words.
void set_headspace(const Product& product, std::string_view pack, JarIndex jar, LookupAnswer& answer);
/// The choices of acid for a jar: its own amounts, else those of the next larger jar that is told.
std::vector<std::string> acid_words(const Product& product, const Tables& tables,
                                    const foods::Catalogue& catalogue, JarIndex jar);
/// "at 0 to 1,000 ft", "above 6,000 ft".
std::string band_words(const Band& band);
/// "dial gauge", "weighted gauge", "boiling-water canner".
std::string gauge_name(TableMethod method);

}  // namespace sealworthy::tested
