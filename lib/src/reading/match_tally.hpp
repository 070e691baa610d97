#pragma once

/// How well each product fits the foods of a card, counted in one pass over the card's foods.

#include <cstdint>
#include <vector>

#include "reading/match_index.hpp"

namespace sealworthy::reading {

/// What a card says, as far as matching asks.
struct SaidForms {
  FormSet words = 0;  ///< forms of the title and of the main foods' lines
  FormSet foods = 0;  ///< forms that foods bring with them
  FormSet steps = 0;  ///< forms that the steps tell
  FormSet last = 0;   ///< of all these, those that are not only on the way to another (Forms::in_the_end)
  NamedProducts named;

  [[nodiscard]] FormSet all() const { return words | foods | steps; }
};

SaidForms read_words(const Reading& reading, const MatchIndex::Impl& index);

/// One product beside the card.
struct Candidate {
  const Entry* entry = nullptr;
  std::uint64_t missing = 0;   ///< required lines without a food of the card
  std::uint64_t covered = 0;   ///< lines with one
  int shared = 0;              ///< required lines with one
  int foreign = 0;             ///< foods of the card without a place
  int flavor_differences = 0;  ///< dry spices too many or too few; never decides
  FormSet contradicted = 0;    ///< forms of the card that the product does not cover
  bool unsaid = false;         ///< the product asks for a form that the card does not say
  bool unlikely = false;       ///< ... and nobody leaves that form unsaid: apples are no juice by themselves
  bool said = false;           ///< ... and the card says it
  bool other_dish = false;     ///< the card says a kind of dish that the product is not
  bool named = false;          ///< the title names the product

  [[nodiscard]] int differences() const;
  [[nodiscard]] bool exact() const { return missing == 0 && foreign == 0 && contradicted == 0; }
};

/// Counts of one card. Which products are near shows from the foods that a jar is about; the vinegar, salt
/// and spice that a great many products have are looked up only for those. Cost: one step for each telling
/// place that the index has for the card's foods, and for each candidate a look-up or two a food.
class Tally {
 public:
  Tally(const Reading& reading, const MatchIndex::Impl& index);
  ~Tally();
  Tally(const Tally&) = delete;
  Tally& operator=(const Tally&) = delete;

  /// Every entry that shares a telling food with the card.
  [[nodiscard]] const std::vector<std::uint16_t>& touched() const { return touched_; }
  /// True if an entry shares a food that the jar is about: not only vinegar and sugar.
  [[nodiscard]] bool shares_body(std::size_t entry) const {
    return (counts_[entry].covered & index_.briefs[entry].body) != 0;
  }
  /// False for an entry that its telling foods alone keep from fitting the card food by food.
  [[nodiscard]] bool may_be_exact(std::size_t entry) const {
    const auto& count = counts_[entry];
    if ((body_ & ~count.units) != 0 || beyond_ + unknown_ > 0) return false;
    return (index_.briefs[entry].needs & ~count.covered) == 0 && shares_body(entry);
  }
  /// False for an entry that its telling foods alone put too far off to be the card's or the nearest: more
  /// than half of what it shares with the card, and everything else held for met.
  [[nodiscard]] bool may_be_near(std::size_t entry) const;
  /// False for an entry whose formula the telling foods alone keep from being the card's by a harmless
  /// change.
  [[nodiscard]] bool may_be_changed(std::size_t entry) const {
    const auto& brief = index_.briefs[entry];
    return (brief.keeps & ~counts_[entry].covered) == 0 &&
           (brief.takes_more || (body_ & ~counts_[entry].units) == 0);
  }
  /// At least so many differences (Candidate::differences) will the entry have.
  [[nodiscard]] int least_differences(std::size_t entry) const;
  [[nodiscard]] Candidate candidate(std::size_t entry, const SaidForms& words) const;
  /// Ingredients that have no place in an entry, as indices into Reading::ingredients; a dry spice counts
  /// where the product has no formula.
  [[nodiscard]] std::vector<std::size_t> foreign(const Entry& entry) const;

 private:
  struct Count {
    std::uint64_t covered = 0;  ///< lines of the entry
    std::uint64_t units = 0;    ///< foods of the card with a place, by place in units_
  };
  /// One food of a card's line, or the alternatives of an "or".
  struct Unit {
    std::size_t ingredient;
    const foods::Named* first;
    std::size_t size;
    bool in_jar;
  };

  /// What the card before left for the next one of its thread, so that nothing is cleared but what it
  /// touched.
  static std::vector<Count>& spare();
  void classify(std::size_t unit);
  void place_one(std::size_t unit);
  void place_any(std::size_t unit);
  void touch(const Place& place, std::size_t unit);
  /// With the common places of the card's foods.
  [[nodiscard]] Count whole(std::uint16_t entry) const;
  [[nodiscard]] Telling telling(const Unit& unit) const;
  [[nodiscard]] bool has_place(const Unit& unit, const Entry& entry) const;
  [[nodiscard]] int different_foods(const Entry& entry) const;

  const MatchIndex::Impl& index_;
  std::vector<Unit> units_;
  std::vector<Count> counts_;  ///< by entry; all that are not touched are zero
  std::vector<std::uint16_t> touched_;
  std::uint64_t main_ = 0;    ///< units in the jar but water, salt and flavor
  std::uint64_t body_ = 0;    ///< those of them that the jar is about
  std::uint64_t flavor_ = 0;  ///< units in the jar that are only flavor
  std::uint64_t common_ = 0;  ///< units with common places, alternatives aside
  int beyond_ = 0;            ///< units past the 64th, water and salt aside: no product has so many lines
  int unknown_ = 0;
};

}  // namespace sealworthy::reading
