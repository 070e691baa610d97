#include "prose/filling.hpp"

#include <algorithm>

#include "quantity/amount.hpp"

namespace sealworthy::prose {
namespace {

using Kind = Mark::Kind;

std::string_view text(const Sentence& s, std::size_t i) {
  return i < s.tokens.size() ? s.tokens[i].text : std::string_view();
}

bool is(const Sentence& s, std::size_t i, Sense sense) {
  return i < s.tokens.size() && s.senses[i].has(sense);
}

/// "1/2-inch headspace", "1 inch of headspace", "1 inch (2.5 cm) headspace"
bool headspace_behind(const Sentence& s, std::size_t last) {
  for (std::size_t i = last; i < last + 5 && i < s.tokens.size(); ++i) {
    if (is(s, i, Sense::headspace) || text(s, i) == "space") return true;
    if (!one_of(text(s, i), {"of", "a", "the", "in", "cm", "mm", "clear", "head", "empty"}) &&
        !s.tokens[i].number)
      return false;
  }
  return false;
}

/// "headspace of 1 inch", "headspace: 1/2 inch", "headspace should be 1 inch"
bool headspace_before(const Sentence& s, std::size_t first) {
  for (std::size_t back = 1; back <= 5 && back <= first; ++back) {
    const std::size_t i = first - back;
    for (std::size_t k = i; k + 3 > i; --k) {  // a phrase of several words ends here
      if (s.senses[k].words(Sense::headspace) == i - k + 1) return true;
      if (k == 0) break;
    }
    if (!one_of(text(s, i),
                {"of", "a", "to", "should", "be", "is", "at", "least", "about", "the", "in", "jars", "jar"}))
      return false;
  }
  return false;
}

/// "within 1/2 inch of the top", "1/4 inch from the rim", "1 inch below the rims of the jars"
bool top_behind(const Sentence& s, std::size_t last) {
  if (!one_of(text(s, last), {"of", "from", "below", "at", "under"})) return false;
  for (std::size_t i = last + 1; i < last + 5 && i < s.tokens.size(); ++i)
    if (is(s, i, Sense::top)) return true;
  return false;
}

/// "leave 1/2 inch" where jars are filled, and nothing else is left so long: "leaving 1 inch of stem".
bool left_in_jars(const Sentence& s, const Mark& length) {
  std::size_t verb = length.first;
  while (verb > 0 && one_of(text(s, verb - 1), {"about", "a", "an", "at", "least", "of", "exactly", "only"}))
    --verb;
  if (verb == 0 || !is(s, verb - 1, Sense::leave) || !s.has(Sense::fill)) return false;
  const std::size_t next = length.last;
  if (next >= s.tokens.size() || s.tokens[next].before != 0) return true;
  const std::size_t of = text(s, next) == "of" ? next + 1 : next;
  return one_of(text(s, of), {"room", "space", "air"}) ||
         (of == next && one_of(text(s, of), {"and", "then", "at", "for", "in", "between", "before"}));
}

const Mark* jar_behind(const Sentence& s, const Mark& length) {
  for (const Mark& mark : s.marks) {
    if (mark.kind != Kind::jar || mark.first < length.last) continue;
    const bool other_between = std::any_of(s.marks.begin(), s.marks.end(), [&](const Mark& m) {
      return m.kind == Kind::length && m.first > length.first && m.first < mark.first;
    });
    const auto lead = mark.first == 0 ? std::string_view() : text(s, mark.first - 1);
    const bool leads = lead == "for" || lead == "in" || lead == "with";
    return !other_between && leads && mark.first - length.last <= 5 ? &mark : nullptr;
  }
  return nullptr;
}

/// An amount in a sentence, the "each jar" that it goes into, and its place in the list of those found.
struct AmountAt {
  std::size_t token, target, index;
};

/// "if you like" speaks of what goes into the same jars as the amount before it: of "2 tablespoons lemon
/// juice in each quart, and 1 teaspoon salt per quart if you like" only the salt is optional. At the
/// beginning it speaks of all.
void mark_optional(const Sentence& s, const std::vector<AmountAt>& amounts, std::vector<PerJar>& out) {
  for (std::size_t liked = 0; liked < s.tokens.size(); ++liked) {
    if (!is(s, liked, Sense::if_liked)) continue;
    const AmountAt* before = nullptr;
    for (const AmountAt& amount : amounts)
      if (amount.token < liked) before = &amount;
    for (const AmountAt& amount : amounts) {
      const bool told_whole = before != nullptr && before->target < liked;
      const bool meant = before == nullptr || &amount == before ||
                         (told_whole && amount.target == before->target && amount.token < liked);
      if (meant) out[amount.index].optional = true;
    }
  }
}

}  // namespace

void find_headspaces(const Sentence& s, std::vector<HeadspaceTold>& out) {
  bool told = false;
  for (const Mark& mark : s.marks) {
    if (mark.kind != Kind::length) continue;
    const Mark* jar = jar_behind(s, mark);
    const bool here = headspace_behind(s, mark.last) || headspace_before(s, mark.first) ||
                      top_behind(s, mark.last) || left_in_jars(s, mark);
    // "1/2 inch of headspace for pints, 1 inch for quarts"
    if (!here && (!told || jar == nullptr)) continue;
    if (s.denied(mark.first) || s.polarity.supposed[mark.first]) continue;
    told = true;
    HeadspaceTold found;
    found.value = {{headspace_inches(mark.figure.low), headspace_inches(mark.figure.high)},
                   s.at(mark.first),
                   s.words(mark.first, mark.last)};
    if (jar != nullptr) found.jar = jar->jar;
    out.push_back(std::move(found));
  }
}

std::optional<recipe::Placed<recipe::Pack>> find_pack(const Sentence& s, const Sentence* title) {
  std::size_t fill = s.tokens.size();
  for (std::size_t i = s.tokens.size(); i-- > 0;)
    if (is(s, i, Sense::fill) && !s.denied(i)) fill = i;
  // "Fill with the hot tomatoes, leaving 1/2 inch headspace": headspace is in jars.
  const bool into_jars = s.has(Sense::jar) || s.has(Kind::jar) || s.has(Sense::headspace);
  if (fill == s.tokens.size() || !into_jars) return std::nullopt;
  for (std::size_t i = fill + 1; i < s.tokens.size() && i < fill + 10; ++i) {
    const bool raw = is(s, i, Sense::raw);
    if ((!raw && !is(s, i, Sense::hot)) || s.denied(i)) continue;
    bool of_food = true;
    for (std::size_t k = i + 1; k < i + 4 && k < s.tokens.size(); ++k) {
      const auto word = text(s, k);
      if (word == "over") of_food = false;  // "pour it hot over the cucumbers in the jars"
      if (one_of(word, {"into", "in", "over"})) break;
      const bool jar =
          is(s, k, Sense::jar) || is(s, k, Sense::empty_jars) ||
          one_of(word, {"pint", "pints", "quart", "quarts", "half", "clean", "canning", "mason"});
      const bool of_liquid = !raw && is(s, k, Sense::liquid);
      const bool the_recipe =
          of_liquid && title != nullptr && !title->tokens.empty() && title->tokens.back().text == word;
      if (jar || (of_liquid && !the_recipe)) of_food = false;
      if (s.tokens[k].before != 0) break;
    }
    if (of_food)
      return recipe::Placed<recipe::Pack>{raw ? recipe::Pack::raw : recipe::Pack::hot, s.at(fill),
                                          s.words(fill, i + 1)};
  }
  return std::nullopt;
}

void find_per_jar(const Sentence& s, quantity::Units units, std::vector<PerJar>& out) {
  // Where "each jar", "per pint" stand, with the size.
  struct Target {
    std::size_t first;
    const Mark* jar;
  };
  std::vector<Target> targets;
  for (std::size_t i = 0; i < s.tokens.size(); ++i) {
    if (!is(s, i, Sense::each)) continue;
    const Mark* size = nullptr;
    bool jar = false;
    for (std::size_t k = i + 1; k < i + 5 && k < s.tokens.size() && !jar && size == nullptr; ++k) {
      for (const Mark& mark : s.marks)
        if (mark.kind == Kind::jar && mark.first == k) size = &mark;
      jar = is(s, k, Sense::jar);
      if (s.tokens[k].before != 0) break;
    }
    if (jar || size != nullptr) targets.push_back({i, size});
  }
  if (targets.empty()) return;
  std::size_t verb = s.tokens.size();
  for (std::size_t i = s.tokens.size(); i-- > 0;)
    if (is(s, i, Sense::put_in) || is(s, i, Sense::fill)) verb = i;
  if (verb == s.tokens.size() || s.denied(verb) || s.polarity.supposed[verb]) return;
  std::string_view food;
  std::vector<AmountAt> amounts;
  for (std::size_t i = 0; i < s.tokens.size(); ++i) {
    if (!s.tokens[i].number && (s.tokens[i].grammar & phrases::number_word) == 0) continue;
    const bool marked = std::any_of(s.marks.begin(), s.marks.end(), [&](const Mark& m) {
      return m.first <= i && i < m.last && m.kind != Kind::number;
    });
    if (marked || s.denied(i)) continue;
    const std::string_view rest = s.text.substr(s.bytes[i].first, s.end - s.bytes[i].first);
    const auto amount = quantity::read_amount(rest, units);
    if (!amount || amount->begin != 0 || amount->unit.empty()) continue;
    const std::size_t past = s.bytes[i].first + amount->end;
    std::size_t k = i;
    while (k < s.tokens.size() && s.bytes[k].first < past) ++k;
    const std::size_t first = text(s, k) == "of" ? k + 1 : k;
    std::size_t last = first;
    while (last < s.tokens.size() && last < first + 6 && (last == first || s.tokens[last].before == 0) &&
           !one_of(text(s, last),
                   {"to", "per", "in", "into", "for", "each", "or", "and", "if", "plus", "with", "every"}) &&
           !s.tokens[last].number)
      ++last;
    if (last > first) food = s.words(first, last);
    const Target* target = nullptr;
    for (const Target& t : targets) {
      if (t.first < i) target = &t;
      if (t.first > i) {
        const bool taken = std::any_of(s.tokens.begin() + static_cast<std::ptrdiff_t>(last),
                                       s.tokens.begin() + static_cast<std::ptrdiff_t>(t.first),
                                       [](const phrases::Token& token) { return token.number; });
        if (!taken || target == nullptr) target = &t;
        break;
      }
    }
    if (food.empty() || target == nullptr) continue;
    PerJar line;
    line.at = s.at(i);
    line.amount = rest.substr(0, amount->end);
    line.food = food;
    if (target->jar != nullptr)
      line.size = recipe::Placed<quantity::JarText>{target->jar->jar, s.at(target->jar->first),
                                                    s.words(target->jar->first, target->jar->last)};
    amounts.push_back({i, target->first, out.size()});
    out.push_back(std::move(line));
    i = last > i ? last - 1 : i;
  }
  mark_optional(s, amounts, out);
}

}  // namespace sealworthy::prose
