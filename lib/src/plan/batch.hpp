#pragma once

/// How many jars a card makes, and what fills so many.

#include <optional>
#include <string>
#include <vector>

#include "reading/reading.hpp"

namespace sealworthy::plan {

/// How many times the published batch the card is, by the first line that both tell in one measure.
std::optional<double> times_formula(const reading::Reading& reading, const tested::Formula& formula);

/// The jars of the card's first size that it makes: what `makes:` says, else by its tested formula's yield,
/// else by the published weight for a canner load of its main food. nullopt: nothing tells.
std::optional<double> jars_made(const reading::Reading& reading);

/// The published weight of the main food for a jar of the card's first size, from the least to the most.
std::optional<Interval<Mass>> weight_per_jar(const reading::Reading& reading);

/// What to buy for so many jars by the published yields, in words: "28 lb, the published 9 lb for 9 pints",
/// "1/2 to 2/3 bushel (a bushel is 53 lb and fills 15 to 18 quarts)".
std::vector<std::string> to_buy(const reading::Reading& reading, int jars);

/// An amount of a food at hand ("30 lb tomatoes").
struct AtHand {
  std::string text;
  foods::LineReading read;
};
struct Filled {
  double jars = 0;
  std::string line;  ///< of the card, that was compared with
};
/// How many jars it fills, by the published yield or by the card's own line; nullopt: the card has no such
/// food, or the amounts can't be compared. `card_has` tells which.
std::optional<Filled> jars_filled(const reading::Reading& reading, const AtHand& at_hand, double jars_made,
                                  bool& card_has);

}  // namespace sealworthy::plan
