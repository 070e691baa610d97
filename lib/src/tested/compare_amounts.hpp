#pragma once

/// Two amounts beside each other: equal, more, less, or not to be told.

#include <optional>
#include <sealworthy/interval.hpp>
#include <string>
#include <vector>

#include "foods/catalogue.hpp"
#include "quantity/amount.hpp"

namespace sealworthy::tested {

/// An amount in one dimension, in SI units or pieces, with its slack ("about", "up to").
struct Size {
  enum class Kind { mass, volume, count };
  Kind kind = Kind::mass;
  std::string_view unit;  ///< of a count: "clove", "head", "" for a bare number; else not used
  std::string_view size;  ///< of a count: "medium", "" where it is not said
  Interval<double> value{0, 0};

  [[nodiscard]] Size times(double factor) const { return {kind, unit, size, value * factor}; }
  /// True if this, of a card, can be put beside a published size: six pears are not six medium pears for
  /// sure.
  [[nodiscard]] bool beside(const Size& published) const {
    if (kind != published.kind) return false;
    return kind != Kind::count ||
           (unit == published.unit && (published.size.empty() || size == published.size));
  }
};

/// The sizes that an amount states: one, or two where packages of a stated size are counted ("2 (12-oz) cans"
/// is 2 cans and 24 oz). Empty without a figure.
std::vector<Size> sizes_of(const quantity::Amount& amount);
/// The same from a weight.
Size size_of(const Interval<Mass>& weight);

struct Beside {
  enum class Result { equal, more, less, open };  ///< open: it can be either
  Result result = Result::open;
  double percent = 0;  ///< of more and less: by how much at least
};

/// Equal where the whole of `found` lies within the published interval, 2 percent over at each end.
Beside beside(const Interval<double>& found, const Interval<double>& published);
/// Equal only where every reading of one is within 2 percent of every reading of the other: for weights that
/// are worked out from volumes or counts.
Beside beside_every(const Interval<double>& found, const Interval<double>& published);

/// "2 1/2 cups", "3 to 4 lb", "6 cloves", scaled; as the amount writes it where the scale is 1.
/// Cups and spoons that no kitchen has are told in those that it has, within `within`, a share of the amount.
std::string words_of(const quantity::Amount& amount, double factor, double within = 0.01);

}  // namespace sealworthy::tested
