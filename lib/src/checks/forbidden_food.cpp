#include "checks/forbidden_food.hpp"

#include <algorithm>
#include <optional>

#include "checks/amount_limit.hpp"
#include "checks/card_and_formula.hpp"
#include "checks/fields.hpp"
#include "checks/food_set.hpp"
#include "checks/phrases.hpp"
#include "tested/compare.hpp"

namespace sealworthy::checks {
namespace {

enum class SilentIf { listed, near, in_formula, form_listed, never };

struct Case {
  FoodSet foods, beside, only, without;
  Phrases form, not_form, states, line, title, not_title, told, not_told;
  std::optional<AmountLimit> more_than, up_to;
  std::optional<std::size_t> measured;  ///< index in quantity::Amount::Measure
  std::optional<bool> acid_added;
};

struct Entry {
  const Rule* rule;
  std::vector<Case> cases;
  SilentIf silent_if = SilentIf::listed;
  std::vector<std::size_t> yields_to;  ///< indices of entries
};

struct Hit {
  const Entry* entry;
  const reading::Ingredient* ingredient;
  const foods::Named* named;
  std::string_view form;  ///< lives in the rule or the reading
};

/// What a card's foods and words are asked, for one line that names one food.
class Question {
 public:
  Question(const reading::Reading& reading, const reading::Ingredient& ingredient)
      : reading_(reading), ingredient_(ingredient) {}

  bool holds(const Case& c, std::string_view& form) const {
    if (c.acid_added && *c.acid_added != reading_.acid_added) return false;
    if (!amount_fits(c)) return false;
    if (!c.beside.unset() && !other_line_in(c.beside)) return false;
    if (!c.without.unset() && other_line_in(c.without)) return false;
    if (!c.only.unset() && !nothing_but(reading_, c.only, &c.foods)) return false;
    if (!c.title.empty() && c.title.in(title()).empty()) return false;
    if (!c.not_title.empty() && !c.not_title.in(title()).empty()) return false;
    if (!c.line.empty() && c.line.in(text::Words(ingredient_.line->text)).empty()) return false;
    if (!c.not_form.empty() && !said(c.not_form).empty()) return false;
    if (!c.states.empty()) {
      form = state(c.states);
      if (form.empty()) return false;
    }
    if (c.form.empty() && c.told.empty()) return true;
    form = said(c.form);
    if (form.empty()) form = told_in_steps(reading_, ingredient_, c.told, c.not_told);
    return !form.empty();
  }

 private:
  [[nodiscard]] const text::Words& title() const { return reading_.title.words; }

  /// The form that the food's own line or the title says.
  [[nodiscard]] std::string_view said(const Phrases& forms) const {
    const auto of_line = state(forms);
    return of_line.empty() ? forms.in(title()) : of_line;
  }

  [[nodiscard]] std::string_view state(const Phrases& forms) const {
    for (const auto& said : ingredient_.read.states)
      if (forms.is(said)) return said;
    return {};
  }

  [[nodiscard]] bool amount_fits(const Case& c) const {
    const auto& read = ingredient_.read;
    if (c.measured && *c.measured != read.amount.measure.index()) return false;
    if (c.more_than && !read.per_jar && (c.more_than->surely_within(read) || as_in_formula())) return false;
    return !c.up_to || (!read.per_jar && c.up_to->surely_within(read));
  }

  /// True if the formula that the card follows has as much of it for a batch of this size.
  [[nodiscard]] bool as_in_formula() const {
    if (reading_.compared == nullptr || !reading_.match.sure()) return false;
    const auto number = static_cast<std::size_t>(&ingredient_ - reading_.ingredients.data());
    return std::any_of(reading_.compared->lines.begin(), reading_.compared->lines.end(),
                       [&](const auto& line) {
                         return line.state == tested::LineComparison::State::held &&
                                std::find(line.ingredients.begin(), line.ingredients.end(), number) !=
                                    line.ingredients.end();
                       });
  }

  [[nodiscard]] bool other_line_in(const FoodSet& set) const {
    return std::any_of(reading_.ingredients.begin(), reading_.ingredients.end(), [&](const auto& other) {
      return &other != &ingredient_ && in_jar(other) && named_in(other, set) != nullptr;
    });
  }

  const reading::Reading& reading_;
  const reading::Ingredient& ingredient_;
};

class ForbiddenFood final : public Check {
 public:
  ForbiddenFood(std::span<const Rule* const> rules, Maker& maker) : foods_(maker.catalogue.all().data()) {
    const FoodIndex& index = *maker.food_index;
    entries_.reserve(rules.size());
    for (const Rule* rule : rules) entries_.push_back(read_entry(*rule, index, maker));
    read_yields(rules, maker);
    index_triggers(maker.catalogue);
    product_foods_ = maker.product_foods;
  }

  void run(const reading::Reading& reading, Results& results) const override {
    std::vector<Hit> hits;
    for (const auto& ingredient : reading.ingredients) {
      if (!in_jar(ingredient)) continue;
      for (const auto& named : ingredient.read.foods)
        if (named.food != nullptr) ask(reading, ingredient, named, hits);
    }
    for (const auto& hit : hits)
      if (!yields(hit, hits)) tell(hit, results);
  }

 private:
  static Case read_case(Fields& with, const FoodIndex& index) {
    Case c;
    c.foods = index.read(with, "foods", "not-foods");
    if (c.foods.unset()) with.sink().add(with.at(), "'foods' are missing");
    c.beside = index.read(with, "beside", "not-beside");
    c.only = index.read(with, "only", "not-only");
    c.without = index.read(with, "without", "not-without");
    c.form = Phrases(with.list("form"));
    c.not_form = Phrases(with.list("not-form"));
    c.states = Phrases(with.list("states"));
    c.line = Phrases(with.list("line"));
    c.title = Phrases(with.list("title"));
    c.not_title = Phrases(with.list("not-title"));
    c.told = Phrases(with.list("told"));
    c.not_told = Phrases(with.list("not-told"));
    c.more_than = AmountLimit::read(with, "more-than");
    c.up_to = AmountLimit::read(with, "up-to");
    if (const auto measured = with.choice("measured", {"weight", "volume", "count"}))
      c.measured = *measured + 1;
    if (const auto acid = with.choice("acid", {"none", "added"})) c.acid_added = *acid == 1;
    return c;
  }

  static Entry read_entry(const Rule& rule, const FoodIndex& index, Maker& maker) {
    Entry entry{&rule, {}, SilentIf::listed, {}};
    const auto what = "rule " + rule.id + ", with";
    Fields with(rule.with, what, {rule.file, maker.errors});
    if (const auto silent =
            with.choice("silent-if", {"listed", "near", "in-formula", "form-listed", "never"}))
      entry.silent_if = static_cast<SilentIf>(*silent);
    with.list("yields-to");
    if (const auto* cases = with.find("cases")) {
      for (const auto& node : cases->items) {
        Fields fields(node, what + ", case", with.sink());
        entry.cases.push_back(read_case(fields, index));
        fields.done();
      }
    } else {
      entry.cases.push_back(read_case(with, index));
    }
    with.done();
    return entry;
  }

  void read_yields(std::span<const Rule* const> rules, Maker& maker) {
    for (std::size_t i = 0; i < rules.size(); ++i) {
      Fields with(rules[i]->with, "rule " + rules[i]->id + ", with", {rules[i]->file, maker.errors});
      for (const auto& id : with.list("yields-to")) {
        const auto other =
            std::find_if(rules.begin(), rules.end(), [&](const Rule* rule) { return rule->id == id; });
        if (other == rules.end())
          with.sink().add(rules[i]->with.at, "rule " + rules[i]->id + ": no rule '" + id + "' of this check");
        else
          entries_[i].yields_to.push_back(static_cast<std::size_t>(other - rules.begin()));
      }
    }
  }

  void index_triggers(const foods::Catalogue& catalogue) {
    triggers_.resize(catalogue.all().size());
    for (std::size_t i = 0; i < entries_.size(); ++i)
      for (const auto& food : catalogue.all())
        if (std::any_of(entries_[i].cases.begin(), entries_[i].cases.end(),
                        [&](const Case& c) { return c.foods.has(food); }))
          triggers_[static_cast<std::size_t>(&food - foods_)].push_back(static_cast<std::uint16_t>(i));
  }

  [[nodiscard]] bool lists(const Entry& entry, const tested::Product& product,
                           const foods::Food& food) const {
    const FoodSet& foods = entry.silent_if == SilentIf::in_formula ? product_foods_->in_formula(product)
                                                                   : product_foods_->listed(product);
    return !product.no_tested_process && foods.has(food);
  }

  /// The product that the card follows lists the food; where several fit equally well, all of them do. For
  /// `near` the nearest will do.
  [[nodiscard]] bool product_takes(const Entry& entry, const reading::Reading& reading,
                                   const foods::Food& food) const {
    const auto& match = reading.match;
    if (match.product == nullptr || entry.silent_if >= SilentIf::form_listed) return false;
    if (!lists(entry, *match.product, food)) return false;
    if (product_foods_->in_formula(*match.product).has(food) && keeps_to_formula(reading)) return true;
    return match.sure() || entry.silent_if == SilentIf::near ||
           (!match.also.empty() && std::all_of(match.also.begin(), match.also.end(),
                                               [&](auto* other) { return lists(entry, *other, food); }));
  }

  /// The formula takes this form: its line for the ingredient says so ("frozen or canned"), or one of the
  /// changes that it allows does ("unsweetened frozen fruit, thawed").
  static bool form_listed(const reading::Reading& reading, const reading::Ingredient& ingredient,
                          std::string_view form) {
    const auto* product = reading.match.product;
    if (product == nullptr || !product->formula) return false;
    const auto names = [&](const std::string& id) {
      return std::any_of(ingredient.read.foods.begin(), ingredient.read.foods.end(), [&](const auto& named) {
        return named.food != nullptr && reading.catalogue->is_a(*named.food, id);
      });
    };
    const auto& formula = *product->formula;
    const auto says_form = [&](const std::string& text) { return text.find(form) != text.npos; };
    if (std::any_of(formula.allowed.begin(), formula.allowed.end(), says_form)) return true;
    return std::any_of(formula.lines.begin(), formula.lines.end(), [&](const auto& line) {
      return says_form(line.text) && std::any_of(line.foods.begin(), line.foods.end(), names);
    });
  }

  void ask(const reading::Reading& reading, const reading::Ingredient& ingredient, const foods::Named& named,
           std::vector<Hit>& hits) const {
    const Question question(reading, ingredient);
    for (const auto i : triggers_[static_cast<std::size_t>(named.food - foods_)]) {
      const auto& entry = entries_[i];
      if (std::any_of(hits.begin(), hits.end(), [&](const Hit& hit) { return hit.entry == &entry; }))
        continue;
      if (product_takes(entry, reading, *named.food)) continue;
      std::string_view form;
      const bool held = std::any_of(entry.cases.begin(), entry.cases.end(), [&](const Case& c) {
        return c.foods.has(*named.food) && question.holds(c, form);
      });
      if (held && entry.silent_if == SilentIf::form_listed && form_listed(reading, ingredient, form))
        continue;
      if (held && applies(entry.rule->only_if, reading)) hits.push_back({&entry, &ingredient, &named, form});
    }
  }

  [[nodiscard]] bool yields(const Hit& hit, const std::vector<Hit>& hits) const {
    return std::any_of(hit.entry->yields_to.begin(), hit.entry->yields_to.end(), [&](std::size_t other) {
      return std::any_of(hits.begin(), hits.end(), [&](const Hit& h) { return h.entry == &entries_[other]; });
    });
  }

  static void tell(const Hit& hit, Results& results) {
    results.add(*hit.entry->rule, hit.ingredient->line->at,
                {{"food", hit.named->name}, {"form", std::string(hit.form)}});
  }

  const foods::Food* foods_;
  std::vector<Entry> entries_;
  std::vector<std::vector<std::uint16_t>> triggers_;  ///< entries that a food may set off
  std::shared_ptr<const ProductFoods> product_foods_;
};

}  // namespace

std::unique_ptr<Check> make_forbidden_food(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<ForbiddenFood>(rules, maker);
}

}  // namespace sealworthy::checks
