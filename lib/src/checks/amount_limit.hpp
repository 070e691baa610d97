#pragma once

/// A limit on an amount, as a rule gives it: "1/2 teaspoon", "1/4 cup", "1 oz".

#include <optional>
#include <string_view>

#include "checks/fields.hpp"
#include "foods/catalogue.hpp"
#include "quantity/amount.hpp"

namespace sealworthy::checks {

class AmountLimit {
 public:
  /// The limit under a key of a rule's parameters; nullopt where the key is missing. An error for what is no
  /// weight or volume.
  static std::optional<AmountLimit> read(Fields& with, std::string_view key);

  /// True if the line's amount is known, of the limit's own kind, and no more than it at its upper end. A
  /// pinch is within every limit.
  [[nodiscard]] bool surely_within(const foods::LineReading& line) const;

 private:
  quantity::Amount limit_;
};

}  // namespace sealworthy::checks
