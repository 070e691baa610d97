#include "foods/catalogue.hpp"

#include <algorithm>

#include "foods/index.hpp"
#include "foods/line_reader.hpp"
#include "foods/loader.hpp"
#include "foods/weigh.hpp"

namespace sealworthy::foods {

struct Catalogue::Impl {
  Index index;
  Loader loader;
  std::vector<std::pair<std::string_view, FoodId>> by_id;  ///< sorted
};

Catalogue::Catalogue() : impl_(std::make_unique<Impl>()) {}
Catalogue::~Catalogue() = default;
Catalogue::Catalogue(Catalogue&&) noexcept = default;
Catalogue& Catalogue::operator=(Catalogue&&) noexcept = default;

bool Food::has_tag(std::string_view tag) const {
  return std::find(tags.begin(), tags.end(), tag) != tags.end();
}

void Catalogue::load(std::string_view file, const yaml::Document& document, std::vector<LoadError>& errors) {
  impl_->loader.load(file, document, impl_->index, errors);
}

void Catalogue::finish(std::vector<LoadError>& errors) {
  impl_->loader.finish(impl_->index, errors);
  const auto& foods = impl_->index.foods;
  impl_->by_id.reserve(foods.size());
  for (FoodId id = 0; id < foods.size(); ++id) impl_->by_id.emplace_back(foods[id].id, id);
  std::sort(impl_->by_id.begin(), impl_->by_id.end());
}

const Food* Catalogue::find(std::string_view id) const {
  const auto& ids = impl_->by_id;
  const auto found = std::lower_bound(
      ids.begin(), ids.end(), id, [](const auto& entry, std::string_view key) { return entry.first < key; });
  return found != ids.end() && found->first == id ? &impl_->index.foods[found->second] : nullptr;
}

std::span<const Food> Catalogue::all() const { return impl_->index.foods; }

const Food* Catalogue::named(std::string_view text) const { return read_whole_name(text, impl_->index); }

bool Catalogue::is_a(const Food& food, std::string_view ancestor) const {
  const auto& index = impl_->index;
  for (auto at = static_cast<FoodId>(&food - index.foods.data()); at != no_food; at = index.parents[at])
    if (index.foods[at].id == ancestor) return true;
  return false;
}

bool Catalogue::is_a(const Food& food, const Food& ancestor) const {
  const auto& index = impl_->index;
  const auto sought = static_cast<FoodId>(&ancestor - index.foods.data());
  for (auto at = static_cast<FoodId>(&food - index.foods.data()); at != no_food; at = index.parents[at])
    if (at == sought) return true;
  return false;
}

LineReading Catalogue::read_line(std::string_view line, quantity::Units units) const {
  return foods::read_line(line, units, impl_->index);
}

LineReading Catalogue::read_parts(std::string_view food, std::string_view amount,
                                  std::span<const std::string_view> states, quantity::Units units) const {
  return foods::read_parts(food, amount, states, units, impl_->index);
}

std::optional<Interval<Mass>> Catalogue::weigh(const quantity::Amount& amount, const Food& food,
                                               std::span<const std::string> states) const {
  std::vector<StateId> ids;
  for (const auto& state : states)
    if (const auto id = impl_->index.phrases.find_state(state); id != no_state) ids.push_back(id);
  return weigh_amount(amount, static_cast<FoodId>(&food - impl_->index.foods.data()), ids, impl_->index);
}

}  // namespace sealworthy::foods
