#pragma once

/// Sets of foods as rules name them, and the foods that a tested product lists: one bit a food, so that a
/// card is judged without comparing names.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "checks/fields.hpp"
#include "foods/catalogue.hpp"
#include "reading/reading.hpp"
#include "tested/tables.hpp"

namespace sealworthy::checks {

/// Bits over Catalogue::all(), for as long as the catalogue lives.
class FoodSet {
 public:
  FoodSet() = default;
  explicit FoodSet(const foods::Catalogue& catalogue);

  void add(const foods::Food& food) { bits_[place(food)] = true; }
  void remove(const foods::Food& food) { bits_[place(food)] = false; }
  [[nodiscard]] bool has(const foods::Food& food) const { return !bits_.empty() && bits_[place(food)]; }
  /// True for a set that nobody filled in.
  [[nodiscard]] bool unset() const { return bits_.empty(); }

 private:
  [[nodiscard]] std::size_t place(const foods::Food& food) const {
    return static_cast<std::size_t>(&food - first_);
  }

  const foods::Food* first_ = nullptr;
  std::vector<bool> bits_;
};

/// Makes FoodSets. Cost: one pass over the catalogue, a few tens of microseconds.
class FoodIndex {
 public:
  explicit FoodIndex(const foods::Catalogue& catalogue);

  /// Adds the food of an id with its kinds and forms, or all of "kind:meat" or "tag:dairy". False: nothing is
  /// so called.
  bool add(FoodSet& set, std::string_view selector) const;
  bool remove(FoodSet& set, std::string_view selector) const;
  /// The foods under a key; unset where the key is missing. Names that are no foods are errors.
  FoodSet read_plain(Fields& with, std::string_view key) const;
  /// The same, less those under the key `except`.
  FoodSet read(Fields& with, std::string_view key, std::string_view except) const;
  /// What a product names itself: its foods and its formula's, not those it takes by kind or tag.
  [[nodiscard]] FoodSet listed(const tested::Product& product) const;
  /// Only what its formula names; empty for a product without one.
  [[nodiscard]] FoodSet in_formula(const tested::Product& product) const;

  [[nodiscard]] const foods::Catalogue& catalogue() const { return catalogue_; }

 private:
  void change(FoodSet& set, Fields& with, std::string_view key, bool adding) const;
  template <class Do>
  bool each(std::string_view selector, Do&& take) const;

  const foods::Catalogue& catalogue_;
  std::vector<std::vector<std::uint16_t>> family_;  ///< of each food: itself and what descends from it
};

/// True for what ends up in the jar: no soak water, no spice bag taken out.
inline bool in_jar(const reading::Ingredient& ingredient) { return !ingredient.read.not_eaten; }

/// The food of a line that a set has: of an "or" or a "salt and pepper" the first; nullptr for none.
const foods::Named* named_in(const reading::Ingredient& ingredient, const FoodSet& set);

/// True if every food in the jar is known and neutral (salt, sugar, water, dry spice), in the set, or in
/// `or_in`.
bool nothing_but(const reading::Reading& reading, const FoodSet& set, const FoodSet* or_in = nullptr);

}  // namespace sealworthy::checks
