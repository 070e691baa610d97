#pragma once

/// The rules compiled in, with the errors in them, and fresh documents of them.

#include <algorithm>
#include <initializer_list>
#include <memory>
#include <string_view>
#include <vector>

#include "knowledge/embedded.hpp"
#include "knowledge/knowledge.hpp"
#include "tested/lookup_words.hpp"
#include "tested/tables.hpp"

namespace sealworthy {

struct RulesAtHand {
  std::shared_ptr<const knowledge::Knowledge> knowledge;
  std::vector<foods::LoadError> errors;

  [[nodiscard]] const foods::Catalogue& catalogue() const { return knowledge->catalogue; }
  [[nodiscard]] const tested::Tables& tables() const { return knowledge->tables; }
  [[nodiscard]] tested::LookupRules for_lookup() const {
    return {knowledge->catalogue, knowledge->tables, knowledge->methods, knowledge->match_index};
  }
};

/// Calls `take(file, document)` for every document compiled in that has one of the keys at its top.
template <class Take>
void each_document(std::initializer_list<std::string_view> keys, Take&& take) {
  static const auto embedded = yaml::unpack(embedded_rules());
  if (!embedded) return;
  for (const auto& named : *embedded) {
    const auto& root = named.second.root();
    const auto has = [&](std::string_view key) { return root.find(key) != nullptr; };
    if (std::any_of(keys.begin(), keys.end(), has)) take(named.first, named.second);
  }
}

inline const RulesAtHand& rules_at_hand() {
  static const RulesAtHand rules = [] {
    RulesAtHand at_hand;
    std::vector<knowledge::NamedDocument> documents;
    if (const auto embedded = yaml::unpack(embedded_rules()))
      for (const auto& [file, document] : *embedded) documents.push_back({file, document});
    at_hand.knowledge = knowledge::Knowledge::build(documents, at_hand.errors);
    return at_hand;
  }();
  return rules;
}

}  // namespace sealworthy
