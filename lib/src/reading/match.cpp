#include "reading/match.hpp"

#include <algorithm>
#include <bit>
#include <memory>

#include "reading/match_doubt.hpp"
#include "reading/match_strict.hpp"
#include "reading/match_tally.hpp"
#include "tested/compare.hpp"

namespace sealworthy::reading {
namespace {

using Candidates = std::vector<Candidate>;

/// Near enough to be told as the nearest tested product.
bool near(const Candidate& c) {
  if (c.named) return true;
  if (c.entry->plain()) return c.missing == 0 && c.foreign <= std::max(1, c.entry->at_least - 1);
  return (c.covered & c.entry->main) != 0 && !c.other_dish && c.shared >= 2 &&
         2 * c.differences() <= c.shared + 1;
}

/// A dish or a mixture (soup) that the card does not say it is.
bool unnamed_dish(const Candidate& c) { return c.unlikely || (c.unsaid && c.entry->at_least > 1); }

/// What speaks against a candidate, weighed: less is nearer.
int distance(const Candidate& c) {
  int out = 4 * c.differences();
  if (c.contradicted != 0) out += 6;
  if (c.unsaid) out += c.unlikely ? 5 : 4;
  if (c.said) out -= 1;
  if (c.named) out -= 5;
  return out;
}

/// Drops what a better one of the list makes needless: `better` is true of those to keep, if any are.
template <class Better>
void prefer(Candidates& list, const Better& better) {
  if (std::any_of(list.begin(), list.end(), better))
    std::erase_if(list, [&](const Candidate& c) { return !better(c); });
}

/// Of versions of one product the first stands for it.
void one_of_each(Candidates& list) {
  Candidates out;
  for (const auto& c : list)
    if (std::none_of(out.begin(), out.end(),
                     [&](const Candidate& o) { return o.entry->product == c.entry->product; }))
      out.push_back(c);
  list = std::move(out);
}

/// Those whose amounts the card meets best. True if it meets them well enough to tell them from the others:
/// no more than half of the lines differ. `next` is the first that differs in one place more at most, where
/// none is met whole.
bool prefer_amounts(Candidates& list, const Reading& reading, const tested::Product*& next) {
  if (list.size() < 2) return true;
  std::vector<std::size_t> differences;
  for (const auto& c : list)
    differences.push_back(c.entry->plain() ? 1 : tested::compare(*c.entry->product, reading).differences());
  const auto least = *std::min_element(differences.begin(), differences.end());
  Candidates out;
  for (std::size_t i = 0; i < list.size(); ++i)
    if (differences[i] == least)
      out.push_back(list[i]);
    else if (least > 0 && differences[i] == least + 1 && next == nullptr)
      next = list[i].entry->product;
  list = std::move(out);
  const auto* formula = list.front().entry->formula;
  return formula == nullptr || 2 * least <= formula->lines.size();
}

class Matching {
 public:
  Matching(const Reading& reading, const MatchIndex::Impl& index)
      : reading_(reading), index_(index), words_(read_words(reading, index)), tally_(reading, index) {}

  Match follow(const tested::Product& product) const {
    Match match;
    match.product = &product;
    match.by = Match::By::follows;
    const auto best = nearest_version(product);
    if (best.entry == nullptr) return match;
    const bool strange = (best.covered & best.entry->body) == 0;
    const bool more = best.entry->plain() && (best.foreign > 0 || best.missing != 0);
    if (strange || more || best.contradicted != 0) {
      match.doubtful = true;
      match.doubt = strange ? "the card has none of the foods of \"" + product.title + "\""
                            : doubt_about(best, tally_, reading_, index_);
    }
    return match;
  }

  Match find() const {
    Candidates exact, others;
    for (const auto number : tally_.touched()) {
      if (!tally_.shares_body(number)) continue;
      if (!tally_.may_be_near(number) && !words_.named.has(index_.entries[number].index)) continue;
      const auto c = tally_.candidate(number, words_);
      if (c.unlikely && (c.entry->plain() || c.other_dish || pickled(c))) continue;
      if (c.exact())
        exact.push_back(c);
      else if (near(c))
        others.push_back(c);
    }
    const auto by_product = [](const Candidate& a, const Candidate& b) { return a.entry < b.entry; };
    std::sort(exact.begin(), exact.end(), by_product);
    std::sort(others.begin(), others.end(), by_product);
    // A dish that the card does not name is no nearer than a product that lacks something.
    if (std::any_of(exact.begin(), exact.end(), [](const Candidate& c) { return !unnamed_dish(c); }))
      return or_changed(choose(std::move(exact)), others);
    others.insert(others.end(), exact.begin(), exact.end());
    return others.empty() ? Match{} : nearest(std::move(others));
  }

 private:
  /// A ferment that the card does not tell, where the card's own acid is more than the ferment's: a pickle.
  [[nodiscard]] bool pickled(const Candidate& c) const {
    using State = tested::LineComparison::State;
    const auto& product = *c.entry->product;
    if (product.acid_class != tested::ProductClass::fermented || !product.formula) return false;
    const auto compared = tested::compare(product, reading_);
    const bool more =
        std::any_of(compared.lines.begin(), compared.lines.end(), [](const tested::LineComparison& line) {
          return line.line->role == "acid" && line.state == State::more;
        });
    return more || std::any_of(compared.added.begin(), compared.added.end(), [](const auto& added) {
             return added.food != nullptr && added.food->kind == "acid";
           });
  }

  Candidate nearest_version(const tested::Product& product) const {
    Candidate best;
    for (std::size_t i = 0; i < index_.entries.size(); ++i) {
      if (index_.entries[i].product != &product) continue;
      const auto c = tally_.candidate(i, words_);
      if (best.entry == nullptr || distance(c) < distance(best)) best = c;
    }
    return best;
  }

  /// Of products that all fit the foods.
  Match choose(Candidates list) const {
    prefer(list, [](const Candidate& c) { return !c.unsaid; });
    prefer(list, [](const Candidate& c) { return !c.unlikely; });
    prefer(list, [](const Candidate& c) { return c.named; });
    prefer(list, [](const Candidate& c) { return c.said; });
    one_of_each(list);
    const tested::Product* next = nullptr;
    if (!prefer_formula(list, next)) return told(list, list.front());
    if (std::all_of(list.begin(), list.end(), [](const Candidate& c) { return c.entry->any == 0; }))
      prefer(list, [&](const Candidate& c) { return tables_jars(*c.entry->product, reading_); });
    if (list.size() == 1) return found(list.front(), next);
    return list.front().entry->plain() ? between_plain(std::move(list)) : between(list);
  }

  /// A formula tells more than a plain product: the one with most foods, then the one whose amounts fit.
  /// False, with all that have as many foods left in the list, if no amounts tell which.
  bool prefer_formula(Candidates& list, const tested::Product*& next) const {
    if (list.size() < 2) return true;
    const auto foods = [](const Candidate& c) {
      return std::popcount(c.covered & c.entry->required & c.entry->body);
    };
    int most = 0;
    for (const auto& c : list) most = std::max(most, foods(c));
    prefer(list, [&](const Candidate& c) { return foods(c) == most; });
    if (std::all_of(list.begin(), list.end(), [](const Candidate& c) { return c.entry->plain(); }))
      return true;
    auto best = list;
    if (!prefer_amounts(best, reading_, next)) {
      std::stable_partition(list.begin(), list.end(),
                            [&](const Candidate& c) { return c.entry == best.front().entry; });
      return false;
    }
    list = std::move(best);
    return true;
  }

  Match found(const Candidate& c, const tested::Product* next = nullptr) const {
    Match match;
    match.product = c.entry->product;
    match.next = next;
    match.by = Match::By::found;
    if (c.unsaid) {
      match.doubtful = true;
      match.doubt = doubt_about(c, tally_, reading_, index_);
    }
    return match;
  }

  /// Plain products that differ by a form that the card leaves open. No doubt where its figures meet them
  /// all.
  Match between_plain(Candidates list) const {
    const auto demands = [&](const Candidate& c) { return demand(*c.entry->product, reading_); };
    std::stable_sort(list.begin(), list.end(),
                     [&](const Candidate& a, const Candidate& b) { return demands(a) > demands(b); });
    const auto is_met = [&](const Candidate& c) { return meets(*c.entry->product, reading_); };
    Match match;
    match.by = Match::By::found;
    match.product = list.front().entry->product;
    const auto twin = [&](const Candidate& c) { return same_tables(*c.entry->product, *match.product); };
    if (std::all_of(list.begin(), list.end(), twin)) return match;
    if (std::all_of(list.begin(), list.end(), is_met)) return match;
    // The figures are told against the one that asks least, so that no alarm rests on a guess.
    const auto met = std::find_if(list.begin(), list.end(), is_met);
    const auto& shown = met == list.end() ? list.back() : *met;
    return told(list, shown);
  }

  Match between(const Candidates& list) const { return told(list, list.front()); }

  Match told(const Candidates& list, const Candidate& shown) const {
    Match match;
    match.by = Match::By::found;
    match.product = shown.entry->product;
    match.doubtful = true;
    match.doubt = doubt_between(list);
    for (const auto& c : list)
      if (c.entry->product != match.product) match.also.push_back(c.entry->product);
    return match;
  }

  /// A formula that the card meets by a harmless change is nearer than one of its very foods in other
  /// amounts.
  Match or_changed(Match match, const Candidates& others) const {
    if (others.empty() || match.product == nullptr || !match.product->formula) return match;
    match.compared = std::make_shared<tested::FormulaComparison>(tested::compare(*match.product, reading_));
    if (match.compared->held()) return match;
    const auto* changed = changed_harmlessly(others);
    return changed == nullptr ? match : found(*changed);
  }

  /// The one formula whose every line the card meets, some by a change that a publication judges harmless:
  /// lemon juice for its vinegar, another pepper. Only the nearest few are looked at: each takes as long as
  /// all the rest of matching.
  const Candidate* changed_harmlessly(const Candidates& list) const {
    constexpr std::size_t few = 5;
    std::vector<const Candidate*> nearest;
    for (const auto& c : list)
      if (!c.entry->plain() && c.contradicted == 0 && !unnamed_dish(c) && !c.unsaid && !c.other_dish)
        nearest.push_back(&c);
    std::stable_sort(nearest.begin(), nearest.end(),
                     [](const Candidate* a, const Candidate* b) { return distance(*a) < distance(*b); });
    if (nearest.size() > few) nearest.resize(few);
    const Candidate* one = nullptr;
    for (const auto* c : nearest) {
      if (!tested::compare(*c->entry->product, reading_).held()) continue;
      if (one != nullptr) return nullptr;
      one = c;
    }
    return one;
  }

  /// The first formula that is farther than the nearest product, by one difference at most. A mix that takes
  /// almost anything is near to every card, and no help.
  static const tested::Product* next_nearest(const Candidates& list, int least) {
    constexpr int one_difference = 4;
    const Candidate* next = nullptr;
    for (const auto& c : list)
      if (!c.entry->plain() && c.entry->product->identity.any_of.empty() && !c.unsaid && !c.other_dish &&
          distance(c) > least && distance(c) <= least + one_difference &&
          (next == nullptr || distance(c) < distance(*next)))
        next = &c;
    return next == nullptr ? nullptr : next->entry->product;
  }

  /// Nothing fits: the nearest, with what speaks against it.
  Match nearest(Candidates list) const {
    one_of_each(list);
    if (const auto* changed = changed_harmlessly(list)) return found(*changed);
    int least = distance(list.front());
    for (const auto& c : list) least = std::min(least, distance(c));
    const auto* next = next_nearest(list, least);
    prefer(list, [&](const Candidate& c) { return distance(c) == least; });
    prefer(list, [&](const Candidate& c) { return tables_jars(*c.entry->product, reading_); });
    if (list.size() > 1 && !list.front().entry->plain()) prefer_amounts(list, reading_, next);
    std::stable_sort(list.begin(), list.end(), [&](const Candidate& a, const Candidate& b) {
      return demand(*a.entry->product, reading_) > demand(*b.entry->product, reading_);
    });
    // Where none fits, no alarm rests on which of the equally near ones is shown: one that the figures meet,
    // else the one that asks least.
    const auto met = std::find_if(list.begin(), list.end(),
                                  [&](const Candidate& c) { return meets(*c.entry->product, reading_); });
    const auto& shown = met == list.end() ? list.back() : *met;
    auto match = told(list, shown);
    match.next = match.also.empty() ? next : nullptr;  // those of `also` are as near
    match.doubt = doubt_about(shown, tally_, reading_, index_);
    return match;
  }

  const Reading& reading_;
  const MatchIndex::Impl& index_;
  SaidForms words_;
  Tally tally_;
};

}  // namespace

Match match(const Reading& so_far) {
  const auto& index = so_far.match_index->impl();
  const Matching matching(so_far, index);
  std::string unknown;
  if (!so_far.against.empty())
    if (const auto* product = index.tables->find(so_far.against)) return matching.follow(*product);
  if (const auto& follows = so_far.recipe->follows) {
    if (const auto* product = index.tables->find(follows->value)) return matching.follow(*product);
    unknown = std::string(follows->value);
  }
  auto match = matching.find();
  match.unknown_follows = std::move(unknown);
  return match;
}

}  // namespace sealworthy::reading
