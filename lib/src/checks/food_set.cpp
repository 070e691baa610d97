#include "checks/food_set.hpp"

#include <algorithm>

#include "text/nearest.hpp"

namespace sealworthy::checks {
namespace {

constexpr std::string_view kind_prefix = "kind:";
constexpr std::string_view tag_prefix = "tag:";

std::string did_you_mean(const foods::Catalogue& catalogue, std::string_view word) {
  std::vector<std::string_view> ids;
  for (const auto& food : catalogue.all()) ids.push_back(food.id);
  const auto near = text::nearest(word, ids);
  return near ? "did you mean '" + std::string(*near) + "'?" : "an id of rules/foods, kind:... or tag:...";
}

}  // namespace

FoodSet::FoodSet(const foods::Catalogue& catalogue)
    : first_(catalogue.all().data()), bits_(catalogue.all().size(), false) {}

FoodIndex::FoodIndex(const foods::Catalogue& catalogue)
    : catalogue_(catalogue), family_(catalogue.all().size()) {
  const auto all = catalogue.all();
  ids_.reserve(all.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    const foods::Food* ancestor = &all[i];
    // A chain of parents longer than the catalogue would be a ring.
    for (std::size_t steps = 0; ancestor != nullptr && steps < all.size(); ++steps) {
      family_[static_cast<std::size_t>(ancestor - all.data())].push_back(static_cast<std::uint16_t>(i));
      ancestor = ancestor->parent.empty() ? nullptr : catalogue.find(ancestor->parent);
    }
    ids_.emplace(all[i].id, static_cast<std::uint16_t>(i));
    kinds_[all[i].kind].push_back(static_cast<std::uint16_t>(i));
    for (const auto& tag : all[i].tags) tags_[tag].push_back(static_cast<std::uint16_t>(i));
  }
}

const FoodIndex::Places* FoodIndex::places(std::string_view selector) const {
  const auto among = [](const auto& map, std::string_view key) -> const Places* {
    const auto found = map.find(key);
    return found == map.end() ? nullptr : &found->second;
  };
  if (selector.starts_with(kind_prefix)) return among(kinds_, selector.substr(kind_prefix.size()));
  if (selector.starts_with(tag_prefix)) return among(tags_, selector.substr(tag_prefix.size()));
  const auto found = ids_.find(selector);
  return found == ids_.end() ? nullptr : &family_[found->second];
}

bool FoodIndex::add(FoodSet& set, std::string_view selector) const {
  const auto* named = places(selector);
  if (named == nullptr) return false;
  for (const auto i : *named) set.add(catalogue_.all()[i]);
  return true;
}

bool FoodIndex::remove(FoodSet& set, std::string_view selector) const {
  const auto* named = places(selector);
  if (named == nullptr) return false;
  for (const auto i : *named) set.remove(catalogue_.all()[i]);
  return true;
}

void FoodIndex::change(FoodSet& set, Fields& with, std::string_view key, bool adding) const {
  for (const auto& selector : with.list(key))
    if (!(adding ? add(set, selector) : remove(set, selector)))
      with.sink().add(with.at(), "no such food as '" + selector + "'", did_you_mean(catalogue_, selector));
}

FoodSet FoodIndex::read_plain(Fields& with, std::string_view key) const {
  if (with.find(key) == nullptr) return {};
  FoodSet set(catalogue_);
  change(set, with, key, true);
  return set;
}

FoodSet FoodIndex::read(Fields& with, std::string_view key, std::string_view except) const {
  FoodSet set = read_plain(with, key);
  if (!set.unset()) change(set, with, except, false);
  return set;
}

ProductFoods::ProductFoods(const tested::Tables& tables, const FoodIndex& index)
    : first_(tables.products().data()) {
  listed_.reserve(tables.products().size());
  in_formula_.reserve(tables.products().size());
  for (const auto& product : tables.products()) {
    FoodSet set(index.catalogue());
    if (product.formula)
      for (const auto& line : product.formula->lines)
        for (const auto& food : line.foods) index.add(set, food);
    in_formula_.push_back(set);
    for (const auto& food : product.foods)
      if (!food.starts_with(kind_prefix) && !food.starts_with(tag_prefix)) index.add(set, food);
    listed_.push_back(std::move(set));
  }
}

const foods::Named* named_in(const reading::Ingredient& ingredient, const FoodSet& set) {
  for (const auto& named : ingredient.read.foods)
    if (named.food != nullptr && set.has(*named.food)) return &named;
  return nullptr;
}

bool nothing_but(const reading::Reading& reading, const FoodSet& set, const FoodSet* or_in) {
  const auto fits = [&](const foods::Named& named) {
    return named.food != nullptr && (named.food->acid_class == foods::AcidClass::neutral ||
                                     set.has(*named.food) || (or_in != nullptr && or_in->has(*named.food)));
  };
  return std::all_of(reading.ingredients.begin(), reading.ingredients.end(), [&](const auto& ingredient) {
    return !in_jar(ingredient) ||
           (ingredient.read.unknown.empty() &&
            std::all_of(ingredient.read.foods.begin(), ingredient.read.foods.end(), fits));
  });
}

}  // namespace sealworthy::checks
