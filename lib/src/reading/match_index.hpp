#pragma once

/// What MatchIndex holds: for each food the products (and the lines of them) that have a place for it, and
/// for each product what it asks for.

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "reading/forms.hpp"
#include "reading/match.hpp"

namespace sealworthy::reading {

/// How much a food tells about which product a card follows.
enum class Telling : std::uint8_t {
  water,   ///< may be anywhere
  salt,    ///< likewise
  flavor,  ///< dry spice or herb, food color: tells products with a formula apart, is never required
  helper,  ///< acid, sweetener, pectin: part of a formula, but many have it
  body     ///< what the jar is about
};

/// One place that a product has for a food.
struct Place {
  std::uint16_t entry;
  std::uint8_t line;
};

/// A product as matching sees it; a product whose formula has several versions has an entry for each.
struct Entry {
  const tested::Product* product = nullptr;
  std::uint16_t index = 0;  ///< of the product in Tables::products()
  const tested::Formula* formula = nullptr;
  std::uint64_t required = 0;                ///< lines that must have a food of the card, one bit each
  std::uint64_t body = 0;                    ///< lines with a food that the jar is about
  std::uint64_t main = 0;                    ///< lines for the product's main food
  std::uint64_t flavor = 0;                  ///< lines with only flavor or salt, not optional
  std::uint64_t may_lack = 0;                ///< lines that a harmless change leaves out or fills otherwise
  std::vector<std::string_view> line_names;  ///< for messages: "bottled lemon juice"
  int any_line = -1;                         ///< the line of Identity::any_of
  int at_least = 1;
  FormSet any = 0, none = 0, covers = 0;

  [[nodiscard]] bool plain() const { return formula == nullptr; }
};

struct MatchIndex::Impl {
  Forms forms;
  const tested::Tables* tables = nullptr;
  const foods::Catalogue* catalogue = nullptr;
  std::vector<Entry> entries;
  /// By entry, side by side: what is looked at for every product that shares a food with a card.
  struct Brief {
    std::uint64_t body = 0;     ///< lines with a food that the jar is about
    std::uint64_t needs = 0;    ///< those of them that are required
    std::uint64_t keeps = 0;    ///< those of these that no harmless change takes away
    std::uint64_t main = 0;     ///< lines one of which must have a food for the entry to be near
    std::uint8_t required = 0;  ///< how many required lines there are in all
    std::uint8_t at_least = 1;
    bool takes_more = false;  ///< a harmless change may bring in a food that the jar is about
  };
  std::vector<Brief> briefs;
  /// By entry, small enough to stay at hand: with more foods of the card without a place it is not near.
  std::vector<std::uint8_t> most_foreign;
  std::vector<Telling> telling;     ///< by food
  std::vector<FormSet> food_forms;  ///< by food: forms that it brings with it
  /// By food the places that tell which products are near, then those that a great many products have (the
  /// vinegar, salt and spice of a line that is not what the jar is about); each in the order of the entries.
  std::vector<Place> places;
  std::vector<std::uint32_t> starts;  ///< two for each food, and the end
  /// The common places again, by entry and in it by food, so that a look-up stays in a few cache lines.
  struct FoodLine {
    std::uint16_t food;
    std::uint8_t line;
  };
  std::vector<FoodLine> common;
  std::vector<std::uint32_t> common_starts;  ///< one for each entry, and the end

  /// Index of a food in Catalogue::all().
  [[nodiscard]] std::size_t number(const foods::Food& food) const {
    return static_cast<std::size_t>(&food - catalogue->all().data());
  }
  [[nodiscard]] std::span<const Place> telling_places(std::size_t food) const {
    return part(2 * food, 2 * food + 1);
  }
  [[nodiscard]] std::span<const Place> common_places(std::size_t food) const {
    return part(2 * food + 1, 2 * food + 2);
  }
  /// The lines of an entry that have a place for a food. Cost: two binary searches; one of a short list for
  /// the common ones.
  [[nodiscard]] std::uint64_t lines_for(std::size_t food, std::uint16_t entry) const;
  [[nodiscard]] std::uint64_t common_lines_for(std::size_t food, std::uint16_t entry) const;

 private:
  [[nodiscard]] std::span<const Place> part(std::size_t from, std::size_t to) const {
    return std::span(places).subspan(starts[from], starts[to] - starts[from]);
  }
};

/// How much a food tells, by its kind and class.
Telling telling_of(const foods::Food& food);

}  // namespace sealworthy::reading
