#pragma once

/// The figures of a generated card, and what the published tables say of them. This is worked out here from
/// the table data alone, by other code than the checker's, so that a slip in one shows against the other.

#include <optional>
#include <string>

#include "suggest/card_writer.hpp"
#include "tested/product.hpp"
#include "tested/tables.hpp"

namespace sealworthy::property {

using suggest::CardFigures;
using suggest::CardStyle;
using suggest::CardWriter;

enum class Published {
  no,           ///< no published option is met
  from_memory,  ///< only by figures that nobody read on a page
  yes
};

Published published(const tested::Product& product, const CardFigures& card);

}  // namespace sealworthy::property
