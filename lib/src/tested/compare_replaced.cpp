#include "tested/compare_replaced.hpp"

#include <algorithm>

#include "tested/compare_amounts.hpp"

namespace sealworthy::tested {
namespace {

bool same_amount(const LineComparison& line, const quantity::Amount& card) {
  const auto found = sizes_of(card);
  for (const auto& amount : line.line->amounts)
    for (const auto& size : sizes_of(amount)) {
      const auto published = size.times(line.line->per_jar ? 1 : line.factor);
      for (const auto& one : found)
        if (one.beside(published) && beside(one.value, published.value).result == Beside::Result::equal)
          return true;
    }
  return false;
}

bool same_kind(const LineComparison& line, const foods::Food& food, const foods::Catalogue& catalogue) {
  return std::any_of(line.line->foods.begin(), line.line->foods.end(), [&](const auto& id) {
    const auto* published = catalogue.find(id);
    return published != nullptr && published->kind == food.kind;
  });
}

/// Only what pours is held for a stand-in of an acid by its amount alone: corn is added, the vinegar left
/// out.
bool pours(const foods::Food& food) { return food.kind == "liquid" || food.kind == "acid"; }

}  // namespace

void pair_replaced(const reading::Reading& reading, FormulaComparison& result) {
  struct Likeness {
    int score;
    std::size_t line, added;
  };
  std::vector<Likeness> all;
  for (std::size_t i = 0; i < result.lines.size(); ++i) {
    const auto& line = result.lines[i];
    if (line.state != LineComparison::State::missing || line.dry_spice) continue;
    for (std::size_t j = 0; j < result.added.size(); ++j) {
      const auto& added = result.added[j];
      if (added.food == nullptr || added.change != nullptr || added.dry_spice || added.salt) continue;
      const auto& read = reading.ingredients[added.ingredient].read;
      if (read.per_jar != line.line->per_jar) continue;  // acid for each jar stands beside the formula
      const bool alike = same_kind(line, *added.food, *reading.catalogue);
      if (!alike && line.line->role == "acid" && !pours(*added.food)) continue;
      const int score = (alike ? 2 : 0) + (same_amount(line, read.amount) ? 1 : 0);
      if (score > 0) all.push_back({score, i, j});
    }
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Likeness& a, const Likeness& b) { return a.score > b.score; });
  for (const auto& [score, i, j] : all) {
    auto& line = result.lines[i];
    auto& added = result.added[j];
    if (line.replaced_by != LineComparison::none || added.replaces != LineComparison::none) continue;
    line.replaced_by = j;
    added.replaces = i;
  }
}

}  // namespace sealworthy::tested
