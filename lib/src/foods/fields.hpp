#pragma once

/// Reading the maps of rules/foods: each wrong key or value becomes an error with its place, and the rest of
/// the document is still read.

#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "yaml/document.hpp"

namespace sealworthy::foods {

struct Fields {
  std::string_view file;
  std::vector<LoadError>& errors;

  void error(Position at, std::string message, std::string suggestion = {});
  /// False, with an error, if the node is no map; an error for each key that is not known, with the nearest.
  bool known_keys(const yaml::Node& node, std::span<const std::string_view> keys);
  /// The items of a sequence; an error and none if it is none.
  std::span<const yaml::Node> items(const yaml::Node& node);
  /// A required text; an error and "" if it is missing.
  std::string_view text(const yaml::Node& map, std::string_view key);
  /// A text that may be missing.
  std::string_view text_or(const yaml::Node& map, std::string_view key);
  /// The scalars of a list under a key; none if the key is missing.
  std::span<const yaml::Node> list(const yaml::Node& map, std::string_view key);
  std::optional<double> number(const yaml::Node& map, std::string_view key);
  bool flag(const yaml::Node& map, std::string_view key);
};

}  // namespace sealworthy::foods
