#include "checks/form_against_formula.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "checks/fields.hpp"
#include "tested/compare.hpp"
#include "text/words.hpp"

namespace sealworthy::checks {
namespace {

using Words = std::vector<std::string>;

struct Pair {
  const Rule* rule;
  Words published, not_published, card, unless;
};

/// The first of a text's words, or of the texts themselves, that a list holds; nullptr: none.
const std::string* said(const Words& states, const Words& list) {
  for (const auto& word : list)
    for (const auto& state : states) {
      if (state == word) return &word;
      for (const auto& part : text::Words(state))
        if (part.text == word) return &word;
    }
  return nullptr;
}

class FormAgainstFormula final : public Check {
 public:
  FormAgainstFormula(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      Pair pair{rule, with.list("published"), with.list("not-published"), with.list("card"),
                with.list("unless")};
      with.done();
      if (pair.published.empty() || pair.card.empty())
        with.sink().add(rule->at, "rule " + rule->id + ": 'published' and 'card' must name states");
      pairs_.push_back(std::move(pair));
    }
  }

  void run(const reading::Reading& reading, Results& results) const override {
    if (reading.compared == nullptr || !reading.match.sure()) return;
    for (const auto& line : reading.compared->lines) {
      if (line.line->states.empty() || line.line->not_eaten || line.dry_spice) continue;
      for (const auto i : line.ingredients) tell(reading, *line.line, reading.ingredients[i], results);
    }
  }

 private:
  void tell(const reading::Reading& reading, const tested::FormulaLine& line,
            const reading::Ingredient& ingredient, Results& results) const {
    const auto& states = ingredient.read.states;
    if (states.empty() || ingredient.read.not_eaten || ingredient.line == nullptr) return;
    for (const auto& pair : pairs_) {
      const bool other = said(line.states, pair.not_published) != nullptr;
      const auto* needed = other ? nullptr : said(line.states, pair.published);
      const auto* found = needed == nullptr ? nullptr : said(states, pair.card);
      if (found == nullptr || said(line.states, pair.card) != nullptr || said(states, pair.unless) != nullptr)
        continue;
      if (!applies(pair.rule->only_if, reading)) continue;
      const auto& read = ingredient.read;
      results.add(*pair.rule, ingredient.line->at,
                  {{"food", read.foods.empty() ? read.name : read.foods.front().name},
                   {"found", *found},
                   {"needed", *needed}});
      results.point(PointKind::form, Point::State::differs, *found, *needed);
    }
  }

  std::vector<Pair> pairs_;
};

}  // namespace

std::unique_ptr<Check> make_form_against_formula(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<FormAgainstFormula>(rules, maker);
}

}  // namespace sealworthy::checks
