#pragma once

/// A card's amounts beside those of a published formula: the same amount or not, line by line. Whether a
/// difference is a safe one is not judged here; role and direction are there for whoever does.
///
/// - Amounts are equal within 2 percent; "about" takes 10 percent either way.
/// - One factor holds for the whole batch: 1 where that fits best, else the one that most lines agree on.
/// - Weight against volume or count goes by the catalogue's intervals. Where an interval holds both an equal
/// and
///   an unequal reading the line is `unknown`, with what to weigh.
/// - What a formula leaves open (an optional line, dry spices, salt in what is not fermented, water that
/// thins no
///   acid) may lack an amount: `free`.

#include <cstddef>
#include <limits>
#include <optional>
#include <sealworthy/position.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "reading/reading.hpp"
#include "tested/change.hpp"
#include "tested/product.hpp"

namespace sealworthy::tested {

/// How one line of a formula stands on the card.
struct LineComparison {
  enum class State {
    held,     ///< the published amount, times the factor
    free,     ///< the formula leaves the amount, or the line, to the cook
    more,     ///< certainly more than published
    less,     ///< certainly less
    missing,  ///< not on the card, and not optional
    unknown,  ///< can't be told; `reason` says why
    allowed   ///< differs, and a publication judges the change harmless: `change`
  };
  static constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

  const FormulaLine* line = nullptr;
  State state = State::unknown;
  double factor = 1;                     ///< published batches of the part of the formula that it belongs to
  std::size_t ingredient = none;         ///< the (first) ingredient of the card that it is compared with
  std::vector<std::size_t> ingredients;  ///< all that are compared with it
  Position at;                           ///< of the first
  double percent = 0;  ///< more: at least so much over; less: at least so much under (positive)
  bool water = false;  ///< water or ice
  bool with_line_before =
      false;  ///< the same ingredient stands for it and an earlier line, which has the sum
  std::optional<double> weak_percent;  ///< strength of the card's acid where it is below the formula's
  const Change* change = nullptr;      ///< of `allowed`
  std::size_t replaced_by = none;  ///< of `missing`: what stands in its place, in FormulaComparison::added
  bool dry_spice = false;  ///< only flavor: dry spice or herb, food color; its amount never decides safety
  std::string found;       ///< the card's amount in words; filled unless held or free
  std::string needed;      ///< the published amount times the factor, in words; filled unless held or free
  std::string reason;      ///< of `unknown`, a clause for people: "2 lb can be 5 to 7 cups; weigh ..."
};

/// An ingredient that the formula has no place for.
struct AddedIngredient {
  std::size_t ingredient = 0;
  const foods::Food* food = nullptr;  ///< the one that is meant, where the line names several
  Position at;
  std::string name;        ///< as the card has it
  bool dry_spice = false;  ///< only flavor
  bool salt = false;
  bool water = false;                           ///< it would thin the acid that the formula rests on
  bool stated = false;                          ///< with an amount
  const Change* change = nullptr;               ///< a publication judges it harmless here
  std::size_t replaces = LineComparison::none;  ///< the line in whose place it stands
};

struct FormulaComparison {
  double factor = 1;                  ///< card / published
  std::vector<LineComparison> lines;  ///< in the formula's order
  std::vector<AddedIngredient> added;

  /// Every line held, free or allowed and nothing else added: the amounts are the published ones.
  [[nodiscard]] bool held() const;
  bool rests_on_acid = false;  ///< an acid is in it, which water would thin

  /// Every line held or free and nothing added: nothing that words tell of.
  [[nodiscard]] bool as_published() const;
  /// Lines that are neither held, free nor allowed, plus what is added in nothing's place: 0 when held().
  [[nodiscard]] std::size_t differences() const;
};

/// Whether found, needed and reason of the lines are filled, for those who only count.
enum class Words : bool { no, yes };

/// The product must have a formula. What is not eaten is never `added`, water only where it thins an acid.
/// Cost: about 3 microseconds for a formula of ten lines.
FormulaComparison compare(const Product& product, const reading::Reading& reading, Words words = Words::yes);

}  // namespace sealworthy::tested
