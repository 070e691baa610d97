#pragma once

/// Foods, tables and methods as they are compiled in, without the rest of the knowledge.

#include <algorithm>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "knowledge/embedded.hpp"
#include "reading/methods.hpp"
#include "tested/lookup_words.hpp"
#include "tested/tables.hpp"

namespace sealworthy {

struct RulesAtHand {
  foods::Catalogue catalogue;
  tested::Tables tables;
  reading::Methods methods;
  std::vector<foods::LoadError> errors;

  [[nodiscard]] tested::LookupRules for_lookup() const { return {catalogue, tables, methods}; }
};

/// Calls `take(file, document)` for every document compiled in that has one of the keys at its top.
template <class Take>
void each_document(std::initializer_list<std::string_view> keys, Take&& take) {
  static const auto embedded = yaml::unpack(embedded_rules());
  if (!embedded) return;
  for (const auto& [file, document] : *embedded)
    if (std::any_of(keys.begin(), keys.end(),
                    [&](std::string_view key) { return document.root().find(key) != nullptr; }))
      take(file, document);
}

inline const RulesAtHand& rules_at_hand() {
  static const RulesAtHand rules = [] {
    RulesAtHand at_hand;
    const auto into_catalogue = [&](auto file, const auto& document) {
      at_hand.catalogue.load(file, document, at_hand.errors);
    };
    const auto into_tables = [&](auto file, const auto& document) {
      at_hand.tables.load(file, document, at_hand.catalogue, at_hand.errors);
    };
    each_document({"foods", "states", "line-words", "food-sources", "food-cautions"}, into_catalogue);
    at_hand.catalogue.finish(at_hand.errors);
    each_document({"sources"}, into_tables);
    each_document({"jars", "bands"}, into_tables);
    each_document({"products"}, into_tables);
    at_hand.tables.finish(at_hand.catalogue, at_hand.errors);
    each_document({"methods"}, [&](auto file, const auto& document) {
      at_hand.methods.load(file, document, at_hand.errors);
    });
    return at_hand;
  }();
  return rules;
}

}  // namespace sealworthy
