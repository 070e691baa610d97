#pragma once

/// The comparisons of one card with the formulas that matching weighs against each other.

#include <memory>
#include <utility>
#include <vector>

#include "tested/compare.hpp"

namespace sealworthy::reading {

/// Each is made once, for it takes as long as all the rest of matching.
class Comparisons {
 public:
  using Compared = std::shared_ptr<const tested::FormulaComparison>;

  explicit Comparisons(const Reading& reading) : reading_(reading) {}

  /// The product must have a formula.
  const tested::FormulaComparison& with(const tested::Product& product) {
    if (auto made = of(&product)) return *made;
    all_.emplace_back(&product,
                      std::make_shared<const tested::FormulaComparison>(tested::compare(product, reading_)));
    return *all_.back().second;
  }
  /// Null if there was no need for it.
  [[nodiscard]] Compared of(const tested::Product* product) const {
    for (const auto& [known, compared] : all_)
      if (known == product) return compared;
    return nullptr;
  }

 private:
  const Reading& reading_;
  std::vector<std::pair<const tested::Product*, Compared>> all_;
};

}  // namespace sealworthy::reading
