#pragma once

/// What a pair of a formula's lines and a card's ingredients measures, on either side, and by what the
/// published amount is multiplied: the factor of the batch, the jars.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "reading/reading.hpp"
#include "tested/compare_amounts.hpp"
#include "tested/compare_pairs.hpp"

namespace sealworthy::tested {

class PairSizes {
 public:
  PairSizes(const Formula& formula, const reading::Reading& reading) : formula_(formula), reading_(reading) {}

  /// The card's size of a pair in the dimension of a published one: a sum where there are several
  /// ingredients.
  [[nodiscard]] std::optional<Size> on_card(const Pair& pair, const Size& published) const;
  /// The card's weight of a pair, by densities and piece weights; nullopt where one is not known.
  [[nodiscard]] std::optional<Size> card_weight(const Pair& pair) const;
  /// The published sizes of a pair: each alternative of a line, or the sum of several lines' first ones.
  /// Empty where they can't be summed.
  [[nodiscard]] std::vector<Size> published(const Pair& pair) const;

 private:
  [[nodiscard]] std::optional<Size> sum_of_lines(const Pair& pair) const;

  const Formula& formula_;
  const reading::Reading& reading_;
};

/// The factor of the whole batch, one for each part of the formula: 1 unless another fits more lines. Where
/// no two lines agree on one, it is the middle one by weight, so that the line that differs most does not set
/// it.
class Batch {
 public:
  Batch(const Formula& formula, const LineFacts& facts, const Pairing& pairing, const PairSizes& sizes,
        const reading::Reading& reading);

  [[nodiscard]] double factor(std::string_view part) const;
  /// What the published amount of a pair is multiplied with, amounts per jar included; 0: not known, `reason`
  /// says why.
  [[nodiscard]] double scale(const Pair& pair, std::string& reason) const;

 private:
  struct Factor {
    std::string_view part;
    double by = 1;
  };
  struct Known {
    std::string_view part;
    Interval<double> found, published;
    bool rough = false;  ///< by weights worked out: says how large the batch is, not whether it is equal
    double grams = 1;    ///< of the published amount, where it can be weighed
    bool food = false;   ///< what the batch is made of: no acid, sugar, salt, pectin or water
  };
  /// A brine may be made in other batches than the food, but its acid is judged by no fewer.
  void keep_acid_up();
  static double best_factor(std::string_view part, const std::vector<Known>& known);
  /// The factor that half of the published weight lies above and half below: of the food where any can be
  /// compared, because acid and sugar are what people cut.
  static double middle_factor(std::string_view part, const std::vector<Known>& known);
  /// The weight of a pair on the card beside the published one.
  [[nodiscard]] std::optional<Known> by_weight(const Pair& pair, const PairSizes& sizes) const;
  [[nodiscard]] std::optional<double> jars_made() const;
  [[nodiscard]] double jar_share(const FormulaLine& line, const foods::LineReading& card) const;

  const Formula& formula_;
  const reading::Reading& reading_;
  std::vector<Factor> factors_;
};

}  // namespace sealworthy::tested
