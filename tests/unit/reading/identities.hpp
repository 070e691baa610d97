#pragma once

// tests/data/identities.yaml: cards as cooks write them, and published lines as cooks put them.

#include <algorithm>
#include <array>
#include <fstream>
#include <span>
#include <sstream>

#include "read_card.hpp"

namespace cards {

inline const yaml::Document& identities() {
  static const auto document = [] {
    std::ifstream file(SEALWORTHY_SOURCE_DIR "/tests/data/identities.yaml");
    std::stringstream text;
    text << file.rdbuf();
    static const std::string kept = text.str();
    return std::get<yaml::Document>(yaml::read_documents(kept).front());
  }();
  return document;
}

inline std::span<const yaml::Node> list(std::string_view key) { return identities().root().find(key)->items; }

/// The published lines as a cook puts them.
inline std::vector<std::string> lines_of(const tested::Formula& formula) {
  std::vector<std::string> out;
  for (const auto& line : formula.lines) {
    const auto phrasing = list("phrasing");
    const auto found = std::find_if(phrasing.begin(), phrasing.end(), [&](const yaml::Node& node) {
      return node.find("published")->text == line.text;
    });
    if (found == phrasing.end())
      out.push_back(line.text);
    else
      for (const auto& text : found->find("card")->items) out.emplace_back(text.text);
  }
  return out;
}

inline std::string_view title_of(const tested::Product& product) {
  for (const auto& node : list("titles"))
    if (node.find("product")->text == product.id) return node.find("title")->text;
  return product.title;
}

/// A card of the test data: a map with some keys that are not a card's own.
inline std::unique_ptr<Card> read_node(const yaml::Node& node) {
  static constexpr std::array own{"products", "nearest"};
  auto entries = std::make_shared<std::vector<yaml::Entry>>();
  for (const auto& entry : node.entries)
    if (std::find(own.begin(), own.end(), entry.key) == own.end()) entries->push_back(entry);
  auto root = std::make_shared<yaml::Node>(node);
  root->entries = *entries;
  const auto arena = std::make_shared<std::pair<decltype(entries), decltype(root)>>(entries, root);
  return read(yaml::Document(arena, root.get(), 1));
}

}  // namespace cards
