#include "checks/prep_required.hpp"

#include <algorithm>
#include <optional>

#include "checks/fields.hpp"
#include "checks/food_set.hpp"
#include "checks/phrases.hpp"
#include "text/words.hpp"

namespace sealworthy::checks {
namespace {

using reading::Reading;

/// "hot pack: boil 5 minutes": told if a step has a word that begins with the verb.
struct Required {
  std::string text;
  std::string verb;
  std::optional<recipe::Pack> pack;
};

Required read_required(std::string_view text) {
  constexpr std::string_view hot = "hot pack: ";
  constexpr std::string_view raw = "raw pack: ";
  Required required;
  if (text.starts_with(hot)) required.pack = recipe::Pack::hot;
  if (text.starts_with(raw)) required.pack = recipe::Pack::raw;
  if (required.pack) text.remove_prefix(hot.size());
  required.text = std::string(text);
  const text::Words words(text);
  if (!words.empty()) required.verb = std::string(words[0].text);
  if (required.verb.size() > 3 && required.verb.back() == 'e') required.verb.pop_back();  // baked, baking
  return required;
}

bool tells(const Reading& reading, std::string_view verb) {
  return std::any_of(reading.steps.begin(), reading.steps.end(), [&](const auto& step) {
    const auto& words = step.sentences.words;
    return std::any_of(words.begin(), words.end(),
                       [&](const auto& word) { return word.text.starts_with(verb); });
  });
}

struct Entry {
  const Rule* rule;
  std::string verb;
  FoodSet foods;
  Phrases begun;
  std::string assume;
  Phrases told;
};

bool in_steps(const Phrases& phrases, const Reading& reading) {
  return std::any_of(reading.steps.begin(), reading.steps.end(),
                     [&](const auto& step) { return !phrases.in(step.sentences.words).empty(); });
}

class PrepRequired final : public Check {
 public:
  PrepRequired(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      Entry entry{rule,
                  with.text("verb"),
                  maker.food_index->read_plain(with, "foods"),
                  Phrases(with.list("begun")),
                  with.text("assume"),
                  Phrases(with.list("told"))};
      if (entry.verb.empty() == entry.foods.unset())
        with.sink().add(rule->with.at, "rule " + rule->id + ": one of 'verb:' and 'foods:' is asked for");
      with.done();
      (entry.foods.unset() ? entries_ : for_foods_).push_back(std::move(entry));
    }
    first_product_ = maker.tables.products().data();
    for (const auto& product : maker.tables.products()) {
      std::vector<Required> all;
      for (const auto& text : product.required) all.push_back(read_required(text));
      required_.push_back(std::move(all));
    }
  }

  void run(const Reading& reading, Results& results) const override {
    const auto* product = reading.match.product;
    judge_foods(reading, results);
    if (product == nullptr) return;
    const auto pack = reading.recipe->pack;
    for (const auto& required : required_[static_cast<std::size_t>(product - first_product_)]) {
      if (required.pack && pack && *required.pack != pack->value) continue;
      if (!judge(reading, required, results) && !tells(reading, required.verb)) results.assume(required.text);
    }
  }

 private:
  /// Work that an ingredient brings with it, whatever the product.
  void judge_foods(const Reading& reading, Results& results) const {
    for (const auto& entry : for_foods_) {
      const auto& lines = reading.ingredients;
      const auto at = std::find_if(lines.begin(), lines.end(),
                                   [&](const auto& line) { return named_in(line, entry.foods) != nullptr; });
      if (at == lines.end() || !applies(entry.rule->only_if, reading) || in_steps(entry.told, reading))
        continue;
      if (!in_steps(entry.begun, reading)) {
        results.assume(entry.assume);
        continue;
      }
      results.point(PointKind::form, Point::State::unknown, {}, {});
      results.add(*entry.rule, at->line->at, {{"food", named_in(*at, entry.foods)->name}});
    }
  }

  /// True if a rule names this step.
  bool judge(const Reading& reading, const Required& required, Results& results) const {
    bool named = false;
    for (const auto& entry : entries_) {
      if (entry.verb != required.verb) continue;
      named = true;
      if (in_steps(entry.told, reading) || !applies(entry.rule->only_if, reading)) continue;
      results.point(PointKind::form, Point::State::unknown, {}, required.text);
      results.add(*entry.rule, reading.recipe->title.at, {{"needed", required.text}});
    }
    return named;
  }

  std::vector<Entry> entries_;
  std::vector<Entry> for_foods_;
  const tested::Product* first_product_ = nullptr;
  std::vector<std::vector<Required>> required_;
};

}  // namespace

std::unique_ptr<Check> make_prep_required(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<PrepRequired>(rules, maker);
}

}  // namespace sealworthy::checks
