#pragma once

#include <doctest/doctest.h>

#include <string>
#include <string_view>

#include "recipe/kitchen.hpp"
#include "recipe/recipe.hpp"

namespace sealworthy {
inline doctest::String toString(const Position& p) {
  return (std::to_string(p.line) + ":" + std::to_string(p.column)).c_str();
}
}  // namespace sealworthy

namespace sealworthy::recipe {

inline yaml::Document document(std::string_view text) {
  auto documents = yaml::read_documents(text);
  REQUIRE(documents.size() == 1);
  if (const auto* bad = std::get_if<yaml::BadDocument>(&documents.front())) FAIL(bad->error.message);
  return std::get<yaml::Document>(documents.front());
}

inline Recipe card(std::string_view text) {
  auto read = read_card(document(text));
  if (const auto* error = std::get_if<yaml::Error>(&read)) FAIL(error->message << " " << error->suggestion);
  return std::get<Recipe>(std::move(read));
}

inline yaml::Error card_error(std::string_view text) {
  auto read = read_card(document(text));
  REQUIRE(std::holds_alternative<yaml::Error>(read));
  return std::get<yaml::Error>(std::move(read));
}

/// A mistake, where it stands, and words of what is said about it.
struct Mistake {
  std::string text;
  Position at;
  std::string says;
  std::string suggests;
};

inline void check(const Mistake& mistake, const yaml::Error& error) {
  CAPTURE(mistake.text);
  CHECK(error.at == mistake.at);
  CHECK_MESSAGE(error.message.find(mistake.says) != std::string::npos, error.message);
  CHECK_MESSAGE(error.suggestion.find(mistake.suggests) != std::string::npos, error.suggestion);
  CHECK_FALSE(error.suggestion.empty());
}

}  // namespace sealworthy::recipe
