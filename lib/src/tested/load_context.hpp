#pragma once

/// What the readers of one file of rules/processes share.

#include <array>
#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "checks/fields.hpp"
#include "tested/altitude_rules.hpp"
#include "tested/sizes.hpp"

namespace sealworthy::tested {

/// Checks of a table that a product may break because its source does, named under `as-printed:`.
enum class Printed { bands, times, jar_times, gauge_times, headspace };
inline constexpr std::array<std::string_view, 5> printed_names{"bands", "times", "jar-times", "gauge-times",
                                                               "headspace"};

// The words of choices; vectors, as Fields takes them, made once.
inline const std::vector<std::string_view> class_words{"acid", "acidified", "low-acid", "fermented",
                                                       "sugar-preserve"};
inline const std::vector<std::string_view> method_words{"boiling-water", "pressure-dial",
                                                        "pressure-weighted"};
inline const std::vector<std::string_view> pack_words{"hot", "raw"};

struct LoadContext {
  checks::ErrorSink sink;
  const foods::Catalogue& catalogue;
  const Sizes& sizes;
  const TableForm& form;
  const knowledge::Sources& sources;
  std::map<std::string_view, std::vector<std::string>> groups;  ///< `food-groups:` of the file
  std::string publication;                                      ///< of the file ...
  std::string section;                                          ///< ... unless a product has its own

  // Of the product that is being read.
  std::string product;                  ///< its id, for messages
  unsigned printed = 0;                 ///< bits of Printed that it may break ...
  mutable unsigned printed_needed = 0;  ///< ... and those that it does
  /// Amounts read so far: a file holds the same few over and over.
  mutable std::unordered_map<std::string_view, quantity::Amount> amounts;

  /// A figure that breaks a check: an error, unless the product says that it is printed so.
  void wrong(Printed check, Position at, const std::string& message) const;
  /// An error with the product's id before it.
  void add(Position at, const std::string& message, std::string suggestion = {}) const;
  /// Takes up `food-groups:`; nullptr: none.
  void read_groups(const yaml::Node* node);
  /// Catalogue ids at a node, groups spelled out; an id that the catalogue does not know is an error there.
  void read_foods(const yaml::Node& node, std::vector<std::string>& foods) const;
};

}  // namespace sealworthy::tested
