// The science of a card: altitude and canner (3 microseconds a card at most) and the pH of a mixture (15 at
// most), over the published formulas. Fastest of five runs, processor time.

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <memory>

#include "science/card_mixture.hpp"
#include "unit/reading/identities.hpp"

namespace {

using namespace sealworthy;

template <class Run>
double fastest(std::size_t each, Run run) {
  constexpr int rounds = 200;
  double best = 1e9;
  for (int i = 0; i < 5; ++i) {
    const std::clock_t begin = std::clock();
    for (int round = 0; round < rounds; ++round) run();
    const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    best = std::min(best, seconds * 1e6 / static_cast<double>(each * rounds));
  }
  return best;
}

}  // namespace

int main() {
  const auto& known = cards::known();
  std::vector<std::unique_ptr<cards::Card>> all;
  std::vector<science::CardMixture> mixtures;
  for (const auto& product : known.tables.products()) {
    if (!product.formula) continue;
    all.push_back(cards::write(product.title, cards::lines_of(*product.formula)));
    mixtures.push_back(science::mixture_of(all.back()->reading, known.acidity));
  }
  double kept = 0;
  std::size_t places = 0;
  const double physics = fastest(1000, [&] {
    for (int i = 0; i < 1000; ++i) {
      const Altitude at = feet(static_cast<double>(places++ % 10000));
      kept += science::value_of(science::boiling_point(at))->si();
      kept += science::value_of(science::canner_temperature({psi_gauge(11), at}))->si();
    }
  });
  const double ph = fastest(mixtures.size(), [&] {
    for (const auto& card : mixtures)
      if (const auto found = science::ph_of(card.mixture, known.acidity)) kept += found->ph[0];
  });
  const double both = fastest(all.size(), [&] {
    for (const auto& card : all)
      if (const auto found =
              science::ph_of(science::mixture_of(card->reading, known.acidity).mixture, known.acidity))
        kept += found->ph[0];
  });
  std::printf("altitude and canner  %5.2f us a card (3 at most)\n", physics);
  std::printf("pH, three levels     %5.2f us a card (15 at most), %zu cards\n", ph, mixtures.size());
  std::printf("with the mixture     %5.2f us a card\n", both);
  return physics <= 3 && both <= 15 && kept > 0 ? 0 : 1;
}
