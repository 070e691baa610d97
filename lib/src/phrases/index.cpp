// How an Index is built: which words can stand for which items of which patterns.

#include <algorithm>
#include <limits>
#include <tuple>
#include <utility>

#include "phrases/match.hpp"

namespace sealworthy::phrases {
namespace {

std::size_t words_for(std::size_t bits) { return bits / 64 + 1; }

}  // namespace

/// How often the words of lists come up in patterns: a guess at how common they are in any text.
struct Index::Costs {
  const Phrases& phrases;
  std::vector<double> known = std::vector<double>(phrases.list_count(), -1);

  double of(const Element& element) {
    if (element.kind == Element::Kind::word) return static_cast<double>(phrases.uses(element.index));
    if (element.kind == Element::Kind::list) return of(element.index);
    return std::numeric_limits<double>::infinity();
  }
  /// Of a list: its alternatives' rarest words, summed.
  double of(ListIndex list) {
    if (known[list] >= 0) return known[list];
    double sum = 0;
    for (const auto& alternative : phrases.alternatives(list)) {
      double least = std::numeric_limits<double>::infinity();
      for (const auto& element : phrases.elements(alternative)) least = std::min(least, of(element));
      sum += least;
    }
    return known[list] = sum;
  }
};

/// The keys of each alternative; one without a term where an alternative has no word at all.
void Index::keys_of(ListIndex list, Costs& costs, Term beside, std::vector<Key>& out) const {
  for (const auto& alternative : phrases_.alternatives(list)) {
    const auto elements = phrases_.elements(alternative);
    if (elements.empty()) {
      out.push_back({});
      continue;
    }
    const Element* best = &elements.front();
    const Element* next = nullptr;  // a word only
    for (const auto& element : elements.subspan(1)) {
      const auto* other = &element;
      if (costs.of(element) < costs.of(*best)) std::swap(best, other);
      if (other->kind == Element::Kind::word && (next == nullptr || costs.of(*other) < costs.of(*next)))
        next = other;
    }
    const Term with = next != nullptr ? next->index : beside;
    if (best->kind == Element::Kind::word)
      out.push_back({best->index, with});
    else if (best->kind == Element::Kind::list)
      keys_of(best->index, costs, with, out);
    else
      out.push_back({});
  }
}

Index::Order Index::order_of(const Pattern& pattern) const {
  const auto plain = [&](ListIndex list) {
    const auto alternatives = phrases_.alternatives(list);
    return std::all_of(alternatives.begin(), alternatives.end(), [&](const Alternative& alternative) {
      return alternative.count == 1 && phrases_.elements(alternative)[0].kind == Element::Kind::word;
    });
  };
  Order order;
  for (std::uint8_t i = 0; i < pattern.items.count; ++i) order.items[i] = i;
  const auto rank = [&](std::uint8_t item) {
    const auto list = pattern.items.lists[item];
    return (item < planes && plain(list) ? 1000U : 0U) + phrases_.alternatives(list).size();
  };
  std::stable_sort(order.items.begin(), order.items.begin() + pattern.items.count,
                   [&](std::uint8_t a, std::uint8_t b) { return rank(a) < rank(b); });
  for (std::uint8_t i = 0; i < pattern.items.count; ++i)
    if (rank(order.items[i]) < 1000U) ++order.unsure;
  return order;
}

Index::Index(const Phrases& phrases, std::span<const Pattern> patterns)
    : phrases_(phrases),
      patterns_(patterns),
      term_words_(words_for(phrases.lexicon().size())),
      list_words_(words_for(phrases.list_count())),
      plane_words_(words_for(patterns.size())),
      start_(planes * plane_words_, 0) {
  Costs costs{phrases};
  orders_.reserve(patterns.size());
  for (const auto& pattern : patterns) orders_.push_back(order_of(pattern));

  // What each list stands for, so that its words are gone through once however many patterns use it.
  struct Use {
    ListIndex list;
    std::uint16_t word;
    std::uint64_t bits;
  };
  std::vector<Use> uses;
  for (std::size_t p = 0; p < patterns.size(); ++p) {
    const std::uint64_t bit = std::uint64_t{1} << (p % 64);
    for (std::size_t k = 0; k < planes; ++k) {
      const auto word = static_cast<std::uint16_t>(k * plane_words_ + p / 64);
      if (k < patterns[p].items.count)
        uses.push_back({patterns[p].items.lists[k], word, bit});
      else
        start_[word] |= bit;
    }
  }
  std::sort(uses.begin(), uses.end(),
            [](const Use& a, const Use& b) { return std::tie(a.list, a.word) < std::tie(b.list, b.word); });

  struct Entry {
    std::uint64_t order = 0;  ///< term, beside and word in one number
    std::uint64_t bits = 0;
    Entry(const Key& key, std::uint16_t word, std::uint64_t b)
        : order(std::uint64_t{key.term} << 32U | std::uint64_t{key.beside} << 16U | word), bits(b) {}
    [[nodiscard]] Term term() const { return static_cast<Term>(order >> 32U); }
    [[nodiscard]] Term beside() const { return static_cast<Term>(order >> 16U & 0xFFFFU); }
    [[nodiscard]] std::uint16_t word() const { return static_cast<std::uint16_t>(order & 0xFFFFU); }
  };
  std::vector<Entry> entries;
  std::vector<Key> keys;
  for (std::size_t u = 0; u < uses.size();) {
    auto last = u;
    std::uint64_t bits = 0;
    for (; last < uses.size() && uses[last].list == uses[u].list && uses[last].word == uses[u].word; ++last)
      bits |= uses[last].bits;
    if (u == 0 || uses[u - 1].list != uses[u].list) {
      keys.clear();
      keys_of(uses[u].list, costs, nothing, keys);
    }
    for (const auto& key : keys) {
      if (key.term == nothing)
        start_[uses[u].word] |= bits;
      else
        entries.emplace_back(key, uses[u].word, bits);
    }
    u = last;
  }
  std::sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) { return a.order < b.order; });
  first_mask_.assign(phrases.lexicon().size() + 1, 0);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const auto& entry = entries[i];
    if (i > 0 && entries[i - 1].order == entry.order)
      masks_.back().bits |= entry.bits;
    else
      masks_.push_back({entry.word(), entry.beside(), entry.bits});
    first_mask_[entry.term() + 1U] = static_cast<std::uint32_t>(masks_.size());
  }
  for (std::size_t t = 1; t < first_mask_.size(); ++t)
    first_mask_[t] = std::max(first_mask_[t], first_mask_[t - 1]);
}

}  // namespace sealworthy::phrases
