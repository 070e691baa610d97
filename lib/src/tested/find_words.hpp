#pragma once

/// Finding tested products by the words a cook uses for them.

#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "tested/tables.hpp"

namespace sealworthy::tested {

struct Found {
  std::vector<const Product*> products;  ///< best match first
  std::string corrected;       ///< the words that were used, where they are not those given; else ""
  std::string not_understood;  ///< words that nothing fits and that were left out, else ""
};

/// Products that the words name: by id, by title, by words of the title, its styles and names, and by foods
/// with all their names in the catalogue. Every word has to fit, small ones ("with", "in") aside; where no
/// product fits all, slips are put right ("tomatos"), and else the products that fit most words are given.
/// Cost: one pass over the products.
Found find_by_words(const Tables& tables, const foods::Catalogue& catalogue, std::string_view words);

}  // namespace sealworthy::tested
