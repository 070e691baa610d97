#include "oracle.hpp"

#include <algorithm>
#include <array>

namespace sealworthy::mutation {
namespace {

using tested::ProductClass;

bool lists(const std::vector<std::string>& list, std::string_view id) {
  return std::find(list.begin(), list.end(), id) != list.end();
}

bool names(const tested::FormulaLine& line, std::string_view id) { return lists(line.foods, id); }

/// All foods of a line are dry spice, herb, colour: free in amount.
bool spice(const tested::FormulaLine& line, const foods::Catalogue& catalogue) {
  return std::all_of(line.foods.begin(), line.foods.end(), [&](const std::string& id) {
    const auto* food = catalogue.find(id);
    return food != nullptr && food->acid_class == foods::AcidClass::neutral &&
           (food->kind == "spice" || food->kind == "herb" || food->kind == "additive");
  });
}

bool kind_is(const tested::FormulaLine& line, std::string_view kind, const foods::Catalogue& catalogue) {
  return std::any_of(line.foods.begin(), line.foods.end(), [&](const std::string& id) {
    const auto* food = catalogue.find(id);
    return food != nullptr && food->kind == kind;
  });
}

bool is_water(const tested::FormulaLine& line) { return names(line, "water"); }

bool onion_pepper_celery(const tested::FormulaLine& line, const foods::Catalogue& catalogue) {
  return std::any_of(line.foods.begin(), line.foods.end(), [&](const std::string& id) {
    const auto* food = catalogue.find(id);
    return food != nullptr &&
           (id == "onion" || food->parent == "onion" || id == "celery" || food->has_tag("pepper"));
  });
}

Expected acid_changed(const tested::Product& product, double factor) {
  if (factor < 1) return Expected::forbidden;
  const bool rises =
      product.acid_class == ProductClass::acidified || product.acid_class == ProductClass::acid;
  return rises && !lists(product.formula->may_not, "more-acid") ? Expected::allowed : Expected::harmless;
}

Expected low_acid_changed(const tested::Product& product, const tested::FormulaLine& line, double factor,
                          const foods::Catalogue& catalogue) {
  if (factor > 1) return Expected::forbidden;
  const auto& formula = *product.formula;
  const auto& about = product.foods.front();
  const bool main = std::any_of(line.foods.begin(), line.foods.end(), [&](const std::string& id) {
    const auto* food = catalogue.find(id);
    return id == about || (food != nullptr && food->parent == about);
  });
  if (product.acid_class == ProductClass::acidified && !main && onion_pepper_celery(line, catalogue))
    return lists(formula.may_not, "fewer-onions-peppers-celery") ? Expected::harmless : Expected::allowed;
  if (lists(formula.may, "fewer-vegetables") || lists(formula.may, "leave-out-peppers"))
    return Expected::harmless;
  return Expected::harmless;
}

Expected salt_changed(const tested::Product& product, double factor) {
  const bool fermented = product.acid_class == ProductClass::fermented;
  if (factor < 1 && lists(product.formula->may_not, "less-salt")) return Expected::not_tested;
  if (factor < 1)
    return fermented                                            ? Expected::forbidden
           : product.acid_class == ProductClass::sugar_preserve ? Expected::harmless
                                                                : Expected::allowed;
  return fermented ? Expected::forbidden : Expected::harmless;
}

Expected sugar_changed(const tested::Product& product, double factor) {
  const auto& may_not = product.formula->may_not;
  if (product.acid_class == ProductClass::sugar_preserve)
    return factor < 1 ? Expected::forbidden : Expected::not_tested;
  if (product.acid_class != ProductClass::acidified) return Expected::not_tested;
  const auto rule = factor < 1 ? "less-sugar-in-pickles" : "more-sugar-against-sourness";
  return lists(may_not, rule) ? Expected::not_tested : Expected::allowed;
}

}  // namespace

std::string_view to_string(Expected expected) noexcept {
  static constexpr std::array<std::string_view, 5> words{"allowed", "harmless", "not tested", "forbidden",
                                                         "anything"};
  return words[static_cast<std::size_t>(expected)];
}

Expected amount_changed(const tested::Product& product, const tested::FormulaLine& line, double factor,
                        const foods::Catalogue& catalogue) {
  // A free mix leaves every proportion to the cook.
  if (line.not_eaten || !product.identity.any_of.empty()) return Expected::anything;
  if (spice(line, catalogue)) return Expected::allowed;
  if (factor == 0 && line.optional) return Expected::allowed;
  // An optional line is any amount from none to all.
  if (line.optional || line.at_most) {
    if (factor <= 1) return Expected::anything;
  }
  if (line.amounts.empty()) return factor == 0 ? Expected::not_tested : Expected::anything;
  if (line.role == "acid") return acid_changed(product, factor);
  if (line.role == "low-acid") return low_acid_changed(product, line, factor, catalogue);
  if (line.role == "salt") return salt_changed(product, factor);
  if (line.role == "sugar") return sugar_changed(product, factor);
  if (line.role == "fat" || line.role == "starch")
    return factor > 1 ? Expected::forbidden : Expected::not_tested;
  if (is_water(line)) {
    const bool acid = std::any_of(product.formula->lines.begin(), product.formula->lines.end(),
                                  [](const auto& other) { return other.role == "acid" && !other.not_eaten; });
    if (!acid) return Expected::anything;  // it thins nothing
    return factor > 1 ? Expected::forbidden : Expected::not_tested;
  }
  if (line.role == "flavor") return Expected::anything;  // fresh herbs, horseradish: not decided by the data
  return Expected::not_tested;
}

Expected swapped(const tested::Product& product, const tested::FormulaLine& line, const foods::Food& other,
                 const foods::Catalogue& catalogue) {
  const auto& may = product.formula->may;
  if (line.role == "acid" && other.id == "lemon-juice-bottled" && kind_is(line, "acid", catalogue) &&
      (names(line, "vinegar") || names(line, "vinegar-white")))
    return lists(may, "lemon-for-vinegar") ? Expected::allowed : Expected::not_tested;
  if (line.role == "low-acid" && other.has_tag("pepper") && lists(may, "pepper-for-pepper") &&
      std::all_of(line.foods.begin(), line.foods.end(), [&](const std::string& id) {
        const auto* food = catalogue.find(id);
        return food != nullptr && food->has_tag("pepper");
      }))
    return Expected::allowed;
  return line.role == "acid" || line.role == "low-acid" ? Expected::forbidden : Expected::not_tested;
}

Expected added(const tested::Product& product, const foods::Food& food, const foods::Catalogue& catalogue) {
  if (!product.identity.any_of.empty()) return Expected::anything;  // a free mix
  for (const auto& line : product.formula->lines)
    for (const auto& id : line.foods)
      if (id == food.id || catalogue.is_a(food, id) || food.parent == id) {
        // Cups on top of pounds can't be added up: at least it is not cleared.
        const bool fixed =
            line.role == "low-acid" && !line.optional && !line.amounts.empty() && !line.at_most;
        const bool cups = fixed && std::holds_alternative<Interval<Volume>>(line.amounts.front().measure);
        return cups ? Expected::forbidden : fixed ? Expected::not_tested : Expected::anything;
      }
  return Expected::forbidden;
}

}  // namespace sealworthy::mutation
