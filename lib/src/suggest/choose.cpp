#include "suggest/choose.hpp"

#include <algorithm>
#include <array>
#include <cmath>
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

/// The sizes of the card in its order.
std::vector<tested::JarIndex> own_sizes(const Reading& reading) {
  std::vector<tested::JarIndex> sizes;
  for (const auto& jar : reading.jars)
    if (jar.size && std::find(sizes.begin(), sizes.end(), *jar.size) == sizes.end())
      sizes.push_back(*jar.size);
  return sizes;
}

/// The card's jars first, then the sizes that the table has, largest first.
std::vector<tested::JarIndex> jars_in_order(const Reading& reading, const tested::Product& product) {
  std::vector<tested::JarIndex> jars;
  for (const auto& row : product.rows)
    if (std::find(jars.begin(), jars.end(), row.jar) == jars.end()) jars.push_back(row.jar);
  std::sort(jars.begin(), jars.end(), std::greater<>());
  const auto own = own_sizes(reading);
  jars.insert(jars.begin(), own.begin(), own.end());
  return jars;
}

std::vector<recipe::Pack> packs_in_order(const Reading& reading) {
  using recipe::Pack;
  const bool raw = reading.recipe->pack && reading.recipe->pack->value == Pack::raw;
  return raw ? std::vector{Pack::raw, Pack::hot} : std::vector{Pack::hot, Pack::raw};
}

Altitude worse_end(const Reading& reading, const Interval<Altitude>& range) {
  return std::isinf(range.high.si()) ? std::max(range.low, reading.tables->highest_open()) : range.high;
}

Height height_of(const Reading& reading) {
  const auto exactly = [](Height::From from, Altitude at) {
    return Height{from, at, Interval<Altitude>::exactly(at)};
  };
  if (reading.altitude.kitchen)
    return exactly(Height::From::kitchen, worse_end(reading, *reading.altitude.kitchen));
  const auto& homes = reading.recipe->homes;
  const auto highest = std::max_element(homes.begin(), homes.end(),
                                        [](const auto& a, const auto& b) { return a.value < b.value; });
  if (highest != homes.end()) return exactly(Height::From::writer, highest->value);
  const Interval<Altitude>* lowest = nullptr;
  for (const auto& jar : reading.jars) {
    if (jar.process == nullptr || !jar.process->altitude) continue;
    const auto& range = jar.process->altitude->value;
    const bool lower = lowest == nullptr || range.low < lowest->low ||
                       (range.low == lowest->low && range.high < lowest->high);
    if (lower) lowest = &range;
  }
  if (lowest != nullptr) return {Height::From::card, worse_end(reading, *lowest), *lowest};
  return exactly(Height::From::lowest, feet(0));
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

std::optional<Choice> choose_figures(const Reading& reading, const tested::Product& product) {
  Choice choice{{}, height_of(reading)};
  const std::string part = part_of(reading, product);
  const auto add = [&](tested::JarIndex jar, TableMethod method, recipe::Pack pack) {
    auto options = reading.tables->needed(product, method, pack, jar, choice.height.at, part);
    // Figures that were read on a page go before those from memory.
    std::stable_partition(options.begin(), options.end(), [](const auto& needed) {
      return usable(needed) && needed.step->read != Read::memory;
    });
    const auto first = std::find_if(options.begin(), options.end(), usable);
    if (first == options.end()) return false;
    const auto& step = *first->step;
    CardFigures figures{method, pack, jar, in_minutes(step.time), {}, in_feet(choice.height.at), part};
    if (step.pressure) figures.psi = in_psi(*step.pressure);
    choice.jars.push_back(std::move(figures));
    // Nothing is known: the figures hold for the lowest band of every table used.
    auto& range = choice.height.range;
    if (choice.height.from == Height::From::lowest)
      range.high = choice.jars.size() == 1 ? step.band.to : std::min(range.high, step.band.to);
    if (std::isinf(range.high.si()) && choice.height.from == Height::From::lowest)
      range.high = reading.tables->highest_open();
    return true;
  };
  const auto add_first = [&] {
    for (const auto jar : jars_in_order(reading, product))
      for (const auto method : methods_in_order(reading))
        for (const auto pack : packs_in_order(reading))
          if (add(jar, method, pack)) return true;
    return false;
  };
  if (!add_first()) return std::nullopt;
  const CardFigures first = choice.jars.front();
  const auto sizes = own_sizes(reading);
  // A size that the card does not name stands for all of its sizes.
  if (std::find(sizes.begin(), sizes.end(), first.jar) == sizes.end()) return choice;
  for (const auto jar : sizes)
    if (jar != first.jar) add(jar, first.method, first.pack);
  return choice;
}

const reading::JarProcess& own_jar(const Reading& reading, const CardFigures& figures, const Height& height) {
  const reading::JarProcess* found = nullptr;
  for (const auto& jar : reading.jars) {
    if (jar.size != figures.jar) continue;
    const bool for_it =
        jar.process != nullptr && jar.process->altitude && jar.process->altitude->value.contains(height.at);
    if (found == nullptr || for_it) found = &jar;
    if (for_it) break;
  }
  return found != nullptr ? *found : reading.jars.front();
}

}  // namespace sealworthy::suggest
