#include "plan/scale.hpp"

#include <algorithm>
#include <vector>

#include "quantity/figures.hpp"
#include "tested/compare_amounts.hpp"

namespace sealworthy::plan {
namespace {

/// Spices are free in every formula: a sixteenth more or less is nothing.
constexpr double as_exact = 0.01, spice = 0.06;

double tolerance_of(const foods::LineReading& read) {
  const bool spices =
      !read.foods.empty() && std::all_of(read.foods.begin(), read.foods.end(), [](const foods::Named& named) {
        return named.food != nullptr && named.food->kind == "spice";
      });
  return spices ? spice : as_exact;
}

std::string words(const quantity::Amount& amount, double factor, double tolerance) {
  // "6 garlic cloves": the noun stays behind the name.
  if (amount.noun_end > amount.noun_begin) {
    auto bare = amount;
    bare.unit.clear();
    return words(bare, factor, tolerance);
  }
  return (amount.at_least ? "at least " : "") + tested::words_of(amount, factor, tolerance);
}

}  // namespace

std::string scaled_line(std::string_view text, const foods::LineReading& read, double factor) {
  std::vector<const quantity::Amount*> amounts;
  const auto add = [&](const quantity::Amount& amount) {
    if (amount.stated_any() && amount.end > amount.begin && amount.end <= text.size())
      amounts.push_back(&amount);
  };
  add(read.amount);
  for (const auto& more : read.more) add(more);
  for (const auto& named : read.foods)
    if (named.amount) add(*named.amount);
  std::sort(amounts.begin(), amounts.end(), [](const auto* a, const auto* b) { return a->begin > b->begin; });
  std::string out(text);
  std::size_t upper = out.size() + 1;
  for (const auto* amount : amounts) {
    if (amount->end > upper) continue;  // lies within one that was done
    upper = amount->begin;
    std::string_view whole = std::string_view(text).substr(amount->begin, amount->end - amount->begin);
    std::string scaled = words(*amount, factor, tolerance_of(read));
    // The joining word or bracket of an amount said again belongs to it.
    for (const std::string_view joint : {"/", "= ", "or ", ", ", "("})
      if (whole.starts_with(joint)) scaled.insert(0, joint);
    if (whole.starts_with('(') && whole.ends_with(')')) scaled += ')';
    out.replace(amount->begin, amount->end - amount->begin, scaled);
  }
  return out;
}

std::string amount_times(const foods::LineReading& read, double factor) {
  return read.amount.stated_any() ? words(read.amount, factor, tolerance_of(read)) : std::string();
}

}  // namespace sealworthy::plan
