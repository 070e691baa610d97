#pragma once

/// schema.org/Recipe (https://schema.org/Recipe) in JSON-LD -> pages.

#include <vector>

#include "recipe/page.hpp"
#include "yaml/document.hpp"

namespace sealworthy::recipe {

/// Every Recipe of a tree, in order: at the top, in an array, in `@graph`, under any other key. `@type` may
/// be a list and may have a prefix ("schema:Recipe", "http://schema.org/Recipe"). Instructions may be a text
/// (a line each is a step), a list of texts, `HowToStep`, `HowToSection` and `ItemList` in any depth.
std::vector<Page> schema_recipes(const yaml::Document& document);

/// A page from one map with schema.org's names, whatever its type; also with the plain names `title`,
/// `ingredients`, `instructions`, `directions`, `steps`, `yield`.
Page schema_page(const yaml::Node& map, const std::shared_ptr<const void>& arena);

/// True if a node's `@type` names a Recipe.
bool is_schema_recipe(const yaml::Node& node);

}  // namespace sealworthy::recipe
