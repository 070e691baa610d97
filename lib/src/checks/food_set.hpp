#pragma once

/// Sets of foods as rules name them, and the foods that a tested product lists: one bit a food, so that a
/// card is judged without comparing names.

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "checks/fields.hpp"
#include "foods/catalogue.hpp"
#include "reading/ingredients.hpp"
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

/// Makes FoodSets. Cost: one pass over the catalogue, about a tenth of a millisecond.
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
  [[nodiscard]] const foods::Catalogue& catalogue() const { return catalogue_; }

 private:
  using Places = std::vector<std::uint16_t>;
  void change(FoodSet& set, Fields& with, std::string_view key, bool adding) const;
  /// The foods that a selector names; nullptr: none is so called.
  [[nodiscard]] const Places* places(std::string_view selector) const;

  const foods::Catalogue& catalogue_;
  std::vector<Places> family_;  ///< of each food: itself and what descends from it
  std::unordered_map<std::string_view, std::uint16_t> ids_;
  std::unordered_map<std::string_view, Places> kinds_, tags_;
};

/// Which foods each tested product lists.
class ProductFoods {
 public:
  ProductFoods(const tested::Tables& tables, const FoodIndex& index);

  /// What the product names itself: its foods and its formula's, not those it takes by kind or tag.
  [[nodiscard]] const FoodSet& listed(const tested::Product& product) const {
    return listed_[place(product)];
  }
  /// Only what its formula names; nothing for a product without one.
  [[nodiscard]] const FoodSet& in_formula(const tested::Product& product) const {
    return in_formula_[place(product)];
  }

 private:
  [[nodiscard]] std::size_t place(const tested::Product& product) const {
    return static_cast<std::size_t>(&product - first_);
  }

  const tested::Product* first_;
  std::vector<FoodSet> listed_, in_formula_;
};

using reading::in_jar;

/// The food of a line that a set has: of an "or" or a "salt and pepper" the first; nullptr for none.
const foods::Named* named_in(const reading::Ingredient& ingredient, const FoodSet& set);

/// True if every food in the jar is known and neutral (salt, sugar, water, dry spice), in the set, or in
/// `or_in`.
bool nothing_but(const reading::Reading& reading, const FoodSet& set, const FoodSet* or_in = nullptr);

}  // namespace sealworthy::checks
