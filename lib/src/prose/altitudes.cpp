#include <algorithm>
#include <cmath>
#include <limits>

#include "phrases/figures.hpp"
#include "prose/marks.hpp"

namespace sealworthy::prose {
namespace {

using Kind = Mark::Kind;

std::string_view text(const Sentence& s, std::size_t i) {
  return i < s.tokens.size() ? s.tokens[i].text : std::string_view();
}

bool marked(const Sentence& s, std::size_t i) {
  return std::any_of(s.marks.begin(), s.marks.end(),
                     [&](const Mark& m) { return m.kind == Kind::altitude && m.first <= i && i < m.last; });
}

/// Where words begin that speak of the heights above those told before; how many words they are, 0: none.
std::size_t speaks_of_above(const Sentence& s, std::size_t i) {
  if (const std::size_t words = s.senses[i].words(Sense::higher); words != 0) {
    // "1,000 feet or higher" is a height of its own.
    const bool joined = i > 1 && one_of(text(s, i - 1), {"or", "and"}) && marked(s, i - 2);
    return joined ? 0 : words;
  }
  if (s.senses[i].words(Sense::above) != 1 || (i > 0 && marked(s, i - 1))) return 0;
  const std::size_t next = i + 1;
  return next == s.tokens.size() || s.tokens[next].before != 0 ? 1 : 0;
}

/// "from 4,001 to 6,000", "above 3,000" in a sentence that has told other altitudes with their unit.
void heights_without_unit(Sentence& s) {
  constexpr double least = 500;  // smaller figures may be anything
  if (!s.has(Kind::altitude)) return;
  std::vector<Mark> found;
  for (std::size_t i = 0; i + 1 < s.marks.size(); ++i) {
    const Mark& low = s.marks[i];
    const Mark& high = s.marks[i + 1];
    if (low.kind != Kind::number || high.kind != Kind::number) continue;
    const bool range = (high.first == low.last && s.tokens[high.first].before == 0) ||
                       (high.first == low.last + 1 && one_of(text(s, low.last), {"to", "and", "through"}));
    if (!range || low.figure.low < least || high.figure.low <= low.figure.low) continue;
    Mark both = low;
    both.kind = Kind::altitude;
    both.last = high.last;
    both.feet = {low.figure.low, high.figure.low};
    found.push_back(both);
  }
  // "above 3,000"
  for (const Mark& mark : s.marks) {
    if (mark.kind != Kind::number || mark.figure.low < least || !ends_before(s, mark.first, Sense::above))
      continue;
    Mark above = mark;
    above.kind = Kind::altitude;
    above.feet = {mark.figure.low, std::numeric_limits<double>::infinity()};
    found.push_back(above);
  }
  for (Mark& mark : found) {
    std::erase_if(s.marks, [&](const Mark& m) { return m.first >= mark.first && m.last <= mark.last; });
    s.marks.push_back(std::move(mark));
  }
}

void sort(Sentence& s) {
  std::stable_sort(s.marks.begin(), s.marks.end(),
                   [](const Mark& a, const Mark& b) { return a.first < b.first; });
}

}  // namespace

bool ends_before(const Sentence& s, std::size_t i, Sense sense) {
  while (i > 0 && one_of(text(s, i - 1), {"about", "an", "a", "the", "elevations", "altitudes", "of"})) --i;
  for (std::size_t back = 1; back <= 4 && back <= i; ++back)
    if (s.senses[i - back].words(sense) == back) return true;
  return false;
}

void find_altitudes_told_back(Sentence& s) {
  heights_without_unit(s);
  sort(s);
  for (std::size_t i = 0; i < s.tokens.size(); ++i) {
    const std::size_t words = marked(s, i) ? 0 : speaks_of_above(s, i);
    if (words == 0) continue;
    const Mark* height = nullptr;
    const Mark* figure = nullptr;
    for (const Mark& mark : s.marks) {
      if (mark.first >= i) break;
      if (mark.kind == Kind::altitude && !mark.step) height = &mark;
      const bool bare = mark.kind == Kind::number && mark.last == i;  // "40 above"
      if (mark.kind == Kind::time || mark.kind == Kind::pressure || bare) figure = &mark;
    }
    // A figure between them says that another one is meant for up there.
    if (height == nullptr || figure == nullptr || figure->first < height->first) continue;
    if (std::isinf(height->feet.high)) continue;
    Mark above;
    above.kind = Kind::altitude;
    above.first = i;
    above.last = i + words;
    above.feet = {height->feet.high, std::numeric_limits<double>::infinity()};
    above.denied = s.denied(i);
    s.marks.push_back(above);
    sort(s);
  }
}

std::optional<recipe::Placed<Altitude>> find_home(const Sentence& s) {
  constexpr std::size_t near = 6;
  constexpr double least = 100;  // fewer feet are a length
  if (s.question) return std::nullopt;
  for (std::size_t i = 0; i < s.tokens.size(); ++i) {
    const std::size_t words = s.senses[i].words(Sense::at_home);
    if (words == 0 || s.denied(i) || s.polarity.supposed[i]) continue;
    const Mark* nearest = nullptr;
    for (const Mark& mark : s.marks) {
      if (mark.kind != Kind::altitude || mark.step || mark.feet.high < least) continue;
      if (mark.denied || s.polarity.supposed[mark.first]) continue;
      const bool behind = mark.first >= i + words && mark.first - (i + words) <= near;
      const bool before = mark.last <= i && i - mark.last <= 3;
      if ((behind || before) && (nearest == nullptr || (behind && nearest->first < i))) nearest = &mark;
    }
    if (nearest == nullptr) continue;
    const Interval<double> told = nearest->feet;
    if (!told.exact() && !std::isinf(told.high) && told.low > 0) continue;
    return recipe::Placed<Altitude>{feet(std::isinf(told.high) ? told.low : told.high), s.at(nearest->first),
                                    s.words(nearest->first, nearest->last)};
  }
  return std::nullopt;
}

}  // namespace sealworthy::prose
