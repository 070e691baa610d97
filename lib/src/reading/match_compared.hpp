#pragma once

/// The comparisons of one card with the formulas that matching weighs against each other.

#include <cstddef>
#include <memory>
#include <vector>

#include "tested/compare.hpp"

namespace sealworthy::reading {

/// Each is made once, for it takes as long as all the rest of matching; and without words where only the
/// number of differences is asked for.
class Comparisons {
 public:
  using Compared = std::shared_ptr<const tested::FormulaComparison>;

  explicit Comparisons(const Reading& reading) : reading_(reading) {}

  /// The product must have a formula.
  const tested::FormulaComparison& in_figures(const tested::Product& product) {
    const auto i = find(&product);
    if (i == all_.size()) all_.push_back({&product, compare(product, tested::Words::no), false});
    return *all_[i].compared;
  }
  const tested::FormulaComparison& in_words(const tested::Product& product) {
    const auto i = find(&product);
    if (i == all_.size()) all_.push_back({&product, nullptr, false});
    if (!all_[i].in_words) all_[i] = {&product, compare(product, tested::Words::yes), true};
    return *all_[i].compared;
  }
  /// The one made for a product; null if there was none, or words are missing in it.
  [[nodiscard]] Compared whole(const tested::Product* product) const {
    const auto i = find(product);
    if (i == all_.size()) return nullptr;
    return all_[i].in_words || all_[i].compared->as_published() ? all_[i].compared : nullptr;
  }

 private:
  struct Made {
    const tested::Product* product;
    Compared compared;
    bool in_words;
  };

  [[nodiscard]] Compared compare(const tested::Product& product, tested::Words words) const {
    return std::make_shared<const tested::FormulaComparison>(tested::compare(product, reading_, words));
  }
  [[nodiscard]] std::size_t find(const tested::Product* product) const {
    std::size_t i = 0;
    while (i < all_.size() && all_[i].product != product) ++i;
    return i;
  }

  const Reading& reading_;
  std::vector<Made> all_;
};

}  // namespace sealworthy::reading
