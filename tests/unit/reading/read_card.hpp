#pragma once

// A reading of a card as far as matching asks: foods, forms, jars with their process, steps.

#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "knowledge/knowledge.hpp"
#include "reading/match.hpp"
#include "recipe/recipe.hpp"
#include "yaml/document.hpp"

namespace cards {

using namespace sealworthy;

inline const knowledge::Knowledge& known() {
  static const auto knowledge = knowledge::Knowledge::builtin();
  return *knowledge;
}

/// The card and what it means; not movable, since the reading points into the recipe.
struct Card {
  recipe::Recipe recipe;
  reading::Reading reading;
  Card() = default;
  Card(const Card&) = delete;
  Card& operator=(const Card&) = delete;
};

inline void read_ingredients(Card& card) {
  for (const auto& line : card.recipe.ingredients) {
    reading::Ingredient one{&line, known().catalogue.read_line(line.text, card.recipe.units), nullptr};
    one.read.per_jar = one.read.per_jar || line.per_jar;
    if (line.per_jar_of) one.read.per_jar_of = line.per_jar_of->value;
    if (!one.read.foods.empty()) one.food = one.read.foods.front().food;
    card.reading.ingredients.push_back(std::move(one));
  }
}

inline void read_jars(Card& card) {
  const auto& process = card.recipe.processes;
  const auto add = [&](const quantity::JarText* jar) {
    reading::JarProcess one;
    one.jar = jar;
    if (jar != nullptr) one.size = known().tables.jar_size(*jar);
    if (!process.empty()) {
      one.process = &process.front();
      if (one.process->gauge) one.gauge = one.process->gauge->value;
      if (one.process->method)
        if (const auto* word = known().methods.find(one.process->method->value)) one.method = word->kind;
    }
    card.reading.jars.push_back(std::move(one));
  };
  for (const auto& jar : card.recipe.jars) add(&jar.value);
  if (card.recipe.jars.empty()) add(nullptr);
}

inline std::unique_ptr<Card> read(const yaml::Document& document) {
  auto card = std::make_unique<Card>();
  auto read = recipe::read_card(document);
  if (const auto* error = std::get_if<yaml::Error>(&read))
    throw std::runtime_error(error->message + " " + error->suggestion);
  card->recipe = std::move(std::get<recipe::Recipe>(read));
  auto& reading = card->reading;
  reading.recipe = &card->recipe;
  reading.tables = &known().tables;
  reading.catalogue = &known().catalogue;
  reading.match_index = &known().match_index;
  reading.title = reading::Sentences(card->recipe.title.value);
  for (const auto& step : card->recipe.steps)
    reading.steps.push_back({step.at, step.value, reading::Sentences(step.value)});
  read_ingredients(*card);
  read_jars(*card);
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
