#include "plan/batch.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "quantity/figures.hpp"
#include "reading/ingredients.hpp"
#include "tested/compare_amounts.hpp"
#include "tested/line_foods.hpp"

namespace sealworthy::plan {
namespace {

using reading::Ingredient;
using reading::Reading;
using tested::Product;

double middle(const Interval<double>& range) { return (range.low + range.high) / 2; }

const quantity::JarText* first_jar(const Reading& reading) { return reading.jars.front().jar; }

/// Jars of the card's size that hold as much as so many of another.
double in_jars_of(const Reading& reading, double count, const std::optional<quantity::JarText>& jar) {
  const auto* own = first_jar(reading);
  return own == nullptr || !jar ? count : count * (jar->volume / own->volume);
}

double middle_count(const quantity::Yield& yield) {
  return (in_pieces(yield.count.low) + in_pieces(yield.count.high)) / 2;
}

std::optional<quantity::Yield> yield_of(std::string_view text) {
  auto read = quantity::read_yield(text);
  if (auto* yield = std::get_if<quantity::Yield>(&read); yield != nullptr && yield->jar) return *yield;
  return std::nullopt;
}

/// "14 lb" for "9 pints"; no bushels.
struct Load {
  quantity::Yield jars;
  Interval<Mass> weight;
  std::string text;
};

std::vector<Load> weighed_loads(const Product& product) {
  std::vector<Load> loads;
  for (const auto& [jars, amount] : product.canner_load) {
    const auto yield = yield_of(jars);
    const auto read = quantity::read_amount(amount, quantity::Units::us);
    if (!yield || !read) continue;
    if (const auto* mass = std::get_if<Interval<Mass>>(&read->measure))
      loads.push_back({*yield, *mass, fmt::format("{} for {}", amount, jars)});
  }
  return loads;
}

/// The load told for the card's own jar, else the first one told.
std::optional<Load> load_for(const Reading& reading) {
  const auto* own = first_jar(reading);
  if (reading.match.product == nullptr || own == nullptr) return std::nullopt;
  auto loads = weighed_loads(*reading.match.product);
  const auto same = std::find_if(loads.begin(), loads.end(),
                                 [&](const Load& load) { return load.jars.jar->volume == own->volume; });
  if (same != loads.end()) return *same;
  if (!loads.empty()) return loads.front();
  return std::nullopt;
}

bool is_main_food(const Ingredient& ingredient, const Reading& reading) {
  return reading::in_jar(ingredient) && !ingredient.read.per_jar && ingredient.food != nullptr &&
         tested::stands_for_any(*ingredient.food, reading.match.product->foods, *reading.catalogue);
}

/// The weight of the product's own food on the card.
std::optional<Interval<Mass>> main_weight(const Reading& reading) {
  std::optional<Interval<Mass>> sum;
  for (const auto& ingredient : reading.ingredients) {
    if (!is_main_food(ingredient, reading)) continue;
    std::optional<Interval<Mass>> weight;
    if (const auto* mass = std::get_if<Interval<Mass>>(&ingredient.read.amount.measure))
      weight = *mass;
    else
      weight = ingredient.read.weight;
    if (!weight) return std::nullopt;
    sum = sum ? *sum + *weight : *weight;
  }
  return sum;
}

/// Words such as "0.53 to 0.6" of a bushel, in kitchen fractions.
std::string range_words(double low, double high) {
  const std::string from = quantity::kitchen_number(low);
  const std::string to = quantity::kitchen_number(high);
  return from == to ? from : from + " to " + to;
}

/// "tomato", as a text names it.
std::string food_words(const Reading& reading, std::string_view id) {
  const auto* food = reading.catalogue->find(id);
  std::string name = food == nullptr ? std::string(id) : food->name;
  if (!name.empty() && name.front() >= 'A' && name.front() <= 'Z')
    name.front() = static_cast<char>(name.front() - 'A' + 'a');
  return name;
}

bool same_food(const foods::Food& a, const foods::Food& b, const foods::Catalogue& catalogue) {
  return catalogue.is_a(a, b.id) || catalogue.is_a(b, a.id);
}

}  // namespace

std::optional<double> times_formula(const Reading& reading, const tested::Formula& formula) {
  for (const auto& line : formula.lines) {
    if (line.per_jar || line.optional || line.not_eaten || !line.part.empty()) continue;
    for (const auto& ingredient : reading.ingredients) {
      if (ingredient.food == nullptr || !reading::in_jar(ingredient) ||
          !tested::stands_for_any(*ingredient.food, line.foods, *reading.catalogue))
        continue;
      for (const auto& own : tested::sizes_of(ingredient.read.amount))
        for (const auto& amount : line.amounts)
          for (const auto& published : tested::sizes_of(amount))
            if (own.beside(published) && middle(published.value) > 0)
              return middle(own.value) / middle(published.value);
    }
  }
  return std::nullopt;
}

std::optional<double> jars_made(const Reading& reading) {
  if (reading.recipe->makes) {
    const auto& makes = reading.recipe->makes->value;
    return in_jars_of(reading, middle_count(makes), makes.jar);
  }
  const Product* product = reading.match.product;
  if (product == nullptr) return std::nullopt;
  if (product->formula) {
    const auto yield = yield_of(product->formula->yields);
    const auto times = times_formula(reading, *product->formula);
    if (yield && times) return *times * in_jars_of(reading, middle_count(*yield), yield->jar);
  }
  const auto per_jar = weight_per_jar(reading);
  const auto weight = main_weight(reading);
  if (!per_jar || !weight) return std::nullopt;
  return (weight->low + weight->high) / (per_jar->low + per_jar->high);
}

std::optional<Interval<Mass>> weight_per_jar(const Reading& reading) {
  const auto load = load_for(reading);
  if (!load) return std::nullopt;
  const double jars = in_jars_of(reading, middle_count(load->jars), load->jars.jar);
  return load->weight * (1 / jars);
}

std::vector<std::string> to_buy(const Reading& reading, int jars) {
  std::vector<std::string> words;
  const auto load = load_for(reading);
  const auto per_jar = weight_per_jar(reading);
  if (!load || !per_jar) return words;
  const auto weight = *per_jar * jars;
  words.push_back(fmt::format(
      "{} lb of {} (published: {})", range_words(in_pounds(weight.low), in_pounds(weight.high)),
      reading.match.product->foods.empty() ? std::string("it")
                                           : food_words(reading, reading.match.product->foods.front()),
      load->text));
  for (const auto& [of, amount] : reading.match.product->canner_load) {
    const auto yield = yield_of(of);
    const auto at = amount.find('(');
    if (!yield || !amount.starts_with("1 ") || at == std::string::npos) continue;
    const std::string vessel = amount.substr(2, at - 3);
    const double least = in_jars_of(reading, in_pieces(yield->count.low), yield->jar);
    const double most = in_jars_of(reading, in_pieces(yield->count.high), yield->jar);
    words.push_back(fmt::format("{:.1f} to {:.1f} {}s (published: {} for {})", jars / most, jars / least,
                                vessel, amount, of));
  }
  return words;
}

std::optional<Filled> jars_filled(const Reading& reading, const AtHand& at_hand, double jars_made,
                                  bool& card_has) {
  card_has = false;
  if (at_hand.read.foods.empty() || at_hand.read.foods.front().food == nullptr) return std::nullopt;
  const auto& food = *at_hand.read.foods.front().food;
  for (const auto& ingredient : reading.ingredients) {
    if (ingredient.food == nullptr || ingredient.read.per_jar || !reading::in_jar(ingredient) ||
        !same_food(*ingredient.food, food, *reading.catalogue))
      continue;
    card_has = true;
    const std::string line(ingredient.line->text);
    for (const auto& have : tested::sizes_of(at_hand.read.amount)) {
      for (const auto& own : tested::sizes_of(ingredient.read.amount))
        if (have.beside(own) && middle(own.value) > 0)
          return Filled{jars_made * middle(have.value) / middle(own.value), line};
    }
    const auto* mass = std::get_if<Interval<Mass>>(&at_hand.read.amount.measure);
    const auto weight = mass != nullptr ? std::optional(*mass) : at_hand.read.weight;
    const auto* own_mass = std::get_if<Interval<Mass>>(&ingredient.read.amount.measure);
    const auto own = own_mass != nullptr ? std::optional(*own_mass) : ingredient.read.weight;
    // The lower end: produce that does not fill the last jar is no harm, a jar short of acid would be.
    if (weight && own) return Filled{jars_made * (weight->low / own->high), line};
    if (const auto per_jar = weight_per_jar(reading); weight && per_jar && is_main_food(ingredient, reading))
      return Filled{weight->low / per_jar->high, line};
  }
  return std::nullopt;
}

}  // namespace sealworthy::plan
