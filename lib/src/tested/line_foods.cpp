#include "tested/line_foods.hpp"

#include <algorithm>

namespace sealworthy::tested {
namespace {

int acidity(const foods::Food& food) {
  switch (food.acid_class) {
    case foods::AcidClass::neutral:  // a dry herb for a fresh one is no loss
      return 3;
    case foods::AcidClass::acid:
      return 2;
    case foods::AcidClass::borderline:
      return 1;
    case foods::AcidClass::low_acid:
      break;
  }
  return 0;
}

}  // namespace

bool no_worse(const foods::Food& form, const foods::Food& food) {
  if (form.guide_class == "none" && food.guide_class != "none") return false;
  return acidity(form) >= acidity(food);
}

bool stands_for(const foods::Food& food, std::string_view id, const foods::Catalogue& catalogue) {
  if (food.id == id) return true;
  if (food.parent.empty() || !catalogue.is_a(food, id)) return false;
  const auto* named = catalogue.find(id);
  return named != nullptr && no_worse(food, *named);
}

bool stands_for_any(const foods::Food& food, std::span<const std::string> ids,
                    const foods::Catalogue& catalogue) {
  return std::any_of(ids.begin(), ids.end(),
                     [&](const std::string& id) { return stands_for(food, id, catalogue); });
}

bool stands_for_any(const foods::Food& food, std::span<const foods::Food* const> named,
                    const foods::Catalogue& catalogue) {
  return std::any_of(named.begin(), named.end(), [&](const foods::Food* one) {
    if (one == &food) return true;
    return one != nullptr && !food.parent.empty() && catalogue.is_a(food, *one) && no_worse(food, *one);
  });
}

bool one_of(const foods::Food& food, std::span<const std::string> names, const foods::Catalogue& catalogue) {
  constexpr std::string_view kind = "kind:", tag = "tag:";
  return std::any_of(names.begin(), names.end(), [&](const std::string& name) {
    if (name.starts_with(kind)) return food.kind == std::string_view(name).substr(kind.size());
    if (name.starts_with(tag)) return food.has_tag(std::string_view(name).substr(tag.size()));
    return stands_for(food, name, catalogue);
  });
}

bool is_water(const foods::Food& food) {
  return food.kind == "liquid" && food.acid_class == foods::AcidClass::neutral && food.tags.empty();
}

bool is_salt(const foods::Food& food) {
  return food.kind == "salt" && !food.has_tag("nitrite") && !food.has_tag("nitrate");
}

bool only_flavor(const foods::Food& food) {
  if (food.acid_class != foods::AcidClass::neutral) return false;
  if (food.kind == "additive") return food.tags.empty() || food.has_tag("firming");
  return food.kind == "spice" || food.kind == "herb";
}

}  // namespace sealworthy::tested
