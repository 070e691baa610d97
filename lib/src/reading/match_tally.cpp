#include "reading/match_tally.hpp"

#include <algorithm>
#include <bit>
#include <utility>

namespace sealworthy::reading {
namespace {

constexpr std::size_t most_units = 64;

std::uint64_t bit(std::size_t line) { return std::uint64_t{1} << line; }

}  // namespace

SaidForms read_words(const Reading& reading, const MatchIndex::Impl& index) {
  SaidForms out;
  out.words = index.forms.in_title(reading.title, out.named);
  out.steps = index.forms.in_steps(reading.steps);
  for (const auto& ingredient : reading.ingredients) {
    if (ingredient.read.not_eaten) continue;
    if (ingredient.food == nullptr) continue;
    const std::size_t food = index.number(*ingredient.food);
    out.foods |= index.food_forms[food];
    // A liquid has no form that matters: pears may lie in canned juice.
    if (index.telling[food] == Telling::body && ingredient.food->kind != "liquid")
      out.words |= index.forms.in_line(ingredient.read);
  }
  out.last = index.forms.in_the_end(out.all());
  return out;
}

int Candidate::differences() const { return std::popcount(missing) + foreign; }

Tally::Tally(const Reading& reading, const MatchIndex::Impl& index)
    : index_(index), counts_(std::exchange(spare(), {})) {
  if (counts_.size() < index.entries.size()) counts_.resize(index.entries.size());
  units_.reserve(reading.ingredients.size() + 2);
  for (std::size_t i = 0; i < reading.ingredients.size(); ++i) {
    const auto& read = reading.ingredients[i].read;
    const bool in_jar = !read.not_eaten;
    const bool all_known = std::none_of(read.foods.begin(), read.foods.end(),
                                        [](const foods::Named& named) { return named.food == nullptr; });
    if (in_jar && all_known && !read.unknown.empty()) ++unknown_;
    if (read.foods.empty()) continue;
    if (read.all_of)
      for (const auto& named : read.foods) units_.push_back({i, &named, 1, in_jar});
    else
      units_.push_back({i, read.foods.data(), read.foods.size(), in_jar});
  }
  for (std::size_t i = 0; i < units_.size(); ++i) {
    classify(i);
    if (i >= most_units) continue;
    if (units_[i].size > 1)
      place_any(i);
    else if (units_[i].first->food != nullptr)
      place_one(i);
  }
}

Tally::~Tally() {
  for (const auto entry : touched_) counts_[entry] = {};
  spare() = std::move(counts_);
}

std::vector<Tally::Count>& Tally::spare() {
  static thread_local std::vector<Count> counts;
  return counts;
}

void Tally::touch(const Place& place, std::size_t unit) {
  auto& count = counts_[place.entry];
  if (count.covered == 0) touched_.push_back(place.entry);
  count.covered |= bit(place.line);
  count.units |= bit(unit);
}

/// Of alternatives the one that tells most; an unknown one is about the jar.
Telling Tally::telling(const Unit& unit) const {
  Telling most = Telling::water;
  for (std::size_t k = 0; k < unit.size; ++k)
    most = std::max(most, unit.first[k].food == nullptr ? Telling::body
                                                        : index_.telling[index_.number(*unit.first[k].food)]);
  return most;
}

void Tally::classify(std::size_t unit) {
  if (!units_[unit].in_jar) return;
  const Telling tells = telling(units_[unit]);
  if (unit >= most_units) {
    if (tells >= Telling::flavor) ++beyond_;
    return;
  }
  if (tells >= Telling::helper) main_ |= bit(unit);
  if (tells == Telling::body) body_ |= bit(unit);
  if (tells == Telling::flavor) flavor_ |= bit(unit);
}

void Tally::place_one(std::size_t unit) {
  const auto food = index_.number(*units_[unit].first->food);
  for (const auto& place : index_.telling_places(food)) touch(place, unit);
  if (!index_.common_places(food).empty()) common_ |= bit(unit);
}

/// Alternatives need a place for each of them, and cover a line only if each does.
void Tally::place_any(std::size_t unit) {
  const auto& named = units_[unit];
  std::size_t rarest = 0, fewest = 0;
  for (std::size_t k = 0; k < named.size; ++k) {
    if (named.first[k].food == nullptr) return;
    const auto food = index_.number(*named.first[k].food);
    const auto places = index_.telling_places(food).size() + index_.common_places(food).size();
    if (k == 0 || places < fewest) rarest = k, fewest = places;
  }
  const auto first = index_.number(*named.first[rarest].food);
  for (const auto places : {index_.telling_places(first), index_.common_places(first)})
    for (const auto& place : places) {
      const auto takes = [&](const foods::Named& one) {
        return (index_.lines_for(index_.number(*one.food), place.entry) & bit(place.line)) != 0;
      };
      if (std::all_of(named.first, named.first + named.size, takes)) touch(place, unit);
    }
}

Tally::Count Tally::whole(std::uint16_t entry) const {
  auto count = counts_[entry];
  for (std::uint64_t left = common_; left != 0; left &= left - 1) {
    const auto i = static_cast<std::size_t>(std::countr_zero(left));
    const auto lines = index_.common_lines_for(index_.number(*units_[i].first->food), entry);
    if (lines == 0) continue;
    count.covered |= lines;
    count.units |= bit(i);
  }
  return count;
}

bool Tally::may_be_near(std::size_t number) const {
  const auto& count = counts_[number];
  const int foreign = std::popcount(body_ & ~count.units) + beyond_ + unknown_;
  if (foreign > index_.most_foreign[number]) return false;
  const auto& brief = index_.briefs[number];
  if ((brief.main & count.covered) == 0 || !shares_body(number)) return false;
  const int missing = std::popcount(brief.needs & ~count.covered);
  return 2 * (missing + foreign) <= std::max(brief.required - missing + 1, 2 * brief.at_least);
}

int Tally::least_differences(std::size_t number) const {
  const auto& count = counts_[number];
  return std::popcount(index_.briefs[number].needs & ~count.covered) + std::popcount(body_ & ~count.units) +
         beyond_ + unknown_;
}

bool Tally::has_place(const Unit& unit, const Entry& entry) const {
  const auto number = static_cast<std::uint16_t>(&entry - index_.entries.data());
  return std::all_of(unit.first, unit.first + unit.size, [&](const foods::Named& named) {
    return named.food != nullptr && index_.lines_for(index_.number(*named.food), number) != 0;
  });
}

/// How many different foods of the card stand in the line of `any_of`.
int Tally::different_foods(const Entry& entry) const {
  const auto number = static_cast<std::uint16_t>(&entry - index_.entries.data());
  std::vector<const foods::Food*> seen;
  for (const auto& unit : units_) {
    const auto* food = unit.first->food;
    if (!unit.in_jar || food == nullptr || std::find(seen.begin(), seen.end(), food) != seen.end()) continue;
    if ((index_.lines_for(index_.number(*food), number) & bit(static_cast<std::size_t>(entry.any_line))) != 0)
      seen.push_back(food);
  }
  return static_cast<int>(seen.size());
}

Candidate Tally::candidate(std::size_t number, const SaidForms& words) const {
  const auto& entry = index_.entries[number];
  const auto count = whole(static_cast<std::uint16_t>(number));
  Candidate out;
  out.entry = &entry;
  out.covered = count.covered;
  if (entry.at_least > 1 && different_foods(entry) < entry.at_least)
    out.covered &= ~bit(static_cast<std::size_t>(entry.any_line));
  out.missing = entry.required & ~out.covered;
  out.shared = std::popcount(entry.required & out.covered);
  out.foreign = std::popcount(main_ & ~count.units) + beyond_ + unknown_;
  const int flavors = std::popcount(flavor_ & ~count.units);
  if (entry.plain())
    out.foreign += flavors;
  else
    out.flavor_differences = flavors + std::popcount(entry.flavor & ~out.covered);
  const FormSet said = words.all();
  const FormSet decides = entry.plain() ? index_.forms.deciding_plain() & (words.words | words.steps)
                                        : index_.forms.deciding() & words.words;
  out.contradicted = (decides & ~entry.covers) | (words.last & entry.none);
  out.said = (entry.any & said) != 0;
  out.unsaid = entry.any != 0 && !out.said;
  out.unlikely = out.unsaid && (entry.any & ~index_.forms.only_said()) == 0;
  out.other_dish = (words.words & index_.forms.dishes() & ~entry.covers) != 0;
  out.named = words.named.has(entry.index);
  return out;
}

std::vector<std::size_t> Tally::foreign(const Entry& entry) const {
  std::vector<std::size_t> out;
  for (const auto& unit : units_) {
    const Telling tells = telling(unit);
    const bool counts = tells >= Telling::helper || (tells == Telling::flavor && entry.plain());
    if (unit.in_jar && counts && !has_place(unit, entry)) out.push_back(unit.ingredient);
  }
  return out;
}

}  // namespace sealworthy::reading
