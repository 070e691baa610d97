#pragma once

/// What must become of a changed formula, worked out from the rules data alone (roles, classes, the lists
/// `may:` and `may-not:`), by other code than the checker's, so that a slip in one shows against the other.

#include <string>
#include <string_view>

#include "foods/catalogue.hpp"
#include "tested/product.hpp"

namespace sealworthy::mutation {

enum class Expected {
  allowed,     ///< tested, nothing above a notice
  harmless,    ///< nothing above a notice; tested or not
  not_tested,  ///< never tested; may be told or only left unproven
  forbidden,   ///< never tested, and told at caution or above, on the food, the acid or the change
  anything
};
std::string_view to_string(Expected) noexcept;

/// The amount of a line times `factor`; 0: the line is left out.
Expected amount_changed(const tested::Product& product, const tested::FormulaLine& line, double factor,
                        const foods::Catalogue& catalogue);
/// Another food of the catalogue stands in the line, in the same amount.
Expected swapped(const tested::Product& product, const tested::FormulaLine& line, const foods::Food& other,
                 const foods::Catalogue& catalogue);
/// A risky food, two cups of it, is added.
Expected added(const tested::Product& product, const foods::Food& food, const foods::Catalogue& catalogue);

}  // namespace sealworthy::mutation
