#pragma once

/// Changes of a tested formula that a publication judges harmless (rules/changes.yaml).

#include <sealworthy/finding.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "tested/load_context.hpp"

namespace sealworthy::tested {

struct Change {
  /// What may happen to a line of the formula, one bit each.
  enum Does : unsigned { more = 1, less = 2, leave_out = 4, swap = 8, add = 16 };

  std::string id;
  unsigned does = 0;
  std::vector<std::string> roles;      ///< of the formula's line; empty: any
  std::vector<std::string> foods;      ///< of the formula's line; catalogue ids, kind:, tag:; empty: any
  bool not_main = false;               ///< not the food that the product is about
  std::vector<std::string> to;         ///< what it may be swapped for, or what may be added
  std::vector<std::string> to_states;  ///< one of these must be said of it; empty: none
  bool at_least = false;  ///< swap: the total may also rise, as with an acid; else it stays the same
  unsigned classes = 0;   ///< bits of ProductClass where it holds; 0: only where a formula names it
  std::string says;       ///< why it does no harm, a sentence for the cook
  std::string source;
  Read read = Read::reprint;

  [[nodiscard]] bool holds_for(unsigned product_class) const { return (classes >> product_class & 1U) != 0; }
};

/// Reads one document with `changes:`. Errors go to the sink; good entries stay.
void load_changes(const yaml::Document& document, LoadContext& context, std::vector<Change>& changes);

}  // namespace sealworthy::tested
