#pragma once

/// All tested processes, the jar sizes and the altitude limits; reading a table for a jar, a pack and an
/// altitude.

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "tested/product.hpp"

namespace sealworthy::tested {

/// A jar size of rules/jars.yaml.
struct JarSize {
  std::string id;    ///< "pint"
  std::string name;  ///< for messages: "pint", "pints"
  Volume volume;
  std::optional<JarIndex> counts_as;  ///< "12-oz" counts as pint where no row of its own is tabled
};

/// What a table says for one jar at one altitude.
struct Needed {
  const Row* row = nullptr;
  const Option* option = nullptr;
  const Option::Step* step = nullptr;  ///< nullptr: the altitude is above the table's highest band
  bool next_larger = false;  ///< the jar is smaller than those tabled: the next larger one's time is used
};

class Tables {
 public:
  /// Takes one document of rules/: a file of rules/processes, jars.yaml, altitude.yaml or sources.yaml.
  void load(std::string_view file, const yaml::Document& document, const foods::Catalogue& catalogue,
            std::vector<foods::LoadError>& errors);
  /// Once after the last load: borrowed processes, indices, cross-references.
  void finish(const foods::Catalogue& catalogue, std::vector<foods::LoadError>& errors);

  [[nodiscard]] std::span<const Product> products() const;
  [[nodiscard]] const Product* find(std::string_view id) const;
  [[nodiscard]] std::optional<std::string_view> nearest_id(std::string_view id) const;
  [[nodiscard]] std::span<const JarSize> jars() const;
  /// The tabled size that a jar counts as; nullopt: larger than all, or of no known kind. An imperial pint
  /// (568 mL) counts as the next larger size; metric 250 mL, 500 mL and 1 L count as half-pint, pint and
  /// quart.
  [[nodiscard]] std::optional<JarIndex> jar_size(const quantity::JarText& jar) const;
  /// Up to where an open band ("above 6,000 ft") is taken to hold.
  [[nodiscard]] Altitude highest_open() const;

  /// The table's choices for a jar: its own rows, else those of the size it counts as, else of the next
  /// larger size tabled, never of a smaller one. Empty when the jar is larger than all tabled or the method
  /// or pack has no row. `pack` unset: rows of every pack.
  [[nodiscard]] std::vector<Needed> needed(const Product& product, TableMethod method,
                                           std::optional<recipe::Pack> pack, JarIndex jar, Altitude altitude,
                                           std::string_view applies_to = {}) const;

 private:
  struct Impl;
  std::shared_ptr<Impl> impl_;
};

}  // namespace sealworthy::tested
