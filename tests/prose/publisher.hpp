#pragma once

/// Invented recipes, each written in every form in which people publish them: what tests of pages compare.

#include <cstdint>
#include <string>
#include <vector>

#include "yaml/document.hpp"

namespace sealworthy::prose_test {

/// A recipe with what its directions state in words.
struct Invented {
  std::string title;
  std::vector<std::string> ingredients;  ///< as a page lists them
  std::vector<std::string> directions;   ///< a step each
  std::string card;                      ///< the same as a YAML card
  double minutes = 0;
  double headspace_inches = 0;
  std::vector<std::string> jars;
};

/// From base cards: each in other words and with other figures, the same for the same seed.
std::vector<Invented> invent(const std::vector<yaml::Node>& bases, std::uint32_t seed, int variants);

struct Published {
  std::string path;  ///< its ending tells the form
  std::string text;
};
/// Markdown, JSON-LD, HTML, plain text, NDJSON, HTML without schema.org, and a card with nothing but steps;
/// the card comes first.
std::vector<Published> publish(const Invented& recipe, std::uint32_t seed);

}  // namespace sealworthy::prose_test
