#include "checks/match_to_tested.hpp"

#include <algorithm>
#include <array>

#include "checks/fields.hpp"
#include "checks/phrases.hpp"

namespace sealworthy::checks {
namespace {

enum class Case { none, doubtful, several, next, follows_unknown, unknown_food };

struct Entry {
  const Rule* rule;
  Phrases title, not_title;
};

class MatchToTested final : public Check {
 public:
  MatchToTested(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      const auto which =
          with.choices("case", {"none", "doubtful", "several", "next", "follows-unknown", "unknown-food"});
      Entry entry{rule, Phrases(with.list("title")), Phrases(with.list("not-title"))};
      with.done();
      if (which == 0) with.sink().add(rule->at, "rule " + rule->id + ": 'case' is missing");
      for (std::size_t i = 0; i < by_case_.size(); ++i)
        if (((which >> i) & 1U) != 0) by_case_[i].push_back(entry);
    }
  }

  void run(const reading::Reading& reading, Results& results) const override {
    const auto& match = reading.match;
    const Position title = reading.recipe->title.at;
    food_point(reading, results);
    if (!match.unknown_follows.empty())
      tell(Case::follows_unknown, reading, results,
           reading.recipe->follows ? reading.recipe->follows->at : title,
           {{"found", match.unknown_follows}, {"needed", nearest(reading)}});
    if (match.product == nullptr)
      tell(Case::none, reading, results, title, {});
    else if (match.doubtful)
      tell(match.also.empty() ? Case::doubtful : Case::several, reading, results, title,
           {{"needed", match.product->title}, {"reason", match.doubt}});
    if (match.product != nullptr && match.next != nullptr)
      tell(Case::next, reading, results, title,
           {{"found", match.product->title}, {"needed", match.next->title}});
    for (const auto& ingredient : reading.ingredients) tell_unknown(reading, ingredient, results);
  }

 private:
  /// Held where a product matches without doubt and every line names foods that are known.
  static void food_point(const reading::Reading& reading, Results& results) {
    const auto& match = reading.match;
    const bool known =
        std::all_of(reading.ingredients.begin(), reading.ingredients.end(),
                    [](const reading::Ingredient& i) { return i.read.unknown.empty() && i.food != nullptr; });
    const bool held = match.product != nullptr && !match.doubtful && known;
    results.point(PointKind::food, held ? Point::State::held : Point::State::unknown);
  }

  static std::string nearest(const reading::Reading& reading) {
    return std::string(reading.tables->nearest_id(reading.match.unknown_follows).value_or(""));
  }

  /// The words that name no known food; the whole line where none could be told apart.
  void tell_unknown(const reading::Reading& reading, const reading::Ingredient& ingredient,
                    Results& results) const {
    const auto& read = ingredient.read;
    for (const auto& word : read.unknown)
      tell(Case::unknown_food, reading, results, ingredient.line->at, {{"found", word}});
    if (read.unknown.empty() && read.foods.empty() && !read.not_eaten)
      tell(Case::unknown_food, reading, results, ingredient.line->at,
           {{"found", std::string(ingredient.line->text)}});
  }

  void tell(Case which, const reading::Reading& reading, Results& results, Position at,
            const Figures& figures) const {
    for (const auto& entry : by_case_[static_cast<std::size_t>(which)]) {
      const auto& title = reading.title.words;
      if (!entry.title.empty() && entry.title.in(title).empty()) continue;
      if (!entry.not_title.empty() && !entry.not_title.in(title).empty()) continue;
      if (applies(entry.rule->only_if, reading)) results.add(*entry.rule, at, figures);
    }
  }

  std::array<std::vector<Entry>, 6> by_case_;
};

}  // namespace

std::unique_ptr<Check> make_match_to_tested(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<MatchToTested>(rules, maker);
}

}  // namespace sealworthy::checks
