#include "reading/jars.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "reading/ingredients.hpp"

namespace sealworthy::reading {
namespace {

using PlacedJar = recipe::Placed<quantity::JarText>;

bool same_size(const quantity::JarText& a, const quantity::JarText& b) { return a.volume == b.volume; }

/// The gauge of the kitchen's pressure canners, where they all have the same.
std::optional<recipe::Gauge> kitchen_gauge(const Reading& reading) {
  std::optional<recipe::Gauge> found;
  for (const CannerAtHand& at_hand : reading.canners) {
    if (at_hand.method != MethodKind::pressure) continue;
    if (!at_hand.gauge || (found && *found != *at_hand.gauge)) return std::nullopt;
    found = at_hand.gauge;
  }
  return found;
}

void set_process(JarProcess& jar, const recipe::Process& process, const Reading& reading,
                 const Methods& methods) {
  jar.process = &process;
  if (process.headspace) jar.headspace = process.headspace;
  const MethodWord* method = process.method ? methods.find(process.method->value) : nullptr;
  if (method != nullptr) {
    jar.method = method->kind;
    jar.method_id = method->id;
    jar.method_name = method->name;
  }
  if (jar.method != MethodKind::pressure && process.method) return;
  if (process.gauge) {
    jar.gauge = process.gauge->value;
  } else if (method != nullptr && method->gauge) {
    jar.gauge = method->gauge;
  } else {
    jar.gauge = kitchen_gauge(reading);
  }
}

bool names(const recipe::Process& process, const quantity::JarText& jar) {
  return std::any_of(process.jars.begin(), process.jars.end(),
                     [&](const PlacedJar& j) { return same_size(j.value, jar); });
}

/// The processes of the card that are for a jar size. `rest`: the card has a size that no process names,
/// which those without a jar are for; else they are for every size, so that none goes unjudged.
std::vector<const recipe::Process*> processes_for(const recipe::Recipe& recipe, const quantity::JarText* jar,
                                                  bool rest) {
  std::vector<const recipe::Process*> named;
  std::vector<const recipe::Process*> open;
  for (const recipe::Process& process : recipe.processes) {
    if (process.jars.empty()) {
      open.push_back(&process);
    } else if (jar != nullptr && names(process, *jar)) {
      named.push_back(&process);
    }
  }
  if (!rest && !named.empty()) named.insert(named.end(), open.begin(), open.end());
  if (!named.empty()) return named;
  if (!open.empty()) return open;
  if (recipe.processes.size() == 1) return {&recipe.processes.front()};
  return {};
}

void add_jar(Reading& reading, const PlacedJar* jar, bool rest, const Methods& methods) {
  JarProcess entry;
  entry.headspace = reading.recipe->headspace;
  entry.jar_at = reading.recipe->process_or_title();
  if (jar != nullptr) {
    entry.jar = &jar->value;
    entry.jar_at = jar->at;
    entry.size = reading.tables->jar_size(jar->value);
  }
  const auto processes = processes_for(*reading.recipe, entry.jar, rest);
  if (processes.empty()) reading.jars.push_back(entry);
  for (const recipe::Process* process : processes) {
    reading.jars.push_back(entry);
    set_process(reading.jars.back(), *process, reading, methods);
  }
}

}  // namespace

void read_jars(Reading& reading, const Methods& methods) {
  const recipe::Recipe& recipe = *reading.recipe;
  std::vector<const PlacedJar*> sizes;
  const auto note = [&](const PlacedJar& jar) {
    const bool known = std::any_of(sizes.begin(), sizes.end(),
                                   [&](const PlacedJar* j) { return same_size(j->value, jar.value); });
    if (!known) sizes.push_back(&jar);
  };
  for (const PlacedJar& jar : recipe.jars) note(jar);
  for (const recipe::Process& process : recipe.processes) {
    for (const PlacedJar& jar : process.jars) note(jar);
  }
  const bool rest = std::any_of(sizes.begin(), sizes.end(), [&](const PlacedJar* jar) {
    return std::none_of(recipe.processes.begin(), recipe.processes.end(),
                        [&](const recipe::Process& process) { return names(process, jar->value); });
  });
  for (const PlacedJar* jar : sizes) add_jar(reading, jar, rest, methods);
  if (sizes.empty()) add_jar(reading, nullptr, rest, methods);
}

TableMethods table_methods(const JarProcess& jar) {
  using tested::TableMethod;
  const bool unsaid = jar.process != nullptr && !jar.process->method;
  const bool pressure = jar.method == MethodKind::pressure || (unsaid && jar.process->pressure);
  // The low-temperature treatment keeps the jars and packs of the boiling-water table; its time is its own.
  const bool water = jar.method == MethodKind::boiling_water || jar.method == MethodKind::steam ||
                     jar.method == MethodKind::low_temperature;
  TableMethods result;
  if (water || (unsaid && !pressure)) result.add(TableMethod::boiling_water);
  if (!pressure && !unsaid) return result;
  if (jar.gauge != recipe::Gauge::weighted) result.add(TableMethod::pressure_dial);
  if (jar.gauge != recipe::Gauge::dial) result.add(TableMethod::pressure_weighted);
  return result;
}

namespace {

void add_option(JarProcess& jar, const tested::Needed& needed) {
  const bool known = std::any_of(jar.tabled.begin(), jar.tabled.end(),
                                 [&](const tested::Needed& n) { return n.option == needed.option; });
  if (!known) jar.tabled.push_back(needed);
}

/// True if a food is the one of a selector: an id (kinds and forms of it too), "kind:..." or "tag:...".
bool is_selected(const foods::Food& food, std::string_view selector, const foods::Catalogue& catalogue) {
  if (selector.starts_with("kind:")) return food.kind == selector.substr(5);
  if (selector.starts_with("tag:")) return food.has_tag(selector.substr(4));
  return catalogue.is_a(food, selector);
}

bool holds_any(const Reading& reading, const std::vector<std::string>& selectors) {
  return std::any_of(
      reading.ingredients.begin(), reading.ingredients.end(), [&](const Ingredient& ingredient) {
        if (!in_jar(ingredient)) return false;
        return std::any_of(
            ingredient.read.foods.begin(), ingredient.read.foods.end(), [&](const foods::Named& named) {
              return named.food != nullptr &&
                     std::any_of(selectors.begin(), selectors.end(), [&](const std::string& s) {
                       return is_selected(*named.food, s, *reading.catalogue);
                     });
            });
      });
}

/// Which part of the product the card is, where its table has parts: the one that asks for a food of the
/// card, else the one that asks for none.
std::string_view part_of(const Reading& reading, const tested::Product& product) {
  std::string_view part;
  for (const tested::Row& row : product.rows) {
    if (row.applies_to.empty()) continue;
    if (row.applies_if.empty()) {
      part = row.applies_to;
    } else if (holds_any(reading, row.applies_if)) {
      return row.applies_to;
    }
  }
  return part;
}

/// The rows of every jar: the card names none, so any of them may be meant.
void add_all_sizes(JarProcess& jar, const tested::Product& product, tested::TableMethod method,
                   std::string_view part) {
  for (const tested::Row& row : product.rows) {
    if (row.method != method || row.applies_to != part) continue;
    for (const tested::Option& option : row.options) jar.tabled.push_back({&row, &option, nullptr, false});
  }
}

}  // namespace

void look_up_tables(Reading& reading) {
  const tested::Product* product = reading.match.product;
  if (product == nullptr) return;
  static constexpr Altitude lowest = feet(0);
  static constexpr std::array every_method{tested::TableMethod::boiling_water,
                                           tested::TableMethod::pressure_dial,
                                           tested::TableMethod::pressure_weighted};
  const std::string_view part = part_of(reading, *product);
  for (JarProcess& jar : reading.jars) {
    const TableMethods methods = table_methods(jar);
    for (const tested::TableMethod method : every_method) {
      if (!methods.has(method)) continue;
      if (jar.jar == nullptr) add_all_sizes(jar, *product, method, part);
      if (!jar.size) continue;
      for (const recipe::Pack pack : {recipe::Pack::hot, recipe::Pack::raw}) {
        for (const tested::Needed& needed :
             reading.tables->needed(*product, method, pack, *jar.size, lowest, part)) {
          add_option(jar, needed);
        }
      }
    }
  }
}

}  // namespace sealworthy::reading
