#pragma once

/// Differences that a publication judges harmless: swaps whose total is kept, changes in a safe direction.

#include "tested/compare.hpp"
#include "tested/compare_sizes.hpp"

namespace sealworthy::tested {

/// How a card was held against a formula.
struct ComparedBy {
  const Pairing& pairing;
  const PairSizes& sizes;
  const Batch& batch;
};

/// True if the change speaks of the line, whichever way the line changes.
bool meant(const Change& change, const FormulaLine& line, const Product& product,
           const foods::Catalogue& catalogue);

/// Marks lines and added ingredients of `result` that one of the product's changes covers as allowed. A swap
/// counts what takes part in it together: two cups of hot peppers for two of the four cups of sweet ones keep
/// the total of four.
void apply_changes(const Product& product, const Formula& formula, const reading::Reading& reading,
                   const ComparedBy& by, FormulaComparison& result);

}  // namespace sealworthy::tested
