#pragma once

/// Examples of rules as cards: a base card of rules/practice/bases.yaml with a sentence put into its steps or
/// with keys replaced. Or a page in plain text
/// under the one key `page:`. Two keys of an example are not the card's: `kitchen:` (a kitchen file) and
/// `today:` (a date).

#include <optional>
#include <sealworthy/checker.hpp>
#include <string>
#include <vector>

#include "checks/rule.hpp"
#include "yaml/document.hpp"

namespace sealworthy::test {

struct ExampleCard {
  std::string card;  ///< YAML text, or the text of a page
  std::string path = "example.yaml";
  CheckOptions options;
};

/// nullopt: the base is not there, or the example's kitchen can't be read.
std::optional<ExampleCard> make_card(const checks::Example& example, const std::vector<yaml::Node>& bases);

/// A base card as it stands.
std::string base_card(const yaml::Node& base);

}  // namespace sealworthy::test
