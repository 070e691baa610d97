#include "checks/form_against_table.hpp"

#include <algorithm>
#include <optional>

#include "checks/fields.hpp"
#include "checks/food_set.hpp"
#include "quantity/figures.hpp"
#include "text/words.hpp"

namespace sealworthy::checks {
namespace {

using reading::Ingredient;
using reading::Reading;

/// "tomatoes peeled" of a product, and the words by which a line tells it.
struct Preparation {
  std::string text;
  std::vector<std::string> words;
};

struct Known {
  FoodSet foods;
  std::vector<Preparation> assumed;
};

struct Undone {
  const Rule* rule;
  std::vector<std::string> states;
  std::string done;
};

bool has_state(const Ingredient& ingredient, const std::vector<std::string>& states) {
  return std::any_of(ingredient.read.states.begin(), ingredient.read.states.end(),
                     [&](const std::string& state) {
                       return std::find(states.begin(), states.end(), state) != states.end();
                     });
}

std::string inches(PieceSize size) {
  const double value = in_inches(size);
  return quantity::kitchen_number(value) + (value > 1 ? " inches" : " inch");
}

class FormAgainstTable final : public Check {
 public:
  FormAgainstTable(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      const auto which = with.choice("case", {"undone", "piece-over"}, true);
      Undone undone{rule, with.list("states"), with.text("done")};
      with.done();
      if (which && *which == 0) undone_.push_back(std::move(undone));
      if (which && *which == 1) piece_over_.push_back(rule);
    }
    first_product_ = maker.tables.products().data();
    for (const auto& product : maker.tables.products()) known_.push_back(know(product, *maker.product_foods));
  }

  void run(const Reading& reading, Results& results) const override {
    const auto* product = reading.match.product;
    if (product == nullptr) return;
    const auto& known = known_[static_cast<std::size_t>(product - first_product_)];
    const auto before = results.findings.size();
    tell_undone(reading, known, results);
    tell_pieces(reading, *product, known, results);
    if (results.findings.size() != before) {
      results.point(PointKind::form, Point::State::differs);
      return;
    }
    const bool assumed = assume(reading, known, results);
    if (!reading.match.sure() || reading.match.doubtful)
      results.point(PointKind::form, Point::State::unknown, reading.match.doubt);
    else
      results.point(PointKind::form, assumed ? Point::State::assumed : Point::State::held);
  }

 private:
  static Known know(const tested::Product& product, const ProductFoods& foods) {
    Known known{foods.listed(product), {}};
    for (const auto& text : product.assumed) {
      Preparation preparation{text, {}};
      for (const auto& word : text::Words(text)) preparation.words.emplace_back(word.text);
      known.assumed.push_back(std::move(preparation));
    }
    return known;
  }

  static bool takes_for_granted(const Known& known, const std::string& done) {
    return std::any_of(known.assumed.begin(), known.assumed.end(), [&](const Preparation& preparation) {
      return std::find(preparation.words.begin(), preparation.words.end(), done) != preparation.words.end();
    });
  }

  void tell_undone(const Reading& reading, const Known& known, Results& results) const {
    for (const auto& ingredient : reading.ingredients) {
      const auto* named =
          ingredient.read.states.empty() || !in_jar(ingredient) ? nullptr : named_in(ingredient, known.foods);
      if (named == nullptr) continue;
      for (const auto& undone : undone_)
        if (has_state(ingredient, undone.states) && takes_for_granted(known, undone.done) &&
            applies(undone.rule->only_if, reading))
          results.add(*undone.rule, ingredient.line->at,
                      {{"food", named->name}, {"needed", undone.done}, {"found", undone.states.front()}});
    }
  }

  /// The product's limit for the form that the line says, else its largest.
  static std::optional<PieceSize> limit(const tested::Product& product, const Ingredient& ingredient) {
    for (const auto& piece : product.piece_limits)
      if (has_state(ingredient, {piece.form})) return piece.size;
    return product.largest_piece;
  }

  void tell_pieces(const Reading& reading, const tested::Product& product, const Known& known,
                   Results& results) const {
    constexpr double slack = 1.02;  // a rounded millimetre is no difference
    if (!product.largest_piece) return;
    for (const auto& ingredient : reading.ingredients) {
      if (!ingredient.read.piece || !in_jar(ingredient)) continue;
      // A 1-inch stick of cinnamon is no piece that heat must reach.
      if (ingredient.food == nullptr || ingredient.food->acid_class == foods::AcidClass::neutral) continue;
      const auto* named = named_in(ingredient, known.foods);
      const auto most = limit(product, ingredient);
      if (named == nullptr || !most || ingredient.read.piece->high.si() <= most->si() * slack) continue;
      for (const Rule* rule : piece_over_)
        if (applies(rule->only_if, reading))
          results.add(*rule, ingredient.line->at,
                      {{"food", named->name},
                       {"found", inches(ingredient.read.piece->high)},
                       {"needed", inches(*most)}});
    }
  }

  /// Lists what the card leaves unsaid; true if anything.
  static bool assume(const Reading& reading, const Known& known, Results& results) {
    bool any = !reading.match.assumed.empty();
    for (const auto& text : reading.match.assumed) results.assume(text);
    for (const auto& preparation : known.assumed) {
      const bool told =
          std::any_of(reading.ingredients.begin(), reading.ingredients.end(), [&](const auto& line) {
            return has_state(line, preparation.words) && named_in(line, known.foods) != nullptr;
          });
      if (told) continue;
      results.assume(preparation.text);
      any = true;
    }
    return any;
  }

  std::vector<Undone> undone_;
  std::vector<const Rule*> piece_over_;
  const tested::Product* first_product_ = nullptr;
  std::vector<Known> known_;
};

}  // namespace

std::unique_ptr<Check> make_form_against_table(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<FormAgainstTable>(rules, maker);
}

}  // namespace sealworthy::checks
