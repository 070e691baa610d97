#include "reading/match.hpp"

#include <algorithm>
#include <bit>
#include <limits>
#include <memory>

#include "reading/match_compared.hpp"
#include "reading/match_doubt.hpp"
#include "reading/match_near.hpp"
#include "reading/match_strict.hpp"
#include "reading/match_tally.hpp"

namespace sealworthy::reading {
namespace {

using Candidates = std::vector<Candidate>;

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
bool prefer_amounts(Candidates& list, Comparisons& comparisons, const tested::Product*& next) {
  if (list.size() < 2) return true;
  std::vector<std::size_t> differences;
  for (const auto& c : list)
    differences.push_back(c.entry->plain() ? 1 : comparisons.in_figures(*c.entry->product).differences());
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
      : reading_(reading),
        index_(index),
        words_(read_words(reading, index)),
        tally_(reading, index),
        comparisons_(reading) {}

  Match follow(const tested::Product& product) {
    Match match;
    match.product = &product;
    match.by = Match::By::follows;
    const auto best = nearest_version(product);
    if (best.entry == nullptr) return match;
    const bool strange = (best.covered & best.entry->body) == 0;
    const bool more = best.entry->plain() && (best.foreign > 0 || best.missing != 0);
    if (strange || more || best.contradicted != 0) {
      match.doubtful = true;
      match.doubt = strange ? "the card has none of the foods of \"" + product.title + "\"" : doubt(best);
    }
    return match;
  }

  Match find() {
    auto match = best_of_all();
    match.compared = comparisons_.whole(match.product);
    return match;
  }

 private:
  Match best_of_all() {
    auto exact = exact_ones();
    // A dish that the card does not name is no nearer than a product that lacks something.
    if (std::any_of(exact.begin(), exact.end(), [](const Candidate& c) { return !unnamed_dish(c); }))
      return or_changed(choose(std::move(exact)));
    auto others = near_ones(exact, [](std::uint16_t) { return true; });
    others.insert(others.end(), exact.begin(), exact.end());
    return others.empty() ? Match{} : nearest(std::move(others));
  }

  [[nodiscard]] bool named(std::uint16_t entry) const {
    return words_.named.has(index_.entries[entry].index);
  }
  [[nodiscard]] bool ruled_out(const Candidate& c) {
    return c.unlikely && (c.entry->plain() || c.other_dish || pickled(*c.entry->product, comparisons_));
  }
  static void sort_by_product(Candidates& list) {
    std::sort(list.begin(), list.end(),
              [](const Candidate& a, const Candidate& b) { return a.entry < b.entry; });
  }

  /// Products that fit the foods of the card one by one.
  Candidates exact_ones() {
    Candidates exact;
    for (const auto number : tally_.touched()) {
      if (!tally_.may_be_exact(number)) continue;
      const auto c = tally_.candidate(number, words_);
      if (c.exact() && !ruled_out(c)) exact.push_back(c);
    }
    sort_by_product(exact);
    return exact;
  }

  /// Products that fit in part, from the fewest differences that the telling foods leave on, to where nothing
  /// farther can be the nearest, the next nearest, or one of those that a harmless change may meet. `wanted`
  /// tells of an entry whether it is looked for.
  template <class Wanted>
  Candidates near_ones(const Candidates& exact, const Wanted& wanted) {
    struct Promising {
      int least;
      std::uint16_t entry;
    };
    std::vector<Promising> promising;
    for (const auto number : tally_.touched())
      if (wanted(number) && (named(number) ? tally_.shares_body(number) : tally_.may_be_near(number)))
        promising.push_back({named(number) ? 0 : tally_.least_differences(number), number});
    std::sort(promising.begin(), promising.end(), [](const Promising& a, const Promising& b) {
      return a.least != b.least ? a.least < b.least : a.entry < b.entry;
    });
    Candidates others;
    int nearest = std::numeric_limits<int>::max() - one_difference;
    for (const auto& c : exact) nearest = std::min(nearest, distance(c));
    std::vector<int> changeable;  // distances of the nearest that changed_harmlessly looks at
    for (const auto& one : promising) {
      if (least_distance(one.least) > nearest + one_difference) {
        if (changeable.size() == few && least_distance(one.least) > changeable.back()) break;
        if (!tally_.may_be_changed(one.entry)) continue;
      }
      const auto c = tally_.candidate(one.entry, words_);
      if (ruled_out(c) || c.exact() || !near(c)) continue;
      others.push_back(c);
      nearest = std::min(nearest, distance(c));
      if (!changeable_formula(c)) continue;
      changeable.insert(std::upper_bound(changeable.begin(), changeable.end(), distance(c)), distance(c));
      if (changeable.size() > few) changeable.pop_back();
    }
    sort_by_product(others);
    return others;
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
  Match choose(Candidates list) {
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
  bool prefer_formula(Candidates& list, const tested::Product*& next) {
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
    if (!prefer_amounts(best, comparisons_, next)) {
      std::stable_partition(list.begin(), list.end(),
                            [&](const Candidate& c) { return c.entry == best.front().entry; });
      return false;
    }
    list = std::move(best);
    return true;
  }

  Match found(const Candidate& c, const tested::Product* next = nullptr) {
    Match match;
    match.product = c.entry->product;
    match.next = next;
    match.by = Match::By::found;
    if (c.unsaid) {
      match.doubtful = true;
      match.doubt = doubt(c);
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
  /// amounts. One that holds needs no look at any other, which spares the usual card most of the work.
  Match or_changed(Match match) {
    if (match.product == nullptr || !match.product->formula) return match;
    if (comparisons_.in_figures(*match.product).held()) return match;
    const auto others = near_ones({}, [&](std::uint16_t entry) { return tally_.may_be_changed(entry); });
    const auto* changed = changed_harmlessly(others);
    return changed == nullptr ? match : found(*changed);
  }

  /// The one formula whose every line the card meets, some by a change that a publication judges harmless:
  /// lemon juice for its vinegar, another pepper. Only the nearest few are looked at: each takes as long as
  /// all the rest of matching.
  const Candidate* changed_harmlessly(const Candidates& list) {
    std::vector<const Candidate*> nearest;
    for (const auto& c : list)
      if (changeable_formula(c)) nearest.push_back(&c);
    std::stable_sort(nearest.begin(), nearest.end(),
                     [](const Candidate* a, const Candidate* b) { return distance(*a) < distance(*b); });
    if (nearest.size() > few) nearest.resize(few);
    const Candidate* one = nullptr;
    for (const auto* c : nearest) {
      if (!comparisons_.in_figures(*c->entry->product).held()) continue;
      if (one != nullptr) return nullptr;
      one = c;
    }
    return one;
  }

  /// The first formula that is farther than the nearest product, by one difference at most. A mix that takes
  /// almost anything is near to every card, and no help.
  static const tested::Product* next_nearest(const Candidates& list, int least) {
    const Candidate* next = nullptr;
    for (const auto& c : list)
      if (!c.entry->plain() && c.entry->product->identity.any_of.empty() && !c.unsaid && !c.other_dish &&
          distance(c) > least && distance(c) <= least + one_difference &&
          (next == nullptr || distance(c) < distance(*next)))
        next = &c;
    return next == nullptr ? nullptr : next->entry->product;
  }

  /// Nothing fits: the nearest, with what speaks against it.
  Match nearest(Candidates list) {
    one_of_each(list);
    if (const auto* changed = changed_harmlessly(list)) return found(*changed);
    int least = distance(list.front());
    for (const auto& c : list) least = std::min(least, distance(c));
    const auto* next = next_nearest(list, least);
    prefer(list, [&](const Candidate& c) { return distance(c) == least; });
    prefer(list, [&](const Candidate& c) { return tables_jars(*c.entry->product, reading_); });
    if (list.size() > 1 && !list.front().entry->plain()) prefer_amounts(list, comparisons_, next);
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
    match.doubt = doubt(shown);
    return match;
  }

  std::string doubt(const Candidate& c) {
    const auto& product = *c.entry->product;
    return doubt_about(c, tally_, reading_, index_,
                       product.formula ? comparisons_.in_words(product).differences() : 0);
  }

  const Reading& reading_;
  const MatchIndex::Impl& index_;
  SaidForms words_;
  Tally tally_;
  Comparisons comparisons_;
};

}  // namespace

Match match(const Reading& so_far) {
  const auto& index = so_far.match_index->impl();
  Matching matching(so_far, index);
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
