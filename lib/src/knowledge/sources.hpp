#pragma once

/// Publications that rules and tables rest on (rules/sources.yaml).

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "yaml/document.hpp"

namespace sealworthy::knowledge {

class Sources {
 public:
  /// Takes one document with `sources:`, a map from a key to {name, publisher, year, ...}; `name` is how
  /// findings cite it ("USDA Complete Guide (2015)").
  void load(std::string_view file, const yaml::Document& document, std::vector<foods::LoadError>& errors);

  /// "USDA Complete Guide (2015), Guide 4, page 4-9" of a node {key:, section:, page:}, or of a publication
  /// used once, {title:, publisher:, year:, section:}. An error, and an empty text, where the key is unknown.
  [[nodiscard]] std::string cite(const yaml::Node& source, std::string_view file,
                                 std::vector<foods::LoadError>& errors) const;

  /// How the publication of a key is cited; nullptr: no such key.
  [[nodiscard]] const std::string* name(std::string_view key) const;

 private:
  std::map<std::string, std::string, std::less<>> names_;
};

}  // namespace sealworthy::knowledge
