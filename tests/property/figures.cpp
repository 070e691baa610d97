#include "figures.hpp"

#include <cmath>

namespace sealworthy::property {
namespace {

bool for_card(const tested::Row& row, const CardFigures& card) {
  if (row.method != card.method || row.applies_to != card.part) return false;
  const bool any_pack = !row.hot && !row.raw;
  return any_pack || (card.pack == recipe::Pack::hot ? row.hot : row.raw);
}

/// The size whose rows count for the card's jar: its own, else the next larger one that is tabled.
std::optional<tested::JarIndex> counting_size(const tested::Product& product, const CardFigures& card) {
  std::optional<tested::JarIndex> size;
  for (const auto& row : product.rows) {
    if (!for_card(row, card) || row.jar < card.jar) continue;
    if (!size || row.jar < *size) size = row.jar;
  }
  return size;
}

bool met(const tested::Option::Step& step, const CardFigures& card) {
  constexpr double hair = 1e-9;
  if (step.not_recommended) return false;
  if (card.minutes + hair < step.time.si() / 60) return false;
  return !step.pressure || (card.psi && *card.psi + hair >= in_psi(*step.pressure));
}

}  // namespace

Published published(const tested::Product& product, const CardFigures& card) {
  const auto size = counting_size(product, card);
  if (!size) return Published::no;
  Published best = Published::no;
  for (const auto& row : product.rows) {
    if (!for_card(row, card) || row.jar != *size) continue;
    for (const auto& option : row.options) {
      for (const auto& step : option.steps) {
        const double to = in_feet(step.band.to);
        if (std::isfinite(to) && card.feet > to + 1e-6) continue;
        if (met(step, card))
          best = std::max(best, step.read == Read::memory ? Published::from_memory : Published::yes);
        break;
      }
    }
  }
  return best;
}

}  // namespace sealworthy::property
