#pragma once

/// The rules of one check by what they speak of: `with: {case: short}` (or a list of cases). Several rules of
/// one case differ in severity and words by `only-if`; the first that speaks of a card, by id, is used.

#include <functional>
#include <span>
#include <string_view>
#include <vector>

#include "checks/check.hpp"
#include "checks/fields.hpp"

namespace sealworthy::checks {

class Cases {
 public:
  /// Reads further parameters of a rule's `with:`.
  using More = std::function<void(const Rule& rule, Fields& with)>;

  /// `names` lists the cases in the order of the check's own enum. An unknown case, or a parameter that
  /// nobody asked for, is an error of the rules.
  Cases(std::span<const Rule* const> rules, Maker& maker, const std::vector<std::string_view>& names,
        const More& more = {});

  /// nullptr: no rule speaks of this card.
  template <class Case>
  [[nodiscard]] const Rule* find(Case which, const reading::Reading& reading) const {
    return find_index(static_cast<std::size_t>(which), reading);
  }
  /// Every rule of a case, by id.
  template <class Case>
  [[nodiscard]] const std::vector<const Rule*>& all(Case which) const {
    return by_case_[static_cast<std::size_t>(which)];
  }

 private:
  [[nodiscard]] const Rule* find_index(std::size_t which, const reading::Reading& reading) const;

  std::vector<std::vector<const Rule*>> by_case_;
};

}  // namespace sealworthy::checks
