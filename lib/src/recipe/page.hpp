#pragma once

/// A recipe as people publish it, before its prose is understood: what every reader of pages gives.

#include <memory>
#include <optional>
#include <sealworthy/position.hpp>
#include <string_view>
#include <variant>
#include <vector>

#include "quantity/amount.hpp"
#include "yaml/document.hpp"

namespace sealworthy::recipe {

/// Some words of a page and where they stand. Views live in the Page's arena.
struct PageText {
  std::string_view text;
  Position at;
  /// The text stands in the source letter for letter, so that the place of each of its words is known; else
  /// all of them are at `at`.
  bool verbatim = false;
};

struct Page {
  PageText title;
  std::vector<PageText> ingredients;  ///< one line each
  std::vector<PageText> directions;   ///< a step, paragraph or heading each
  std::vector<PageText> yields;       ///< "Makes 7 pints"
  std::vector<PageText> about;  ///< description, keywords, category: they tell what kind of recipe it is
  quantity::Units units = quantity::Units::us;  ///< whose cups and pints it speaks of
  std::shared_ptr<const void> arena;
};

/// A page that holds something that was meant for a recipe and can't be read.
struct BadPage {
  std::string_view title;  ///< where it could be read
  yaml::Error error;
};

/// What a file holds: cards as YAML or JSON trees, pages of prose, and what can't be read, in their order.
using Piece = std::variant<yaml::Document, Page, BadPage>;

}  // namespace sealworthy::recipe
