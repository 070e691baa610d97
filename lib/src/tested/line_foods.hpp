#pragma once

/// What a food of a card is to a product: meant by a name of the product's, or only flavor, or water.

#include <span>
#include <string>
#include <string_view>

#include "foods/catalogue.hpp"

namespace sealworthy::tested {

/// True if a kind or form of a food may stand where the food itself is named: it is not one that no process
/// covers, nor a less acid one. White-fleshed peaches are peaches, but not where a product says peaches.
bool no_worse(const foods::Food& form, const foods::Food& food);

/// True if `food` is meant where a product names the catalogue id.
bool stands_for(const foods::Food& food, std::string_view id, const foods::Catalogue& catalogue);
bool stands_for_any(const foods::Food& food, std::span<const std::string> ids,
                    const foods::Catalogue& catalogue);
/// The same with the foods looked up before; null ones stand for nothing. Cost: a few steps a food.
bool stands_for_any(const foods::Food& food, std::span<const foods::Food* const> named,
                    const foods::Catalogue& catalogue);

/// The same for a list that may also hold "kind:sweetener" and "tag:leafy".
bool one_of(const foods::Food& food, std::span<const std::string> names, const foods::Catalogue& catalogue);

bool is_water(const foods::Food& food);
bool is_salt(const foods::Food& food);  ///< plain salt; not the curing salts, which are no flavor
/// Dry spice or herb, food color, a firming agent: tells nothing about how the jar heats or keeps.
bool only_flavor(const foods::Food& food);

}  // namespace sealworthy::tested
