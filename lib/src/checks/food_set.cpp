#include "checks/food_set.hpp"

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

FoodSet FoodIndex::read(Fields& with, const std::string& key) const {
  static const std::vector<std::string_view> except_keys{"not-foods", "not-beside", "not-only",
                                                         "not-without"};
  std::string_view except;
  for (const auto k : except_keys)
    if (k.substr(4) == key) except = k;
  const auto complain = [&](const std::string& selector) {
    with.sink().add(with.at(), "no such food as '" + selector + "'", did_you_mean(catalogue_, selector));
  };
  const auto names = with.list(key);
  const auto but = except.empty() ? std::vector<std::string>() : with.list(except);
  if (names.empty()) return {};
  FoodSet set(catalogue_);
  for (const auto& selector : names)
    if (!add(set, selector)) complain(selector);
  for (const auto& selector : but)
    if (!remove(set, selector)) complain(selector);
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

}  // namespace sealworthy::checks
