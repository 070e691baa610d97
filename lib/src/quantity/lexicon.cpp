#include "quantity/lexicon.hpp"

#include <algorithm>
#include <array>

#include "quantity/lexicon_words.hpp"
#include "quantity/unit_list.hpp"
#include "quantity/word_table.hpp"

namespace sealworthy::quantity {
namespace {

constexpr const Unit* named(std::string_view name) {
  for (const auto& unit : unit_list)
    if (unit.name == name) return &unit;
  return nullptr;
}

using Table = WordTable<Meaning, 1024>;

/// A spelling of a unit that is not in the list does not compile.
constexpr Table make_table() {
  Table table;
  for (const auto& row : spellings) {
    const auto* unit = named(row.unit);
    if (unit == nullptr) throw "a spelling of no unit";
    words_of(row.words, [&](std::string_view word) { table.add(word, {Role::unit, 0, unit, {}}); });
  }
  for (const auto& row : number_words) table.add(row.word, {Role::number, row.value, nullptr, {}});
  for (const auto& row : fraction_words) table.add(row.word, {Role::fraction, row.value, nullptr, {}});
  for (const auto& row : size_words)
    words_of(row.words, [&](std::string_view word) { table.add(word, {Role::size, 0, nullptr, row.unit}); });
  const auto add_all = [&](std::string_view list, Role role) {
    words_of(list, [&](std::string_view word) { table.add(word, {role, 1, nullptr, {}}); });
  };
  add_all(articles, Role::article);
  add_all(about_words, Role::about);
  add_all(modifiers, Role::modifier);
  add_all(lead_words, Role::lead);
  add_all(joint_words, Role::joint);
  return table;
}

constexpr Table table = make_table();
constexpr Meaning nothing{};

constexpr const Unit* tablespoon = named("tbsp");
constexpr const Unit* pound = named("lb");

const Unit* spelled(std::string_view word, std::uint32_t hash) {
  const auto* found = table.find(word, hash);
  return found == nullptr ? nullptr : found->unit;
}

/// The unit a word spells; only "T" against "t" depends on case.
const Unit* unit_of(std::string_view text, const Letters& word) {
  const auto* unit = meaning(word).unit;
  return word.is("t") && char_at(text, word.begin(), 'T') ? tablespoon : unit;
}

/// Past "(s)", "'s" and a full stop that belongs to the unit.
std::size_t unit_tail(std::string_view text, std::size_t at) {
  if (starts_at(text, at, "(s)")) at += 3;
  if (starts_at(text, at, "'s") || starts_at(text, at, "'S")) at += 2;
  if (starts_at(text, at, "\xE2\x80\x99s")) at += 4;
  return char_at(text, at, '.') ? at + 1 : at;
}

/// "10cupspickling", "cloveGarlic": the longest spelling that the word starts with. A capital inside a word
/// shows where it ran together. Without one, short spellings and counts in the singular would cut foods
/// ("2canola") and are left.
std::optional<UnitMatch> run_together(std::string_view text, const Letters& word, bool glued) {
  const auto at = word.begin();
  std::array<std::uint32_t, 14> hashes{};
  auto hash = Letters::hash_start;
  const auto longest = std::min(word.view().size(), hashes.size() - 1);
  for (std::size_t i = 0; i < longest; ++i) hashes[i + 1] = hash = Letters::hash_step(hash, word.view()[i]);
  for (std::size_t size = longest; size >= 3; --size) {
    const auto* unit = spelled(word.view().substr(0, size), hashes[size]);
    if (unit == nullptr) continue;
    const bool capital = text[at + size] >= 'A' && text[at + size] <= 'Z' && text[at + size - 1] >= 'a';
    const bool plain = glued && (unit->measures() || word.view()[size - 1] == 's');
    if (capital || plain) return UnitMatch{unit, at, at + size, std::nullopt};
  }
  return std::nullopt;
}

struct Pair {
  std::string_view first;
  std::string_view second;  ///< a unit's name, or a word
  const Unit* unit;
};
constexpr std::array pairs{Pair{"fl", "oz", named("fl oz")},
                           Pair{"fluid", "oz", named("fl oz")},
                           Pair{"half", "pint", named("half-pint")},
                           Pair{"half", "gallon", named("half-gallon")},
                           Pair{"dry", "pint", named("dry pint")},
                           Pair{"dry", "quart", named("dry quart")},
                           Pair{"table", "spoon", named("tbsp")},
                           Pair{"table", "spoons", named("tbsp")},
                           Pair{"tea", "spoon", named("tsp")},
                           Pair{"tea", "spoons", named("tsp")},
                           Pair{"dessert", "spoon", named("dessertspoon")},
                           Pair{"dessert", "spoons", named("dessertspoon")},
                           Pair{"liquid", "pint", named("pint")},
                           Pair{"liquid", "quart", named("quart")},
                           Pair{"liquid", "cup", named("cup")},
                           Pair{"dry", "cup", named("cup")}};

/// "fl. oz.", "half-pint", "table spoons".
std::optional<UnitMatch> two_words(std::string_view text, const Letters& first) {
  const auto pair =
      std::find_if(pairs.begin(), pairs.end(), [&](const Pair& entry) { return first.is(entry.first); });
  if (pair == pairs.end()) return std::nullopt;
  const auto stop = char_at(text, first.end(), '.') ? first.end() + 1 : first.end();
  const auto second = next_word(text, stop);
  const auto* unit = unit_of(text, second);
  for (const auto& entry : pairs)
    if (first.is(entry.first) && (second.is(entry.second) || (unit != nullptr && unit->name == entry.second)))
      return UnitMatch{entry.unit, first.begin(), unit_tail(text, second.end()), std::nullopt};
  return std::nullopt;
}

std::optional<Units> kitchen_of(const Letters& word) {
  if (word.is("us") || word.is("american")) return Units::us;
  if (word.is("imperial") || word.is("british") || word.is("uk") || word.is("imp")) return Units::imperial;
  if (word.is("metric")) return Units::metric;
  return std::nullopt;
}

std::optional<UnitMatch> plain_unit(std::string_view text, const Letters& word) {
  if (const auto* unit = unit_of(text, word))
    return UnitMatch{unit, word.begin(), unit_tail(text, word.end()), std::nullopt};
  return two_words(text, word);
}

}  // namespace

const Unit* unit_named(std::string_view name) { return named(name); }

const Meaning& meaning(const Letters& word) {
  const auto* found = table.find(word);
  return found == nullptr ? nothing : *found;
}

std::optional<UnitMatch> unit_at(std::string_view text, std::size_t at, bool glued) {
  if (char_at(text, at, '#') && !digit_at(text, at + 1))  // "#10" is a can's number
    return UnitMatch{pound, at, unit_tail(text, at + 1), std::nullopt};
  const Letters word(text, at);
  if (word.empty()) return std::nullopt;
  if (auto match = plain_unit(text, word)) return match;
  if (const auto kitchen = kitchen_of(word)) {
    auto match = plain_unit(text, next_word(text, word.end()));
    if (!match || match->unit->kind != Kind::volume) return std::nullopt;
    match->begin = at;
    match->said = kitchen;
    return match;
  }
  return run_together(text, word, glued);
}

}  // namespace sealworthy::quantity
