#pragma once

/// Which product and which row of its table a suggestion is for.

#include <optional>
#include <string>

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

/// The row for the card's jar, pack, method and altitude, as far as the table has them: another pack, method
/// or jar where it has not. nullopt: nothing is published for this altitude.
std::optional<CardFigures> choose_figures(const reading::Reading& reading, const tested::Product& product);

}  // namespace sealworthy::suggest
