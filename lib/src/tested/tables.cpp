#include "tested/tables.hpp"

#include <algorithm>
#include <tuple>
#include <unordered_map>

#include "tested/change.hpp"
#include "tested/compare_pairs.hpp"
#include "tested/load_product.hpp"
#include "text/nearest.hpp"

namespace sealworthy::tested {

struct Tables::Impl {
  knowledge::Sources sources;
  Sizes sizes;
  AltitudeRules altitude;
  std::vector<Product> products;
  std::vector<Change> changes;
  std::vector<std::pair<std::string, yaml::Node>> places;  ///< file and node of each product, until finish()
  std::vector<std::shared_ptr<const void>> arenas;         ///< of those nodes
  std::unordered_map<std::string_view, const Product*> by_id;
  std::unordered_map<std::string_view, std::vector<const Product*>> by_food;
};

Tables::Tables() : impl_(std::make_shared<Impl>()) {}

LoadContext Tables::context_of(const Impl& impl, const checks::ErrorSink& sink,
                               const foods::Catalogue& catalogue) {
  return {sink, catalogue, impl.sizes, impl.altitude.form, impl.sources, {}, {}, {}, {}, 0, 0, {}};
}

void Tables::load(std::string_view file, const yaml::Document& document, const foods::Catalogue& catalogue,
                  std::vector<foods::LoadError>& errors) {
  auto& impl = *impl_;
  const auto& root = document.root();
  const checks::ErrorSink sink{file, errors};
  if (root.find("sources") != nullptr) {
    // Who else reads the sources tells what is wrong with them.
    std::vector<foods::LoadError> told_elsewhere;
    impl.sources.load(file, document, told_elsewhere);
  } else if (root.find("jars") != nullptr) {
    impl.sizes.load(document, impl.sources, sink);
  } else if (root.find("bands") != nullptr) {
    impl.altitude.load(document, impl.sources, sink);
  } else if (root.find("changes") != nullptr) {
    auto context = context_of(impl, sink, catalogue);
    load_changes(document, context, impl.changes);
  } else {
    auto context = context_of(impl, sink, catalogue);
    load_products(document, context, impl.products);
    if (const auto* list = root.find("products"))
      for (const auto& node : list->items) impl.places.emplace_back(file, node);
    impl.arenas.push_back(document.arena());
  }
}

namespace {

bool same_steps(const Option& a, const Option& b) {
  return std::equal(a.steps.begin(), a.steps.end(), b.steps.begin(), b.steps.end(),
                    [](const Option::Step& x, const Option::Step& y) {
                      return x.band.from == y.band.from && x.time == y.time && x.pressure == y.pressure;
                    });
}

bool has_row_like(const Product& product, const Row& row) {
  return std::any_of(product.rows.begin(), product.rows.end(), [&](const Row& other) {
    return other.method == row.method && other.jar == row.jar && (!row.hot || other.hot) &&
           (!row.raw || other.raw) &&
           std::equal(other.options.begin(), other.options.end(), row.options.begin(), row.options.end(),
                      same_steps);
  });
}

void find_foods(Formula& formula, const foods::Catalogue& catalogue) {
  for (auto& line : formula.lines)
    for (const auto& id : line.foods) line.named.push_back(catalogue.find(id));
  formula.facts = facts_of(formula);
}

}  // namespace

void Tables::finish(const foods::Catalogue& catalogue, std::vector<foods::LoadError>& errors) {
  auto& impl = *impl_;
  for (auto& product : impl.products) {
    if (product.formula) find_foods(*product.formula, catalogue);
    for (auto& version : product.versions) find_foods(version, catalogue);
  }
  for (std::size_t i = 0; i < impl.products.size(); ++i) {
    const auto& product = impl.products[i];
    const auto& [file, node] = impl.places[i];
    if (!impl.by_id.emplace(product.id, &product).second)
      errors.push_back({file, {node.at, "product " + product.id + " stands here twice", ""}});
    for (const auto& food : product.foods) {
      auto& with = impl.by_food[food];
      if (with.empty() || with.back() != &product) with.push_back(&product);
    }
  }
  for (std::size_t i = 0; i < impl.products.size(); ++i) {
    const auto& product = impl.products[i];
    const auto& [file, node] = impl.places[i];
    if (product.same_process_as.empty()) continue;
    const auto* other = find(product.same_process_as);
    const auto* key = node.find("same-process-as");
    if (other == nullptr) {
      errors.push_back({file, {key->at, "no such product as '" + product.same_process_as + "'", ""}});
      continue;
    }
    for (const auto& row : product.rows)
      if (!has_row_like(*other, row))
        errors.push_back({file,
                          {key->at,
                           product.id + ": its " + std::string(to_string(row.method)) + " row for " +
                               impl.sizes.jars[static_cast<std::size_t>(row.jar)].plural +
                               " differs from that of " + other->id,
                           ""}});
  }
  find_changes(errors);
  impl.places = {};
  impl.arenas = {};
}

void Tables::find_changes(std::vector<foods::LoadError>& errors) {
  auto& impl = *impl_;
  const auto change = [&](const std::string& id, std::size_t product) -> const Change* {
    for (const auto& one : impl.changes)
      if (one.id == id) return &one;
    const auto& [file, node] = impl.places[product];
    std::vector<std::string_view> ids;
    for (const auto& one : impl.changes) ids.emplace_back(one.id);
    const auto near = text::nearest(id, ids);
    errors.push_back(
        {file,
         {node.at, impl.products[product].id + ": no such change as '" + id + "' in rules/changes.yaml",
          near ? "did you mean '" + std::string(*near) + "'?" : ""}});
    return nullptr;
  };
  for (std::size_t i = 0; i < impl.products.size(); ++i) {
    auto& product = impl.products[i];
    if (!product.formula) continue;
    const auto& [may, may_not] = std::tie(product.formula->may, product.formula->may_not);
    for (const auto& id : may)
      if (const auto* one = change(id, i)) product.changes.push_back(one);
    for (const auto& id : may_not) change(id, i);
    for (const auto& one : impl.changes) {
      const auto named = [&](const std::vector<std::string>& list) {
        return std::find(list.begin(), list.end(), one.id) != list.end();
      };
      if (one.holds_for(static_cast<unsigned>(product.acid_class)) && !named(may) && !named(may_not))
        product.changes.push_back(&one);
    }
  }
}

std::span<const Product> Tables::products() const { return impl_->products; }

const Product* Tables::find(std::string_view id) const {
  const auto found = impl_->by_id.find(id);
  return found != impl_->by_id.end() ? found->second : nullptr;
}

std::optional<std::string_view> Tables::nearest_id(std::string_view id) const {
  std::vector<std::string_view> ids;
  for (const auto& product : impl_->products) ids.emplace_back(product.id);
  return text::nearest(id, ids);
}

std::span<const Product* const> Tables::with_food(std::string_view food) const {
  const auto found = impl_->by_food.find(food);
  if (found == impl_->by_food.end()) return {};
  return found->second;
}

std::span<const JarSize> Tables::jars() const { return impl_->sizes.jars; }

std::optional<JarIndex> Tables::jar_size(const quantity::JarText& jar) const { return impl_->sizes.of(jar); }

Altitude Tables::highest_open() const { return impl_->altitude.highest_open; }

const SteamRule& Tables::steam() const { return impl_->altitude.steam; }

const AdviceAbove* Tables::advice(const Option& option, TableMethod method, Altitude altitude) const {
  for (const auto& advice : impl_->altitude.advice) {
    if (advice.method != method || altitude < advice.band.from || altitude > advice.band.to) continue;
    if (!advice.at_lowest || (!option.steps.empty() && option.steps.front().pressure == advice.at_lowest))
      return &advice;
  }
  return nullptr;
}

namespace {

bool holds_for(const Row& row, TableMethod method, std::optional<recipe::Pack> pack,
               std::string_view applies_to) {
  if (row.method != method || (!applies_to.empty() && row.applies_to != applies_to)) return false;
  const bool unsaid = !row.hot && !row.raw;
  return !pack || unsaid || (*pack == recipe::Pack::hot ? row.hot : row.raw);
}

}  // namespace

std::vector<Needed> Tables::needed(const Product& product, TableMethod method,
                                   std::optional<recipe::Pack> pack, JarIndex jar, Altitude altitude,
                                   std::string_view applies_to) const {
  const auto fits = [&](const Row& row) { return holds_for(row, method, pack, applies_to); };
  // The size of the rows to be used: the jar's own, that which it counts as, else the next larger.
  const auto counted = impl_->sizes.jars[static_cast<std::size_t>(jar)].counts_as;
  std::optional<JarIndex> size;
  for (const auto& row : product.rows) {
    if (!fits(row) || row.jar < jar) continue;
    const auto rank = [&](JarIndex j) { return j == jar ? 0 : j == counted ? 1 : 2 + j; };
    if (!size || rank(row.jar) < rank(*size)) size = row.jar;
  }
  std::vector<Needed> choices;
  if (!size) return choices;
  for (const auto& row : product.rows) {
    if (!fits(row) || row.jar != *size) continue;
    for (const auto& option : row.options) {
      const auto* step = altitude <= highest_open() ? option.at(altitude) : nullptr;
      choices.push_back({&row, &option, step, *size != jar});
    }
  }
  return choices;
}

}  // namespace sealworthy::tested
