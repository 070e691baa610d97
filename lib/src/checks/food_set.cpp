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
  for (std::size_t i = 0; i < all.size(); ++i) {
    const foods::Food* ancestor = &all[i];
    // A chain of parents longer than the catalogue would be a ring.
    for (std::size_t steps = 0; ancestor != nullptr && steps < all.size(); ++steps) {
      family_[static_cast<std::size_t>(ancestor - all.data())].push_back(static_cast<std::uint16_t>(i));
      ancestor = ancestor->parent.empty() ? nullptr : catalogue.find(ancestor->parent);
    }
  }
}

template <class Do>
bool FoodIndex::each(std::string_view selector, Do&& take) const {
  const auto all = catalogue_.all();
  bool any = false;
  const auto take_if = [&](auto&& wanted) {
    for (const auto& food : all)
      if (wanted(food)) {
        take(food);
        any = true;
      }
  };
  if (selector.starts_with(kind_prefix)) {
    const auto kind = selector.substr(kind_prefix.size());
    take_if([&](const foods::Food& food) { return food.kind == kind; });
  } else if (selector.starts_with(tag_prefix)) {
    const auto tag = selector.substr(tag_prefix.size());
    take_if([&](const foods::Food& food) { return food.has_tag(tag); });
  } else if (const auto* food = catalogue_.find(selector)) {
    for (const auto i : family_[static_cast<std::size_t>(food - all.data())]) take(all[i]);
    any = true;
  }
  return any;
}

bool FoodIndex::add(FoodSet& set, std::string_view selector) const {
  return each(selector, [&](const foods::Food& food) { set.add(food); });
}

bool FoodIndex::remove(FoodSet& set, std::string_view selector) const {
  return each(selector, [&](const foods::Food& food) { set.remove(food); });
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

FoodSet FoodIndex::in_formula(const tested::Product& product) const {
  FoodSet set(catalogue_);
  if (product.formula)
    for (const auto& line : product.formula->lines)
      for (const auto& food : line.foods) add(set, food);
  return set;
}

FoodSet FoodIndex::listed(const tested::Product& product) const {
  FoodSet set = in_formula(product);
  for (const auto& food : product.foods)
    if (!food.starts_with(kind_prefix) && !food.starts_with(tag_prefix)) add(set, food);
  return set;
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
