#pragma once

// Cards read with the rules that are compiled in.

#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "knowledge/knowledge.hpp"
#include "reading/build.hpp"
#include "recipe/recipe.hpp"
#include "yaml/document.hpp"

namespace cards {

using namespace sealworthy;

inline const knowledge::Knowledge& known() { return knowledge::Knowledge::builtin(); }

/// The card and what it means; not movable, since the reading points into the recipe.
struct Card {
  recipe::Recipe recipe;
  reading::Reading reading;
  Card() = default;
  Card(const Card&) = delete;
  Card& operator=(const Card&) = delete;
};

inline std::unique_ptr<Card> read(const yaml::Document& document) {
  auto card = std::make_unique<Card>();
  auto read = recipe::read_card(document);
  if (const auto* error = std::get_if<yaml::Error>(&read))
    throw std::runtime_error(error->message + " " + error->suggestion);
  card->recipe = std::move(std::get<recipe::Recipe>(read));
  card->reading = reading::build(card->recipe, {}, known());
  return card;
}

/// The first document of a text.
inline std::unique_ptr<Card> read(std::string_view text) {
  const auto documents = yaml::read_documents(text);
  if (documents.empty() || !std::holds_alternative<yaml::Document>(documents.front()))
    throw std::runtime_error("the test's card is no YAML: " + std::string(text));
  return read(std::get<yaml::Document>(documents.front()));
}

/// A card from a title and ingredient lines.
inline std::unique_ptr<Card> write(std::string_view title, const std::vector<std::string>& lines,
                                   std::string_view more = {}) {
  const auto quoted = [](std::string_view text) {
    std::string out = "\"";
    for (const char c : text) out += c == '"' || c == '\\' ? std::string("\\") + c : std::string(1, c);
    return out + "\"";
  };
  std::string text = "recipe: " + quoted(title) + "\ningredients:\n";
  for (const auto& line : lines) text += "  - " + quoted(line) + "\n";
  text.append(more);
  return read(text);
}

}  // namespace cards
