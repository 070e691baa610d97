#include "suggest/choose.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include "checks/against_table.hpp"
#include "reading/ingredients.hpp"
#include "reading/jars.hpp"
#include "reading/match.hpp"
#include "tested/line_foods.hpp"

namespace sealworthy::suggest {
namespace {

using reading::MethodKind;
using reading::Reading;
using tested::TableMethod;

constexpr std::array every_method{TableMethod::boiling_water, TableMethod::pressure_dial,
                                  TableMethod::pressure_weighted};

bool at_hand(const Reading& reading, TableMethod method) {
  return std::any_of(reading.canners.begin(), reading.canners.end(), [&](const auto& canner) {
    if (method == TableMethod::boiling_water) return canner.method == MethodKind::boiling_water;
    if (canner.method != MethodKind::pressure) return false;
    const auto gauge = method == TableMethod::pressure_dial ? recipe::Gauge::dial : recipe::Gauge::weighted;
    return !canner.gauge || *canner.gauge == gauge;
  });
}

/// The card's own methods first, then those of the kitchen's canners, then the others.
std::vector<TableMethod> methods_in_order(const Reading& reading) {
  const auto own = reading::table_methods(reading.jars.front());
  std::vector<TableMethod> methods;
  const auto add = [&](TableMethod method) {
    if (std::find(methods.begin(), methods.end(), method) == methods.end()) methods.push_back(method);
  };
  for (const auto method : every_method)
    if (own.has(method) && (reading.canners.empty() || at_hand(reading, method))) add(method);
  for (const auto method : every_method)
    if (at_hand(reading, method)) add(method);
  for (const auto method : every_method)
    if (own.has(method)) add(method);
  for (const auto method : every_method) add(method);
  return methods;
}

/// The card's jar first, then the sizes that the table has, largest first.
std::vector<tested::JarIndex> jars_in_order(const Reading& reading, const tested::Product& product) {
  std::vector<tested::JarIndex> jars;
  for (const auto& row : product.rows)
    if (std::find(jars.begin(), jars.end(), row.jar) == jars.end()) jars.push_back(row.jar);
  std::sort(jars.begin(), jars.end(), std::greater<>());
  if (const auto own = reading.jars.front().size) jars.insert(jars.begin(), *own);
  return jars;
}

std::vector<recipe::Pack> packs_in_order(const Reading& reading) {
  using recipe::Pack;
  const bool raw = reading.recipe->pack && reading.recipe->pack->value == Pack::raw;
  return raw ? std::vector{Pack::raw, Pack::hot} : std::vector{Pack::hot, Pack::raw};
}

Altitude altitude_of(const Reading& reading) {
  return reading.altitude.judged.empty() ? feet(0) : reading.altitude.judged.front();
}

std::string part_of(const Reading& reading, const tested::Product& product) {
  for (const auto& jar : reading.jars)
    if (!jar.tabled.empty()) return jar.tabled.front().row->applies_to;
  return product.rows.empty() ? std::string() : product.rows.front().applies_to;
}

bool usable(const tested::Needed& needed) { return needed.step != nullptr && !needed.step->not_recommended; }

}  // namespace

const tested::Product* nearest_product(const Reading& reading) {
  if (reading.match.product != nullptr) return reading.match.product;
  return reading.match.also.empty() ? nullptr : reading.match.also.front();
}

bool takes(const tested::Product& product, const reading::Ingredient& ingredient,
           const foods::Catalogue& catalogue) {
  const auto* food = ingredient.food;
  if (food == nullptr || !reading::in_jar(ingredient)) return false;
  if (food->acid_class == foods::AcidClass::neutral && food->kind != "acid") return false;
  const auto& identity = product.identity;
  for (const auto* list : {&product.foods, &identity.all_of, &identity.any_of, &identity.may})
    if (tested::one_of(*food, *list, catalogue)) return true;
  if (!product.formula) return false;
  return std::any_of(product.formula->lines.begin(), product.formula->lines.end(),
                     [&](const auto& line) { return tested::one_of(*food, line.foods, catalogue); });
}

std::string another_dish(const Reading& reading, const tested::Product& product) {
  if (reading.match.sure()) return {};
  int taken = 0;
  std::vector<std::string> others;
  for (const auto& ingredient : reading.ingredients) {
    if (!reading::in_jar(ingredient)) continue;
    const auto* food = ingredient.food;
    if (takes(product, ingredient, *reading.catalogue))
      ++taken;
    else if (food != nullptr && food->acid_class != foods::AcidClass::neutral && !tested::only_flavor(*food))
      others.push_back(ingredient.read.foods.front().name);
  }
  if (static_cast<int>(others.size()) > taken) return "it has no " + others.front();
  const auto form = reading.match_index->not_covered(product, reading.recipe->title.value);
  return form.empty() ? std::string()
                      : "the card says \"" + std::string(form) + "\", which it does not cover";
}

std::optional<CardFigures> choose_figures(const Reading& reading, const tested::Product& product) {
  const Altitude height = altitude_of(reading);
  const std::string part = part_of(reading, product);
  for (const auto jar : jars_in_order(reading, product)) {
    for (const auto method : methods_in_order(reading)) {
      for (const auto pack : packs_in_order(reading)) {
        auto options = reading.tables->needed(product, method, pack, jar, height, part);
        // Figures that were read on a page go before those from memory.
        std::stable_partition(options.begin(), options.end(), [](const auto& needed) {
          return usable(needed) && needed.step->read != Read::memory;
        });
        for (const auto& needed : options) {
          if (!usable(needed)) continue;
          CardFigures figures{method, pack, jar, in_minutes(needed.step->time), {}, in_feet(height), part};
          if (needed.step->pressure) figures.psi = in_psi(*needed.step->pressure);
          return figures;
        }
      }
    }
  }
  return std::nullopt;
}

}  // namespace sealworthy::suggest
