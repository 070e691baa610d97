#pragma once

#include <doctest/doctest.h>

#include <string>
#include <string_view>

#include "yaml/document.hpp"

namespace sealworthy {
inline doctest::String toString(const Position& p) {
  return (std::to_string(p.line) + ":" + std::to_string(p.column)).c_str();
}
}  // namespace sealworthy

namespace sealworthy::yaml {

/// The only document of a text, which must be good.
inline Document good(std::string_view text) {
  auto documents = read_documents(text);
  REQUIRE(documents.size() == 1);
  if (const auto* bad = std::get_if<BadDocument>(&documents.front())) FAIL(bad->error.message);
  return std::get<Document>(documents.front());
}

/// Why the only document of a text is bad.
inline Error bad(std::string_view text, const Limits& limits = {}) {
  auto documents = read_documents(text, limits);
  REQUIRE(documents.size() == 1);
  REQUIRE(std::holds_alternative<BadDocument>(documents.front()));
  return std::get<BadDocument>(documents.front()).error;
}

/// A node as flow YAML with every scalar in quotes: for comparing values at a glance.
inline std::string flow(const Node& node) {
  std::string out;
  if (node.is_null()) return "~";
  if (node.is_scalar()) return "\"" + std::string(node.text) + "\"";
  for (const Node& item : node.items) out += (out.empty() ? "" : ", ") + flow(item);
  if (node.is_sequence()) return "[" + out + "]";
  for (const Entry& e : node.entries)
    out += (out.empty() ? "" : ", ") + std::string(e.key) + ": " + flow(e.value);
  return "{" + out + "}";
}

/// The places of all keys and values, in the order written.
inline std::string places(const Node& node) {
  const auto word = [](Position p) { return std::to_string(p.line) + ":" + std::to_string(p.column) + " "; };
  std::string out = word(node.at);
  for (const Node& item : node.items) out += places(item);
  for (const Entry& e : node.entries) out += word(e.key_at) + places(e.value);
  return out;
}

}  // namespace sealworthy::yaml
