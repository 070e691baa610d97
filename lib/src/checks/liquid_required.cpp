#include "checks/liquid_required.hpp"

#include <algorithm>
#include <array>

#include "checks/fields.hpp"
#include "checks/food_set.hpp"
#include "checks/phrases.hpp"

namespace sealworthy::checks {
namespace {

using reading::Reading;

/// Product::covering for one pack: "" where the source says nothing.
struct Covering {
  std::string hot, raw;
  static bool covers(const std::string& liquid) { return !liquid.empty() && liquid != "none"; }
};

/// "hot pack: hot broth; raw pack: none", or one text for both.
Covering read_covering(std::string_view text) {
  constexpr std::string_view hot = "hot pack: ";
  constexpr std::string_view raw = "raw pack: ";
  if (text.find(hot) == text.npos && text.find(raw) == text.npos)
    return {std::string(text), std::string(text)};
  const auto part = [&](std::string_view label) -> std::string {
    const auto at = text.find(label);
    if (at == text.npos) return {};
    const auto rest = text.substr(at + label.size());
    return std::string(rest.substr(0, rest.find(';')));
  };
  return {part(hot), part(raw)};
}

struct Entry {
  const Rule* rule;
  FoodSet liquids;
  Phrases words;
};

class LiquidRequired final : public Check {
 public:
  LiquidRequired(std::span<const Rule* const> rules, Maker& maker) {
    const FoodIndex& index = *maker.food_index;
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      const auto which = with.choice("case", {"untold", "added"}, true);
      Entry entry{rule, index.read(with, "liquids", "not-liquids"), Phrases(with.list("words"))};
      if (entry.liquids.unset()) with.sink().add(rule->at, "rule " + rule->id + ": 'liquids' are missing");
      with.done();
      if (which) by_case_[*which].push_back(std::move(entry));
    }
    first_product_ = maker.tables.products().data();
    for (const auto& product : maker.tables.products()) coverings_.push_back(read_covering(product.covering));
  }

  void run(const Reading& reading, Results& results) const override {
    const auto* product = reading.match.product;
    if (product == nullptr || product->formula) return;
    const auto& covering = coverings_[static_cast<std::size_t>(product - first_product_)];
    const auto pack = reading.recipe->pack;
    const bool raw = pack && pack->value == recipe::Pack::raw;
    const bool hot = pack && pack->value == recipe::Pack::hot;
    const bool covered = (raw || Covering::covers(covering.hot)) && (hot || Covering::covers(covering.raw));
    if (covered) tell_untold(reading, hot ? covering.hot : covering.raw, results);
    if (raw && covering.raw == "none" && Covering::covers(covering.hot)) tell_added(reading, results);
  }

 private:
  void tell_untold(const Reading& reading, const std::string& needed, Results& results) const {
    for (const auto& entry : by_case_[0]) {
      const bool in_lines = std::any_of(
          reading.ingredients.begin(), reading.ingredients.end(),
          [&](const auto& line) { return in_jar(line) && named_in(line, entry.liquids) != nullptr; });
      if (in_lines || !applies(entry.rule->only_if, reading)) continue;
      const bool in_steps = std::any_of(reading.steps.begin(), reading.steps.end(), [&](const auto& step) {
        return !entry.words.in(step.sentences.words).empty();
      });
      if (in_steps) continue;
      results.point(PointKind::form, Point::State::unknown, {}, needed);
      results.add(*entry.rule, reading.recipe->title.at, {{"needed", needed}});
    }
  }

  void tell_added(const Reading& reading, Results& results) const {
    for (const auto& entry : by_case_[1])
      for (const auto& line : reading.ingredients) {
        const auto* named = in_jar(line) ? named_in(line, entry.liquids) : nullptr;
        if (named != nullptr && applies(entry.rule->only_if, reading))
          results.add(*entry.rule, line.line->at, {{"food", named->name}});
      }
  }

  std::array<std::vector<Entry>, 2> by_case_;
  const tested::Product* first_product_ = nullptr;
  std::vector<Covering> coverings_;
};

}  // namespace

std::unique_ptr<Check> make_liquid_required(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<LiquidRequired>(rules, maker);
}

}  // namespace sealworthy::checks
