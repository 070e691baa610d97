#pragma once

/// The tested process nearest to a card, written as a card.
///
///   const auto made = sealworthy::suggest(checker, "salsa.yaml", text, options);
///
/// The new card follows the published process at the card's batch size, jar and altitude; a comment stands at
/// each line that is another than the card's. Nothing is computed that is not printed in a table or formula
/// but the batch size. Throws nothing but std::bad_alloc. Cost: a check of the card and one to twelve of the
/// new one.

#include <sealworthy/checker.hpp>
#include <sealworthy/finding.hpp>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sealworthy {

struct Suggestion {
  std::string product;                  ///< id of the tested process
  std::string card;                     ///< YAML with comments; check it like any card
  Verdict verdict = Verdict::unproven;  ///< of the new card with the same options
  std::string why_not_tested;           ///< what is open, where it is not `tested`
};

/// One suggestion a recipe of the text; a recipe that no tested process is near is an error, as is one that
/// can't be read.
struct Suggestions {
  std::vector<Suggestion> cards;
  std::vector<InputError> errors;
};
Suggestions suggest_cards(const Checker& checker, std::string_view path, std::string_view text,
                          const CheckOptions& options = {});

}  // namespace sealworthy
