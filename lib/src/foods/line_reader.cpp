#include "foods/line_reader.hpp"

#include <algorithm>
#include <utility>

#include "foods/instead.hpp"
#include "foods/items.hpp"
#include "foods/line_amounts.hpp"
#include "foods/name_reader.hpp"
#include "foods/remarks.hpp"
#include "foods/weigh.hpp"

namespace sealworthy::foods {
namespace {

/// A weight that the line gives beside its amount: "6 tomatoes, about 2 lb".
const Interval<Mass>* weight_beside(const LineReading& reading) {
  if (!std::holds_alternative<std::monostate>(reading.amount.each)) return nullptr;
  for (const auto& more : reading.more)
    if (const auto* mass = std::get_if<Interval<Mass>>(&more.measure)) return mass;
  return nullptr;
}

void find_weight(const TellsStates& told, const Index& index, LineReading& reading) {
  const auto* mass = std::get_if<Interval<Mass>>(&reading.amount.measure);
  if (mass == nullptr) mass = weight_beside(reading);
  if (mass != nullptr) {
    reading.weight = *mass;
    return;
  }
  if (reading.all_of && reading.foods.size() > 1) return;
  boost::container::small_vector<StateId, 8> states;
  for (const auto& state : told) states.push_back(state.state);
  for (const auto& named : reading.foods) {
    if (named.food == nullptr) continue;
    const auto id = static_cast<FoodId>(named.food - index.foods.data());
    const auto& amount = named.amount ? *named.amount : reading.amount;
    const auto weight = weigh_amount(amount, id, {states.data(), states.size()}, index);
    if (weight) reading.weight = reading.weight ? hull(*reading.weight, *weight) : *weight;
  }
}

/// The food named from token `i` on, behind figures and words that only describe; no_food: none.
NameMatch food_ahead(const Tokens& tokens, std::size_t i) {
  constexpr std::size_t reach = 6;
  for (const std::size_t last = std::min(tokens.size(), i + reach), first = i; i < last; ++i) {
    const Token& token = tokens[i];
    if (i > first && token.before != 0) break;
    if (const auto& match = tokens.match(i); match.found()) return match;
    if (!token.number && !token.spent && !token.is(light_roles | role_of | role_counter)) break;
  }
  return {};
}

/// "green beans with corn", "beans (and 2 cups corn)", but not "2 tsp with the beans": a food that is told
/// beside the line's own. Of a line of alternatives it makes one that is not clear.
void see_food_beside(const Tokens& tokens, const Index& index, LineReading& reading) {
  if (reading.foods.empty()) return;
  for (std::size_t i = 1; i + 1 < tokens.size(); ++i) {
    const Token& token = tokens[i];
    const bool joins =
        token.text == "with" || token.text == "plus" || (token.is(role_and) && token.before == '(');
    const auto match = joins && tokens[i + 1].text != "the" ? food_ahead(tokens, i + 1) : NameMatch{};
    if (!match.found()) continue;
    const Food& food = index.foods[match.food];
    const bool own = std::any_of(reading.foods.begin(), reading.foods.end(), [&](const Named& named) {
      return named.food != nullptr &&
             (named.food == &food || named.food->parent == food.id || food.parent == named.food->id);
    });
    if (own || food.acid_class == AcidClass::neutral || food.kind == "liquid") continue;
    const auto from = tokens[match.first].begin;
    std::string name(tokens.line().substr(from, tokens[match.last].end - from));
    if (reading.foods.size() > 1 && !reading.all_of) {
      reading.unknown.push_back(std::move(name));
      continue;
    }
    reading.foods.push_back({&food, std::move(name), false, std::nullopt});
    reading.all_of = true;
  }
}

void finish(const TellsStates& told, const Index& index, LineReading& reading) {
  reading.all_of = reading.all_of && reading.foods.size() > 1;  // the same food twice is one
  reading.states.reserve(reading.states.size() + told.size());
  for (const auto& state : told) reading.states.push_back(index.phrases.state(state.state).name);
  find_weight(told, index, reading);
}

/// What one of the words of `state:` tells.
void read_given_state(std::string_view state, quantity::Units units, const Index& index, TellsStates& told,
                      LineReading& reading) {
  const text::Words words(state);
  const Tokens tokens(state, words, index);
  const auto said = read_states(tokens, index, 0, tokens.size());
  told.insert(told.end(), said.begin(), said.end());
  LineReading remarks;
  read_remarks(tokens, units, remarks);
  reading.optional = reading.optional || remarks.optional;
  reading.not_eaten = reading.not_eaten || remarks.not_eaten;
  if (remarks.piece) reading.piece = remarks.piece;
  if (remarks.strength_percent) reading.strength_percent = remarks.strength_percent;
  if (said.empty()) reading.states.push_back(text::fold(state));
}

}  // namespace

LineReading read_line(std::string_view line, quantity::Units units, const Index& index) {
  LineReading reading;
  const text::Words words(line);
  Tokens tokens(line, words, index);
  auto amounts = read_amounts(tokens, units);
  tokens.match_names();
  read_remarks(tokens, units, reading);
  const auto told = read_items(tokens, amounts, {}, index, reading);
  reading.amount = std::move(amounts.first);
  see_food_beside(tokens, index, reading);
  finish(told, index, reading);
  return reading;
}

LineReading read_parts(std::string_view food, std::string_view amount,
                       std::span<const std::string_view> states, quantity::Units units, const Index& index) {
  LineReading reading;
  const text::Words words(food);
  Tokens tokens(food, words, index);
  LineAmounts amounts;
  if (auto given = quantity::read_amount(amount, units, true)) amounts.first = std::move(*given);
  tokens.match_names();
  read_remarks(tokens, units, reading);
  TellsStates given;
  for (const auto state : states) read_given_state(state, units, index, given, reading);
  const auto told = read_items(tokens, amounts, given, index, reading);
  reading.amount = std::move(amounts.first);
  see_food_beside(tokens, index, reading);
  finish(told, index, reading);
  return reading;
}

const Food* read_whole_name(std::string_view text, const Index& index) {
  const text::Words words(text);
  if (words.empty()) return nullptr;
  Tokens tokens(text, words, index);
  tokens.match_names();
  const auto& match = tokens.match(0);
  if (match.found() && match.last + std::size_t{1} == tokens.size()) {
    const auto told = read_states(tokens, index, 0, tokens.size());
    return &index.foods[meant_food(match.food, match.node, told, {}, index).front()];
  }
  const auto reading = read_line(text, quantity::Units::us, index);
  return reading.foods.size() == 1 && reading.unknown.empty() ? reading.foods.front().food : nullptr;
}

}  // namespace sealworthy::foods
