#include "reading/match_index.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <string>
#include <unordered_map>

#include "checks/fields.hpp"
#include "tested/change.hpp"
#include "tested/compare_changes.hpp"
#include "tested/line_foods.hpp"

namespace sealworthy::reading {
namespace {

constexpr std::size_t most_lines = 64;

/// Foods that a word of an identity or a formula line stands for.
class Meaning {
 public:
  explicit Meaning(const foods::Catalogue& catalogue) : foods_(catalogue.all()) {
    for (std::size_t i = 0; i < foods_.size(); ++i) {
      by_id_.emplace(foods_[i].id, i);
      by_kind_[foods_[i].kind].push_back(i);
      for (const auto& tag : foods_[i].tags) by_tag_[tag].push_back(i);
    }
    for (std::size_t i = 0; i < foods_.size(); ++i) {
      const auto parent = by_id_.find(foods_[i].parent);
      if (parent != by_id_.end()) children_[parent->second].push_back(i);
    }
  }

  /// Appends the foods; false if the word names none.
  bool add(std::string_view word, std::vector<std::size_t>& out) const {
    if (word.starts_with("kind:")) return add_group(by_kind_, word.substr(5), out);
    if (word.starts_with("tag:")) return add_group(by_tag_, word.substr(4), out);
    const auto found = by_id_.find(word);
    if (found == by_id_.end()) return false;
    add_with_forms(found->second, found->second, out);
    return true;
  }

 private:
  using Group = std::unordered_map<std::string_view, std::vector<std::size_t>>;

  /// A group means what can be preserved at all; of spices and herbs only the dry ones.
  bool add_group(const Group& group, std::string_view key, std::vector<std::size_t>& out) const {
    const auto found = group.find(key);
    if (found == group.end()) return false;
    for (const auto i : found->second) {
      const auto& food = foods_[i];
      const bool fresh_spice = (key == "spice" || key == "herb") && !tested::only_flavor(food);
      if (food.guide_class != "none" && !fresh_spice) out.push_back(i);
    }
    return true;
  }

  void add_with_forms(std::size_t food, std::size_t root, std::vector<std::size_t>& out) const {
    out.push_back(food);
    const auto found = children_.find(food);
    if (found == children_.end()) return;
    for (const auto child : found->second)
      if (tested::no_worse(foods_[child], foods_[root])) add_with_forms(child, root, out);
  }

  std::span<const foods::Food> foods_;
  std::unordered_map<std::string_view, std::size_t> by_id_;
  Group by_kind_, by_tag_;
  std::unordered_map<std::size_t, std::vector<std::size_t>> children_;
};

/// Builds entries and places; the places are sorted by food at the end.
class Builder {
 public:
  Builder(MatchIndex::Impl& impl, std::vector<foods::LoadError>& errors)
      : impl_(impl), errors_(errors), meaning_(*impl.catalogue) {}

  void add(const tested::Product& product, std::uint16_t index) {
    std::vector<const tested::Formula*> formulas;
    if (product.formula) formulas.push_back(&*product.formula);
    for (const auto& version : product.versions) formulas.push_back(&version);
    if (formulas.empty()) formulas.push_back(nullptr);
    for (const auto* formula : formulas) add_entry(product, index, formula);
    impl_.forms.add_name(product.title, index);
    for (const auto& name : product.identity.names) impl_.forms.add_name(name, index);
  }

  void sort_places() {
    const auto common = [&](const Found& f) {
      const std::uint64_t bit = std::uint64_t{1} << f.place.line;
      return impl_.telling[f.food] != Telling::body && (impl_.entries[f.place.entry].body & bit) == 0;
    };
    const auto part = [&](const Found& f) { return 2 * f.food + (common(f) ? 1 : 0); };
    std::stable_sort(found_.begin(), found_.end(),
                     [&](const Found& a, const Found& b) { return part(a) < part(b); });
    impl_.starts.assign(2 * impl_.catalogue->all().size() + 1, 0);
    for (const auto& f : found_) ++impl_.starts[part(f) + 1];
    for (std::size_t i = 1; i < impl_.starts.size(); ++i) impl_.starts[i] += impl_.starts[i - 1];
    for (const auto& f : found_) impl_.places.push_back(f.place);
    std::erase_if(found_, [&](const Found& f) { return !common(f); });
    std::stable_sort(found_.begin(), found_.end(),
                     [](const Found& a, const Found& b) { return a.place.entry < b.place.entry; });
    impl_.common_starts.assign(impl_.entries.size() + 1, 0);
    for (const auto& f : found_) ++impl_.common_starts[f.place.entry + std::size_t{1}];
    for (std::size_t i = 1; i < impl_.common_starts.size(); ++i)
      impl_.common_starts[i] += impl_.common_starts[i - 1];
    for (const auto& f : found_) impl_.common.push_back({static_cast<std::uint16_t>(f.food), f.place.line});
  }

 private:
  struct Found {
    std::size_t food;
    Place place;
  };

  void add_entry(const tested::Product& product, std::uint16_t index, const tested::Formula* formula) {
    Entry entry;
    entry.product = &product;
    entry.index = index;
    entry.formula = formula;
    const auto& identity = product.identity;
    // Where an identity lists what may be mixed freely, the formula's lines are a suggestion.
    if (formula != nullptr)
      for (const auto& line : formula->lines) add_formula_line(entry, line, identity.any_of.empty());
    for (const auto& food : identity.all_of) add_line(entry, {&food, 1}, true, food);
    const bool by_own_foods = formula == nullptr && identity.all_of.empty() && identity.any_of.empty();
    const auto& any_of = by_own_foods ? product.foods : identity.any_of;
    if (!any_of.empty()) {
      entry.any_line = static_cast<int>(entry.line_names.size());
      entry.at_least = identity.at_least;
      add_line(entry, any_of, true, any_of.front());
    }
    if (!identity.may.empty()) add_line(entry, identity.may, false, "");
    for (const auto& acid : product.acid_per_jar)
      for (const auto& choice : acid.one_of) add_line(entry, {&choice.food, 1}, false, "");
    impl_.entries.push_back(std::move(entry));
  }

  void add_formula_line(Entry& entry, const tested::FormulaLine& line, bool fixed) {
    const std::size_t at = add_line(entry, line.foods, fixed && !line.optional && !line.not_eaten, line.text);
    if (line.not_eaten && at < most_lines) entry.body &= ~(std::uint64_t{1} << at);
  }

  /// One place of a product for any of some foods; what the foods tell decides whether it can be required.
  std::size_t add_line(Entry& entry, std::span<const std::string> words, bool required,
                       std::string_view name) {
    const std::size_t at = entry.line_names.size();
    if (at >= most_lines) return at;
    entry.line_names.push_back(name);
    std::vector<std::size_t> foods;
    for (const auto& word : words)
      if (!meaning_.add(word, foods)) error(*entry.product, "no food, kind or tag is called '" + word + "'");
    std::sort(foods.begin(), foods.end());
    foods.erase(std::unique(foods.begin(), foods.end()), foods.end());
    const auto number = static_cast<std::uint16_t>(impl_.entries.size());
    Telling most = Telling::water;
    for (const auto food : foods) {
      found_.push_back({food, {number, static_cast<std::uint8_t>(at)}});
      most = std::max(most, impl_.telling[food]);
    }
    const std::uint64_t bit = std::uint64_t{1} << at;
    const auto& main = entry.product->foods;
    if (!main.empty() && std::find(words.begin(), words.end(), main.front()) != words.end())
      entry.main |= bit;
    // Where water would do, cards do not list it.
    if (std::any_of(foods.begin(), foods.end(),
                    [&](std::size_t f) { return impl_.telling[f] == Telling::water; }))
      return at;
    if (required && most >= Telling::helper) entry.required |= bit;
    if (required && most == Telling::flavor) entry.flavor |= bit;
    if (most == Telling::body && (required || entry.formula != nullptr)) entry.body |= bit;
    return at;
  }

  void error(const tested::Product& product, std::string message) {
    errors_.push_back({"rules/processes", {{}, "product " + product.id + ": " + std::move(message), {}}});
  }

  MatchIndex::Impl& impl_;
  std::vector<foods::LoadError>& errors_;
  Meaning meaning_;
  std::vector<Found> found_;
};

/// The forms of a product: those that its identity names and those of its own title, styles and formula.
void read_forms(MatchIndex::Impl& impl, Entry& entry, std::vector<foods::LoadError>& errors) {
  const auto& product = *entry.product;
  const auto set_of = [&](const std::vector<std::string>& names) {
    FormSet out = 0;
    for (const auto& name : names) {
      if (const auto bit = impl.forms.find(name))
        out |= *bit;
      else
        errors.push_back(
            {"rules/processes", {{}, "product " + product.id + ": no form is called '" + name + "'", {}}});
    }
    return out;
  };
  entry.any = set_of(product.identity.form_any);
  entry.none = set_of(product.identity.form_none);
  FormSet own = entry.any | set_of(product.identity.form_may) | impl.forms.in_text(product.title);
  for (const auto& style : product.styles) own |= impl.forms.in_text(style);
  if (entry.formula != nullptr)
    for (const auto& line : entry.formula->lines) {
      own |= impl.forms.in_text(line.text);
      for (const auto& state : line.states) own |= impl.forms.in_text(state);
    }
  entry.covers = impl.forms.covered_by(own) & ~entry.none;
}

/// True for each change that may bring in a food that the jar is about.
std::unordered_map<const tested::Change*, bool> bringing_in(const MatchIndex::Impl& impl,
                                                            const Meaning& meaning) {
  std::unordered_map<const tested::Change*, bool> out;
  for (const auto& entry : impl.entries)
    for (const auto* change : entry.product->changes) {
      const auto [at, fresh] = out.emplace(change, false);
      if (!fresh || (change->does & (tested::Change::swap | tested::Change::add)) == 0) continue;
      std::vector<std::size_t> foods;
      for (const auto& word : change->to) meaning.add(word, foods);
      at->second = std::any_of(foods.begin(), foods.end(),
                               [&](std::size_t food) { return impl.telling[food] == Telling::body; });
    }
  return out;
}

/// What harmless changes do to each entry, and what is looked at first.
void read_changes(MatchIndex::Impl& impl, const Meaning& meaning) {
  using tested::Change;
  const auto brings_in = bringing_in(impl, meaning);
  for (auto& entry : impl.entries) {
    MatchIndex::Impl::Brief brief;
    // What an identity asks for besides the lines of the formula, comparing does not ask for.
    const std::size_t own = entry.formula == nullptr ? 0 : entry.formula->lines.size();
    if (own > 0 && own < most_lines) entry.may_lack = ~std::uint64_t{0} << own;
    for (const auto* change : entry.product->changes) {
      brief.takes_more = brief.takes_more || brings_in.at(change);
      if ((change->does & (Change::swap | Change::leave_out)) == 0) continue;
      for (std::size_t i = 0; i < own; ++i)
        if (tested::meant(*change, entry.formula->lines[i], *entry.product, *impl.catalogue))
          entry.may_lack |= tested::line_bit(i);
    }
    brief.body = entry.body;
    brief.needs = entry.required & entry.body;
    brief.keeps = brief.needs & ~entry.may_lack;
    brief.main = entry.plain() || (entry.main & ~entry.body) != 0 ? ~std::uint64_t{0} : entry.main;
    brief.required = static_cast<std::uint8_t>(std::popcount(entry.required));
    brief.at_least = static_cast<std::uint8_t>(entry.at_least);
    impl.briefs.push_back(brief);
    impl.most_foreign.push_back(
        static_cast<std::uint8_t>(std::max((brief.required + 1) / 2, int{brief.at_least})));
  }
}

}  // namespace

Telling telling_of(const foods::Food& food) {
  static constexpr std::array<std::string_view, 4> helpers{"acid", "sweetener", "thickener", "fat"};
  if (tested::is_salt(food)) return Telling::salt;
  if (tested::is_water(food)) return Telling::water;
  if (tested::only_flavor(food)) return Telling::flavor;
  if (std::find(helpers.begin(), helpers.end(), food.kind) != helpers.end()) return Telling::helper;
  return Telling::body;
}

namespace {

std::uint64_t lines_in(std::span<const Place> places, std::uint16_t entry) {
  std::uint64_t lines = 0;
  auto place = std::lower_bound(places.begin(), places.end(), entry,
                                [](const Place& p, std::uint16_t e) { return p.entry < e; });
  for (; place != places.end() && place->entry == entry; ++place) lines |= std::uint64_t{1} << place->line;
  return lines;
}

}  // namespace

std::uint64_t MatchIndex::Impl::lines_for(std::size_t food, std::uint16_t entry) const {
  return lines_in(telling_places(food), entry) | common_lines_for(food, entry);
}

std::uint64_t MatchIndex::Impl::common_lines_for(std::size_t food, std::uint16_t entry) const {
  const auto end = common.begin() + common_starts[entry + std::size_t{1}];
  auto at = std::lower_bound(common.begin() + common_starts[entry], end, food,
                             [](const FoodLine& one, std::size_t f) { return one.food < f; });
  std::uint64_t lines = 0;
  for (; at != end && at->food == food; ++at) lines |= std::uint64_t{1} << at->line;
  return lines;
}

MatchIndex::MatchIndex() : impl_(std::make_unique<Impl>()) {}
MatchIndex::~MatchIndex() = default;
MatchIndex::MatchIndex(MatchIndex&&) noexcept = default;
MatchIndex& MatchIndex::operator=(MatchIndex&&) noexcept = default;

void MatchIndex::load(std::string_view file, const yaml::Document& document,
                      std::vector<foods::LoadError>& errors) {
  impl_->forms.load(file, document, errors);
}

void MatchIndex::finish(const tested::Tables& tables, const foods::Catalogue& catalogue,
                        std::vector<foods::LoadError>& errors) {
  auto& impl = *impl_;
  impl.tables = &tables;
  impl.catalogue = &catalogue;
  for (const auto& food : catalogue.all()) impl.telling.push_back(telling_of(food));
  Builder builder(impl, errors);
  const auto products = tables.products();
  for (std::size_t i = 0; i < products.size(); ++i) builder.add(products[i], static_cast<std::uint16_t>(i));
  builder.sort_places();
  impl.forms.finish();
  impl.food_forms.assign(catalogue.all().size(), 0);
  const Meaning meaning(catalogue);
  read_changes(impl, meaning);
  for (const auto& [food, form] : impl.forms.food_forms()) {
    std::vector<std::size_t> meant;
    if (!meaning.add(food, meant))
      errors.push_back(
          {"rules/forms.yaml", {{}, "no food, kind or tag is called '" + std::string(food) + "'", {}}});
    for (const auto i : meant) impl.food_forms[i] |= form;
  }
  for (auto& entry : impl.entries) read_forms(impl, entry, errors);
}

std::string_view MatchIndex::not_covered(const tested::Product& product, std::string_view words) const {
  const auto& forms = impl_->forms;
  const FormSet said = forms.in_text(words);
  FormSet barred = 0;
  for (const auto& entry : impl_->entries) {
    if (entry.product != &product) continue;
    const FormSet decides = entry.plain() ? forms.deciding_plain() : forms.deciding();
    barred = (said & decides & ~entry.covers) | (said & entry.none);
    if (barred == 0) return {};  // one version of a formula is enough
  }
  return forms.words_for(barred);
}

}  // namespace sealworthy::reading
