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

namespace sealworthy::checks {
struct ErrorSink;
}

namespace sealworthy::tested {

struct LoadContext;

/// A jar size of rules/jars.yaml.
struct JarSize {
  std::string id;      ///< "pint"
  std::string name;    ///< for messages: "pint", "12-oz jar"
  std::string plural;  ///< "pints", "12-oz jars"
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

/// What an extension body prints above the tables: told in a notice, never counted as the tested process.
struct AdviceAbove {
  TableMethod method = TableMethod::boiling_water;
  Band band;
  std::optional<GaugePressure> at_lowest;  ///< for pressure tables that begin at this pressure ...
  std::optional<GaugePressure> pressure;   ///< ... so much in this band
  Duration added;                          ///< to the time of the highest band printed (boiling water)
  std::string body;                        ///< "Utah State University Extension"
  std::string source;
  Read read = Read::reprint;
};

/// Atmospheric steam: the boiling-water row of a product of these classes, if it is not too long.
struct SteamRule {
  Duration longest;  ///< altitude included
  std::vector<ProductClass> classes;
  std::string source;
  Read read = Read::reprint;
};

class Tables {
 public:
  Tables();
  /// Takes one document of rules/: a file of rules/processes, jars.yaml, altitude.yaml or sources.yaml.
  void load(std::string_view file, const yaml::Document& document, const foods::Catalogue& catalogue,
            std::vector<foods::LoadError>& errors);
  /// Once after the last load: borrowed processes, indices, cross-references.
  void finish(const foods::Catalogue& catalogue, std::vector<foods::LoadError>& errors);

  [[nodiscard]] std::span<const Product> products() const;
  [[nodiscard]] const Product* find(std::string_view id) const;
  [[nodiscard]] std::optional<std::string_view> nearest_id(std::string_view id) const;
  /// The products whose foods have this catalogue id, in the order loaded.
  [[nodiscard]] std::span<const Product* const> with_food(std::string_view food) const;
  [[nodiscard]] std::span<const JarSize> jars() const;
  /// The tabled size that a jar counts as; nullopt: larger than all, or of no known kind. An imperial pint
  /// (568 mL) counts as the next larger size; metric 250 mL, 500 mL and 1 L count as half-pint, pint and
  /// quart.
  [[nodiscard]] std::optional<JarIndex> jar_size(const quantity::JarText& jar) const;
  /// Up to where an open band ("above 6,000 ft") is taken to hold.
  [[nodiscard]] Altitude highest_open() const;
  /// The extension body's step for a table of this method at an altitude; nullptr: none known.
  [[nodiscard]] const AdviceAbove* advice(const Option& option, TableMethod method, Altitude altitude) const;
  [[nodiscard]] const SteamRule& steam() const;

  /// The table's choices for a jar: its own rows, else those of the size it counts as, else of the next
  /// larger size tabled, never of a smaller one. Empty when the jar is larger than all tabled or the method
  /// or pack has no row. `pack` unset: rows of every pack; rows whose source names no pack hold for both.
  /// Above highest_open() no step is given. Cost: one pass over the product's rows; allocates the result
  /// only.
  [[nodiscard]] std::vector<Needed> needed(const Product& product, TableMethod method,
                                           std::optional<recipe::Pack> pack, JarIndex jar, Altitude altitude,
                                           std::string_view applies_to = {}) const;

 private:
  struct Impl;
  static LoadContext context_of(const Impl& impl, const checks::ErrorSink& sink,
                                const foods::Catalogue& catalogue);
  void find_changes(std::vector<foods::LoadError>& errors);

  std::shared_ptr<Impl> impl_;
};

}  // namespace sealworthy::tested
