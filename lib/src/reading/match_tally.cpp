#include "reading/match_tally.hpp"

#include <algorithm>
#include <bit>

namespace sealworthy::reading {
namespace {

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
  return out;
}

int Candidate::differences() const { return std::popcount(missing) + foreign; }

Tally::Tally(const Reading& reading, const MatchIndex::Impl& index)
    : index_(index), counts_(index.entries.size()) {
  units_.reserve(reading.ingredients.size() + 2);
  touched_.reserve(counts_.size());
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
  for (const auto& unit : units_) place(unit);
}

Tally::Count& Tally::touch(std::uint16_t entry) {
  auto& count = counts_[entry];
  if (count.covered == 0) touched_.push_back(entry);
  return count;
}

/// Of alternatives the one that tells most; an unknown one is about the jar.
Telling Tally::telling(const Unit& unit) const {
  Telling most = Telling::water;
  for (std::size_t k = 0; k < unit.size; ++k)
    most = std::max(most, unit.first[k].food == nullptr ? Telling::body
                                                        : index_.telling[index_.number(*unit.first[k].food)]);
  return most;
}

void Tally::place(const Unit& unit) {
  ++unit_;
  const Telling tells = telling(unit);
  if (unit.in_jar && tells >= Telling::helper) ++total_main_;
  if (unit.in_jar && tells == Telling::flavor) ++total_flavor_;
  if (unit.size > 1)
    place_any(unit);
  else if (unit.first->food != nullptr)
    place_one(index_.number(*unit.first->food), tells, unit.in_jar);
}

void Tally::place_one(std::size_t food, Telling telling, bool in_jar) {
  for (const auto [entry, line] : index_.places_of(food)) {
    auto& count = touch(entry);
    count.covered |= bit(line);
    if (!in_jar || count.unit == unit_) continue;
    count.unit = unit_;
    if (telling >= Telling::helper) ++count.main;
    if (telling == Telling::flavor) ++count.flavor;
  }
}

/// Alternatives need a place for each of them, and cover a line only if each does.
void Tally::place_any(const Unit& unit) {
  std::vector<std::uint64_t> lines(counts_.size(), 0);
  for (std::size_t k = 0; k < unit.size; ++k) {
    const auto* food = unit.first[k].food;
    if (food == nullptr) return;
    std::vector<std::uint64_t> here(counts_.size(), 0);
    for (const auto [entry, line] : index_.places_of(index_.number(*food))) here[entry] |= bit(line);
    for (std::size_t e = 0; e < lines.size(); ++e) lines[e] = k == 0 ? here[e] : lines[e] & here[e];
  }
  const Telling tells = telling(unit);
  for (std::size_t e = 0; e < lines.size(); ++e) {
    if (lines[e] == 0) continue;
    auto& count = touch(static_cast<std::uint16_t>(e));
    count.covered |= lines[e];
    if (unit.in_jar && tells >= Telling::helper) ++count.main;
    if (unit.in_jar && tells == Telling::flavor) ++count.flavor;
  }
}

bool Tally::has_place(const Unit& unit, const Entry& entry) const {
  const auto number = static_cast<std::uint16_t>(&entry - index_.entries.data());
  for (std::size_t k = 0; k < unit.size; ++k) {
    if (unit.first[k].food == nullptr) return false;
    const auto places = index_.places_of(index_.number(*unit.first[k].food));
    if (std::none_of(places.begin(), places.end(), [&](const Place& p) { return p.entry == number; }))
      return false;
  }
  return true;
}

/// How many different foods of the card stand in the line of `any_of`.
int Tally::different_foods(const Entry& entry) const {
  const auto number = static_cast<std::uint16_t>(&entry - index_.entries.data());
  std::vector<const foods::Food*> seen;
  for (const auto& unit : units_) {
    const auto* food = unit.first->food;
    if (!unit.in_jar || food == nullptr || std::find(seen.begin(), seen.end(), food) != seen.end()) continue;
    for (const auto& place : index_.places_of(index_.number(*food)))
      if (place.entry == number && place.line == entry.any_line) {
        seen.push_back(food);
        break;
      }
  }
  return static_cast<int>(seen.size());
}

Candidate Tally::candidate(std::size_t number, const SaidForms& words) const {
  const auto& entry = index_.entries[number];
  const auto& count = counts_[number];
  Candidate out;
  out.entry = &entry;
  out.covered = count.covered;
  if (entry.at_least > 1 && different_foods(entry) < entry.at_least)
    out.covered &= ~bit(static_cast<std::size_t>(entry.any_line));
  out.missing = entry.required & ~out.covered;
  out.shared = std::popcount(entry.required & out.covered);
  out.foreign = total_main_ - count.main + unknown_;
  const int flavors = total_flavor_ - count.flavor;
  if (entry.plain())
    out.foreign += flavors;
  else
    out.flavor_differences = flavors + std::popcount(entry.flavor & ~out.covered);
  const FormSet said = words.all();
  const FormSet decides = entry.plain() ? index_.forms.deciding_plain() & (words.words | words.steps)
                                        : index_.forms.deciding() & words.words;
  out.contradicted = (decides & ~entry.covers) | (said & entry.none);
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
