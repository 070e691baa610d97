#pragma once

/// Which product and which row of its table a suggestion is for.

#include <optional>

#include "reading/reading.hpp"
#include "suggest/card_writer.hpp"

namespace sealworthy::suggest {

/// The product that the card follows or fits best; nullptr: none is near.
const tested::Product* nearest_product(const reading::Reading& reading);

/// The row for the card's jar, pack, method and altitude, as far as the table has them: another pack, method
/// or jar where it has not. nullopt: nothing is published for this altitude.
std::optional<CardFigures> choose_figures(const reading::Reading& reading, const tested::Product& product);

}  // namespace sealworthy::suggest
