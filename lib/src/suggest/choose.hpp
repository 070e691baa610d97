#pragma once

/// Which product and which row of its table a suggestion is for.

#include <optional>
#include <string>
#include <vector>

#include "reading/reading.hpp"
#include "suggest/card_writer.hpp"

namespace sealworthy::suggest {

/// The product that the card follows or fits best; nullptr: none is near.
const tested::Product* nearest_product(const reading::Reading& reading);

/// True if the ingredient is one of the foods that the product names, other than salt, sugar, spice and
/// water.
bool takes(const tested::Product& product, const reading::Ingredient& ingredient,
           const foods::Catalogue& catalogue);

/// Why the nearest product is no help to a card that does not surely follow it: most of the card's foods, or
/// the kind of dish that its title says, are not in it. A clause; "" where it is near enough.
std::string another_dish(const reading::Reading& reading, const tested::Product& product);

/// The altitude that a suggestion is for.
struct Height {
  enum class From {
    kitchen,
    writer,
    card,
    lowest
  };  ///< the user's, the page's writer's, the card's, unknown
  From from = From::lowest;
  Altitude at;               ///< the end of the range that needs more heat
  Interval<Altitude> range;  ///< as it is written
};

/// Jar sizes of the card with their rows, the card's first one first, all by one method and pack.
struct Choice {
  std::vector<CardFigures> jars;  ///< at least one
  Height height;
};

/// The rows for the card's jars, pack, method and altitude, as far as the table has them: another pack,
/// method or jar where it has not; a further size of the card that the table has not is left out. The
/// altitude is the user's, else where the writer cans, else the lowest of the card's. nullopt: nothing is
/// published for this altitude.
std::optional<Choice> choose_figures(const reading::Reading& reading, const tested::Product& product);

/// The card's own jar and process of these figures; where it has several for the jar, the one for this
/// altitude.
const reading::JarProcess& own_jar(const reading::Reading& reading, const CardFigures& figures,
                                   const Height& height);

}  // namespace sealworthy::suggest
