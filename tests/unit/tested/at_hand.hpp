#pragma once

/// The rules compiled in, and fresh tables for a text of one's own.

#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <vector>

#include "rules_at_hand.hpp"

namespace sealworthy::tested {

inline const Tables& tables() { return rules_at_hand().tables(); }

inline const Product& product(std::string_view id) {
  const auto* found = tables().find(id);
  REQUIRE_MESSAGE(found != nullptr, id);
  return *found;
}

inline JarIndex jar(std::string_view words) {
  const auto read = quantity::read_jar(words);
  REQUIRE_MESSAGE(std::holds_alternative<quantity::JarText>(read), words);
  const auto size = tables().jar_size(std::get<quantity::JarText>(read));
  REQUIRE_MESSAGE(size.has_value(), words);
  return *size;
}

/// Tables that hold the products of a text, beside the real sources, jars and altitudes.
struct Loaded {
  Tables tables;
  std::vector<foods::LoadError> errors;
};

inline Loaded load(std::string_view text) {
  Loaded loaded;
  const auto take = [&](auto file, const auto& document) {
    loaded.tables.load(file, document, rules_at_hand().catalogue(), loaded.errors);
  };
  each_document({"sources"}, take);
  each_document({"jars", "bands"}, take);
  REQUIRE(loaded.errors.empty());
  for (const auto& read : yaml::read_documents(text)) {
    REQUIRE(std::holds_alternative<yaml::Document>(read));
    loaded.tables.load("house.yaml", std::get<yaml::Document>(read), rules_at_hand().catalogue(),
                       loaded.errors);
  }
  loaded.tables.finish(rules_at_hand().catalogue(), loaded.errors);
  return loaded;
}

}  // namespace sealworthy::tested
