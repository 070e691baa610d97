// Matching a card with a tested product and comparing its amounts, over the cards of
// tests/data/identities.yaml and one card for each published formula. The mean must stay at or under 8
// microseconds a card.

#include <algorithm>
#include <cstdio>
#include <ctime>

#include "tested/compare.hpp"
#include "unit/reading/identities.hpp"

namespace {

using namespace sealworthy;
using Cards = std::vector<std::unique_ptr<cards::Card>>;

Cards plain_cards() {
  Cards out;
  for (const auto& group : cards::list("found"))
    for (const auto& node : group.find("cards")->items) out.push_back(cards::read_node(node));
  return out;
}

Cards missing_cards() {
  Cards out;
  for (const auto& node : cards::list("misses")) out.push_back(cards::read_node(node));
  return out;
}

Cards formula_cards() {
  Cards out;
  for (const auto& product : cards::known().tables.products())
    if (product.formula) out.push_back(cards::write(product.title, cards::lines_of(*product.formula)));
  return out;
}

/// Microseconds of processor time a card, of the fastest of five runs.
template <class Run>
double fastest(const Cards& all, Run run) {
  constexpr int rounds = 20;
  double best = 1e9;
  for (int i = 0; i < 5; ++i) {
    const std::clock_t begin = std::clock();
    for (int round = 0; round < rounds; ++round)
      for (const auto& card : all) run(*card);
    const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    best = std::min(best, seconds * 1e6 / static_cast<double>(all.size() * rounds));
  }
  return best;
}

double measure(const char* what, const Cards& all, std::size_t& kept) {
  const double matching = fastest(all, [&](const cards::Card& card) {
    kept += reading::match(card.reading).product != nullptr ? 1U : 0U;
  });
  const double both = fastest(all, [&](const cards::Card& card) {
    const auto match = reading::match(card.reading);
    if (match.product != nullptr && match.product->formula && match.compared == nullptr)
      kept += tested::compare(*match.product, card.reading).differences();
  });
  std::printf("%-8s %4zu cards  match %5.2f us  match and compare %5.2f us a card\n", what, all.size(),
              matching, both);
  return both * static_cast<double>(all.size());
}

}  // namespace

int main() {
  const Cards plain = plain_cards(), formula = formula_cards(), misses = missing_cards();
  std::size_t kept = 0;
  double total = measure("plain", plain, kept);
  total += measure("formula", formula, kept);
  total += measure("misses", misses, kept);
  const double mean = total / static_cast<double>(plain.size() + formula.size() + misses.size());
  std::printf("mean %.2f us a card (%zu)\n", mean, kept);
  return mean <= 8.0 ? 0 : 1;
}
