#include "reading/match_near.hpp"

#include <algorithm>

namespace sealworthy::reading {
namespace {

constexpr int said_form = 1;

}  // namespace

bool near(const Candidate& c) {
  if (c.named) return true;
  if (c.entry->plain()) return c.missing == 0 && c.foreign <= std::max(1, c.entry->at_least - 1);
  return (c.covered & c.entry->main) != 0 && !c.other_dish && c.shared >= 2 &&
         2 * c.differences() <= c.shared + 1;
}

bool unnamed_dish(const Candidate& c) { return c.unlikely || (c.unsaid && c.entry->at_least > 1); }

int distance(const Candidate& c) {
  int out = one_difference * c.differences();
  if (c.contradicted != 0) out += 6;
  if (c.unsaid) out += c.unlikely ? 5 : 4;
  if (c.said) out -= said_form;
  if (c.named) out -= 5;
  return out;
}

int least_distance(int differences) { return one_difference * differences - said_form; }

bool changeable_formula(const Candidate& c) {
  return !c.entry->plain() && c.contradicted == 0 && !unnamed_dish(c) && !c.unsaid && !c.other_dish &&
         (c.missing & ~c.entry->may_lack) == 0;
}

bool pickled(const tested::Product& product, Comparisons& comparisons) {
  using State = tested::LineComparison::State;
  if (product.acid_class != tested::ProductClass::fermented || !product.formula) return false;
  const auto& compared = comparisons.in_figures(product);
  const bool more =
      std::any_of(compared.lines.begin(), compared.lines.end(), [](const tested::LineComparison& line) {
        return line.line->role == "acid" && line.state == State::more;
      });
  return more || std::any_of(compared.added.begin(), compared.added.end(), [](const auto& added) {
           return added.food != nullptr && added.food->kind == "acid";
         });
}

}  // namespace sealworthy::reading
