#pragma once

/// A card from its text to its reading, with the rules that are compiled in.

#include <memory>
#include <string_view>

#include "knowledge/knowledge.hpp"
#include "reading/build.hpp"
#include "recipe/recipe.hpp"
#include "yaml/document.hpp"

namespace sealworthy::reading {

/// Keeps what the reading points into.
struct ReadCard {
  std::unique_ptr<recipe::Recipe> recipe;
  Reading reading;
  Reading* operator->() { return &reading; }
};

inline ReadCard read_card_text(std::string_view text, const Settings& settings = {}) {
  const auto documents = yaml::read_documents(text);
  auto read = recipe::read_card(std::get<yaml::Document>(documents.at(0)));
  ReadCard card;
  card.recipe = std::make_unique<recipe::Recipe>(std::get<recipe::Recipe>(std::move(read)));
  card.reading = build(*card.recipe, settings, knowledge::Knowledge::builtin());
  return card;
}

}  // namespace sealworthy::reading
