#include "foods/items.hpp"

#include <algorithm>
#include <utility>

#include "foods/instead.hpp"
#include "foods/name_reader.hpp"
#include "foods/name_region.hpp"

namespace sealworthy::foods {
namespace {

constexpr std::size_t most_items = 8;          ///< foods of one list without amounts
constexpr std::size_t longest_refinement = 4;  ///< words of a remark that makes a name more exact

void append(TellsStates& told, const TellsStates& more) {
  for (const auto& state : more)
    if (std::none_of(told.begin(), told.end(), [&](const Told& t) { return t.state == state.state; }))
      told.push_back(state);
}

class ItemReader {
 public:
  ItemReader(const Tokens& tokens, LineAmounts& amounts, const Index& index, LineReading& out)
      : tokens_(tokens), amounts_(amounts), index_(index), out_(out) {}
  TellsStates read(const TellsStates& given);

 private:
  using OwnAmount = std::optional<quantity::Amount>;

  void read_region(const NameRegion& region, const OwnAmount& amount);
  void read_listed(std::size_t from);
  void read_bracketed(std::size_t from);
  void read_further(std::size_t from);
  void read_other_state(std::size_t from, const OwnAmount& amount);
  void read_behind_first(std::size_t from);
  void read_counted_food();
  void add(NamePart part, const OwnAmount& amount);
  void add_food(FoodId food, std::string name, bool slip, const OwnAmount& amount);
  void append_written(const Part& part, const std::string& written);
  bool refine(const NameRegion& region, NamePart& part) const;
  [[nodiscard]] std::size_t remark_behind(const NameRegion& region) const;
  [[nodiscard]] TellsStates states_of_first(std::size_t from) const;
  [[nodiscard]] std::size_t end_of_first(std::size_t from) const;
  [[nodiscard]] std::size_t name_behind(const FurtherAmount& further, std::size_t from) const;
  [[nodiscard]] std::string_view unit() const;

  const Tokens& tokens_;
  LineAmounts& amounts_;
  const Index& index_;
  LineReading& out_;
  TellsStates told_;  ///< for the item being read
};

std::string_view ItemReader::unit() const {
  const auto& amount = amounts_.first;
  const bool counted = std::holds_alternative<Interval<Count>>(amount.measure);
  return counted && amount.unit.empty() ? std::string_view("each") : std::string_view(amount.unit);
}

void ItemReader::add_food(FoodId food, std::string name, bool slip, const OwnAmount& amount) {
  const Food* found = &index_.foods[food];
  const auto same = [&](const Named& named) {
    return named.food == found && (named.name == name || text::fold(named.name) == text::fold(name));
  };
  if (std::any_of(out_.foods.begin(), out_.foods.end(), same)) return;
  auto& named = out_.foods.emplace_back();
  named.food = found;
  named.name = std::move(name);
  named.slip = slip;
  if (amount) named.amount = amount;
}

void ItemReader::add(NamePart part, const OwnAmount& amount) {
  if (part.name.empty() && part.food == no_food) return;
  if (!part.whole) out_.unknown.push_back(part.name);
  if (part.food == no_food) {
    out_.foods.push_back({nullptr, std::move(part.name), false, amount});
    return;
  }
  const std::string_view by = amount ? std::string_view(amount->unit) : unit();
  const auto meant = meant_food(part.food, part.node, told_, by, index_);
  for (std::size_t i = 1; i < meant.size(); ++i) add_food(meant[0], part.name, part.slip, amount);
  add_food(meant.back(), std::move(part.name), part.slip, amount);
}

/// The first word behind the name that is not of the line's amount: "salt, 3 tsp, *pickling*".
std::size_t ItemReader::remark_behind(const NameRegion& region) const {
  std::size_t i = region.parts.front().last + 1;
  const auto of_first = [&](const Token& token) {
    return token.spent && token.begin < amounts_.first.end && token.end > amounts_.first.begin;
  };
  while (i < tokens_.size() && of_first(tokens_[i])) ++i;
  return i;
}

/// "peppers, jalapeno", "beans (lima)", "1 lemon, zest": the words of a short remark make the name more
/// exact.
bool ItemReader::refine(const NameRegion& region, NamePart& part) const {
  const auto first = remark_behind(region);
  Part remark{first, first};
  for (std::size_t i = first; i < tokens_.size() && i < first + longest_refinement; ++i) {
    const auto& token = tokens_[i];
    if (token.depth != tokens_[first].depth || (i > first && token.before != 0) || token.is(role_of)) break;
    if (token.spent || !token.food_word || token.is(role_or | role_and | role_state | role_ends))
      return false;
    remark.last = i;
  }
  if (first >= tokens_.size() || !tokens_[first].food_word || tokens_[first].spent) return false;
  const Part& head = region.parts.front();
  for (const bool remark_first : {true, false}) {
    const auto joined = remark_first ? read_joined(tokens_, remark, head, index_)
                                     : read_joined(tokens_, head, remark, index_);
    if (joined.food == no_food) continue;
    part.food = joined.food;
    part.node = joined.node;
    part.slip = part.slip || joined.slip;
    return true;
  }
  return false;
}

/// Adds an alternative to the name as written, with the joiner that stands before it.
void ItemReader::append_written(const Part& part, const std::string& written) {
  if (written.empty()) return;
  if (!out_.name.empty()) {
    std::string joiner = ", ";
    for (std::size_t i = part.first; i-- > 0;) {
      const auto& token = tokens_[i];
      if (token.is(role_or | role_and))
        joiner = " " + std::string(tokens_.line().substr(token.begin, token.end - token.begin)) + " ";
      if (token.depth == tokens_[part.first].depth) break;
    }
    out_.name += joiner;
  }
  out_.name += written;
}

void ItemReader::read_region(const NameRegion& region, const OwnAmount& amount) {
  const Part& last = region.parts.back();
  const bool first_item = out_.foods.empty();
  for (const auto& alternative : region.parts) {
    auto part = read_name(tokens_, alternative, &alternative == &last ? nullptr : &last, index_);
    const bool single = region.parts.size() == 1;
    const bool refined = single && refine(region, part);
    if (first_item) append_written(alternative, part.written.empty() ? part.name : part.written);
    const bool known = part.food != no_food;
    add(std::move(part), amount);
    if (single && !refined && first_item && known) read_listed(region.end);
  }
  if (region.parts.size() > 1 && !region.either) out_.all_of = true;
}

/// "salt, pepper, sugar": a remark that is the name of a food and nothing else is another food.
void ItemReader::read_listed(std::size_t from) {
  const auto parted = [&](std::size_t i) {
    static constexpr std::string_view marks = ",.();";
    return i >= tokens_.size() || marks.find(tokens_[i].before) != std::string_view::npos;
  };
  for (std::size_t items = 0; items < most_items && from < tokens_.size(); ++items) {
    const auto& token = tokens_[from];
    const auto& match = tokens_.match(from);
    if (!match.found() || token.depth != 0 || token.spent || token.before == 0 || !parted(from)) return;
    if (!parted(match.last + std::size_t{1})) return;
    const bool one_word = match.last == from;
    if (one_word && token.is(role_state | role_quality | role_counter | role_ends)) return;
    add(read_name(tokens_, {from, match.last}, nullptr, index_), std::nullopt);
    out_.all_of = out_.foods.size() > 1;
    from = match.last + std::size_t{1};
  }
}

/// "2 tbsp pickling salt (or 4 tbsp kosher salt)".
void ItemReader::read_bracketed(std::size_t from) {
  for (std::size_t i = from; i + 1 < tokens_.size(); ++i) {
    const auto& token = tokens_[i];
    const bool opens = token.before == '(' && token.depth == 1 && token.text == "or";
    if (!opens) continue;
    const auto region = find_name(tokens_, i + token.length);
    if (region.parts.empty() || tokens_[region.parts.front().first].depth == 0) continue;
    const Part& last = region.parts.back();
    OwnAmount amount;
    for (auto& further : amounts_.further)
      if (further.token > i && further.token < region.parts.front().first && !further.used) {
        amount = further.amount;
        further.used = true;
        break;
      }
    told_ = read_states(tokens_, index_, i, region.end);
    for (const auto& alternative : region.parts) {
      auto part = read_name(tokens_, alternative, &alternative == &last ? nullptr : &last, index_);
      if (part.food != no_food) add(std::move(part), amount);
    }
    return;
  }
}

/// Where the name of a further amount's food starts; tokens.size() if it measures no food of its own ("cut in
/// 4 pieces", "2 cups corn, about 1 pound").
std::size_t ItemReader::name_behind(const FurtherAmount& further, std::size_t from) const {
  const auto i = further.token;
  const auto none = tokens_.size();
  if (i < from || i == 0 || tokens_[i].depth > 0) return none;
  const auto& before = tokens_[i - 1];
  // a word that ends a name is in order right behind it: "2 cups sugar *to* 1 quart water"
  if (before.is(role_ends) && !before.is(role_and | role_or) && i - 1 != from) return none;
  std::size_t next = i;
  while (next < none && tokens_[next].spent) ++next;
  while (next < none && tokens_[next].is(light_roles | role_of) && !tokens_.match(next).found()) ++next;
  const bool found = next < none && tokens_[next].depth == 0 && tokens_.match(next).found();
  return found ? next : none;
}

/// "... or 1 tbsp dried": the same food in another state.
void ItemReader::read_other_state(std::size_t from, const OwnAmount& amount) {
  told_ = read_states(tokens_, index_, from, tokens_.size());
  if (told_.empty() || out_.foods.size() != 1 || out_.foods.front().food == nullptr) return;
  const auto food = static_cast<FoodId>(out_.foods.front().food - index_.foods.data());
  for (const FoodId other : meant_food(food, Trie::none, told_, {}, index_))
    if (other != food) add_food(other, out_.foods.front().name, false, amount);
}

/// "3 eggs, 1 egg yolk", "2 pounds peaches 1/2 teaspoon allspice": a further amount with a food behind it.
void ItemReader::read_further(std::size_t from) {
  for (auto& further : amounts_.further) {
    const auto i = further.token;
    if (i < from || further.used) continue;
    const bool either = i > 0 && tokens_[i - 1].is(role_or);
    const auto next = name_behind(further, from);
    if (next >= tokens_.size()) {
      if (either && tokens_[i].depth == 0 && !further.amount.unit.empty()) {
        read_other_state(i, further.amount);
        further.used = out_.foods.size() > 1;
      }
      continue;
    }
    const auto region = find_name(tokens_, next);
    if (region.parts.empty()) continue;
    const auto before = out_.foods.size();
    told_ = read_states(tokens_, index_, i, end_of_first(region.end));
    read_region(region, further.amount);
    further.used = out_.foods.size() > before;
    if (further.used && !either) out_.all_of = true;
    from = region.end;
  }
}

/// "very light: 6 1/2 water 3/4 cup sugar": the amount of the line stands behind one food and before another.
void ItemReader::read_behind_first(std::size_t from) {
  std::size_t i = from;
  while (i < tokens_.size() && tokens_[i].begin < amounts_.first.begin) ++i;
  if (i >= tokens_.size() || !tokens_[i].amount_start || tokens_[i].begin >= amounts_.first.end) return;
  const auto next = name_behind({i, {}, false}, from);
  if (next >= tokens_.size()) return;
  const auto region = find_name(tokens_, next);
  if (region.parts.empty()) return;
  read_region(region, std::nullopt);
  out_.all_of = out_.foods.size() > 1;
}

/// "6 cloves": the unit is the food.
void ItemReader::read_counted_food() {
  for (std::size_t i = 0; i < tokens_.size(); ++i) {
    const auto& token = tokens_[i];
    if (!token.spent || !token.food_word || token.number) continue;
    const Trie::Node node = index_.names.child(Trie::root, token.lemma);
    const FoodId food = node == Trie::none ? no_food : index_.food_at(node, token.plural);
    if (food == no_food) continue;
    NamePart part;
    part.name = std::string(tokens_.line().substr(token.begin, token.end - token.begin));
    part.food = food;
    part.node = node;
    out_.name = part.name;
    add(std::move(part), std::nullopt);
    return;
  }
}

/// The states of the first food: those up to an alternative with an amount of its own ("or 1 tbsp dried
/// flakes"), and those of remarks behind it, which are about both ("or 1 large, quartered").
TellsStates ItemReader::states_of_first(std::size_t from) const {
  const auto end = end_of_first(from);
  auto told = read_states(tokens_, index_, 0, end);
  for (std::size_t i = end + 1; i < tokens_.size(); ++i)
    if (tokens_[i].before == ',' && tokens_[i].depth == 0) {
      append(told, read_states(tokens_, index_, i, tokens_.size()));
      break;
    }
  return told;
}

/// Where the words about the first food end: before "or 1 tbsp dried flakes".
std::size_t ItemReader::end_of_first(std::size_t from) const {
  for (std::size_t i = from; i + 1 < tokens_.size(); ++i)
    if (tokens_[i].depth == 0 && tokens_[i].is(role_or) && tokens_[i + 1].amount_start) return i;
  return tokens_.size();
}

TellsStates ItemReader::read(const TellsStates& given) {
  const auto region = find_name(tokens_, 0);
  auto told =
      region.parts.empty() ? read_states(tokens_, index_, 0, tokens_.size()) : states_of_first(region.end);
  append(told, given);
  told_ = told;
  if (!region.parts.empty()) read_region(region, std::nullopt);
  if (out_.foods.empty()) {
    read_counted_food();
  } else {
    read_bracketed(region.parts.back().last + 1);
    read_behind_first(region.end);
    read_further(region.end);
  }
  for (auto& further : amounts_.further)
    if (!further.used) out_.more.push_back(std::move(further.amount));
  return told;
}

}  // namespace

TellsStates read_items(const Tokens& tokens, LineAmounts& amounts, const TellsStates& given,
                       const Index& index, LineReading& reading) {
  return ItemReader(tokens, amounts, index, reading).read(given);
}

}  // namespace sealworthy::foods
