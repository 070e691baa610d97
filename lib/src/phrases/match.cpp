#include "phrases/match.hpp"

#include <algorithm>
#include <bit>
#include <limits>
#include <tuple>

namespace sealworthy::phrases {
namespace {

constexpr std::size_t loose_gap = 5;      ///< words that "~" reads over
constexpr std::size_t most_hits = 8;      ///< of one list in one sentence
constexpr std::size_t most_trials = 400;  ///< combinations of hits tried for one pattern

bool test(std::span<const std::uint64_t> bits, std::size_t i) { return (bits[i / 64] >> (i % 64) & 1U) != 0; }
void set(std::span<std::uint64_t> bits, std::size_t i) { bits[i / 64] |= std::uint64_t{1} << (i % 64); }

}  // namespace

Index::Room::Room(const Index& index)
    : bits(index.term_words_ + 2 * index.list_words_ + planes * index.plane_words_),
      first_present(index.phrases_.list_count()) {}

/// One sentence being matched; answers are kept for the patterns that come after.
class Sentence {
 public:
  Sentence(const Index& index, const Line& line, Index::Room& room)
      : index_(index), phrases_(index.phrases_), room_(room), tokens_(line.all()) {
    std::span<std::uint64_t> all(room.bits);
    terms_ = all.subspan(0, index.term_words_);
    asked_ = all.subspan(index.term_words_, index.list_words_);
    there_ = all.subspan(index.term_words_ + index.list_words_, index.list_words_);
    planes_ = all.subspan(index.term_words_ + 2 * index.list_words_);
    std::fill(all.begin(), all.end() - static_cast<std::ptrdiff_t>(planes_.size()), 0);
    for (const auto& token : tokens_) {
      term_bits_ |= token.term_bits;
      for (const auto term : phrases_.lexicon().terms(token)) set(terms_, term);
    }
  }

  void find(std::vector<Told>& out) {
    std::copy(index_.start_.begin(), index_.start_.end(), planes_.begin());
    for (const auto& token : tokens_) {
      for (const auto term : phrases_.lexicon().terms(token)) {
        for (auto m = index_.first_mask_[term]; m < index_.first_mask_[term + 1U]; ++m) {
          const auto& mask = index_.masks_[m];
          if (mask.beside == Index::nothing || test(terms_, mask.beside)) planes_[mask.word] |= mask.bits;
        }
      }
    }
    const auto words = index_.plane_words_;
    for (std::size_t w = 0; w < words; ++w) {
      auto left = planes_[w] & planes_[words + w] & planes_[2 * words + w] & planes_[3 * words + w];
      for (; left != 0; left &= left - 1)
        consider(static_cast<std::uint16_t>(w * 64 + static_cast<std::size_t>(std::countr_zero(left))), out);
    }
  }

  /// True if all of these lists stand in the sentence, told as done.
  [[nodiscard]] bool stands(const Items& items) {
    const auto all = items.all();
    return std::all_of(all.begin(), all.end(), [&](ListIndex list) { return tells(list); });
  }

  /// True if the list stands in the sentence, told as done.
  bool tells(ListIndex list) {
    if (!present(list)) return false;
    const auto begin = used_;
    collect(list);
    polarity();
    const std::span<const Hit> found(room_.hits.data() + begin, used_ - begin);
    used_ = begin;
    return std::any_of(found.begin(), found.end(),
                       [&](const Hit& hit) { return denied(hit, own(hit)) == hit.denied; });
  }

 private:
  /// The hits of one item among the room's.
  struct Bounds {
    std::size_t first = 0, last = 0;
  };

  [[nodiscard]] bool present(const Alternative& alternative) {
    if ((alternative.term_bits & ~term_bits_) != 0) return false;
    for (const auto& element : phrases_.elements(alternative)) {
      if (element.kind == Element::Kind::word && !test(terms_, element.index)) return false;
      if (element.kind == Element::Kind::list && !present(element.index)) return false;
    }
    return true;
  }

  bool present(ListIndex list) {
    if (test(asked_, list)) return test(there_, list);
    set(asked_, list);
    const auto alternatives = phrases_.alternatives(list);
    for (std::size_t i = 0; i < alternatives.size(); ++i) {
      if (!present(alternatives[i])) continue;
      set(there_, list);
      room_.first_present[list] = static_cast<std::uint16_t>(i);
      return true;
    }
    return false;
  }

  void consider(std::uint16_t number, std::vector<Told>& out) {
    const auto& pattern = index_.patterns_[number];
    const auto items = pattern.items.all();
    const auto& order = index_.orders_[number];
    for (std::size_t i = 0; i < order.unsure; ++i)
      if (!present(items[order.items[i]])) return;
    used_ = 0;
    std::array<Bounds, Items::most> bounds{};
    for (std::size_t i = 0; i < items.size(); ++i) {
      const auto item = order.items[i];
      bounds[item].first = used_;
      if (!present(items[item])) return;
      collect(items[item]);
      bounds[item].last = used_;
      if (bounds[item].first == used_) return;
    }
    std::array<const Hit*, 8> chosen{};
    trials_ = 0;
    if (!choose(pattern, bounds, 0, chosen)) return;
    for (const auto& unless : pattern.unless)
      if (stands(unless)) return;
    std::size_t first = tokens_.size();
    std::size_t last = 0;
    for (std::size_t i = 0; i < items.size(); ++i) {
      first = std::min<std::size_t>(first, chosen[i]->first);
      last = std::max<std::size_t>(last, chosen[i]->last);
    }
    if (taken_back(first)) return;
    Told told{number, first, last};
    for (std::size_t i = items.size(); i-- > 0;) {
      if (chosen[i]->figure == 255) continue;
      told.figure_first = room_.figures[chosen[i]->figure].first;
      told.figure_last = room_.figures[chosen[i]->figure].last;
    }
    out.push_back(told);
  }

  /// Picks one hit for each item, so that they are near, apart from each other and told the way asked.
  bool choose(const Pattern& pattern, const std::array<Bounds, Items::most>& bounds, std::size_t item,
              std::array<const Hit*, 8>& chosen) {
    if (item == pattern.items.count) return holds(pattern, chosen);
    for (auto h = bounds[item].first; h < bounds[item].last; ++h) {
      if (++trials_ > most_trials) return false;
      const auto& hit = room_.hits[h];
      const bool fits = std::none_of(chosen.begin(), chosen.begin() + static_cast<std::ptrdiff_t>(item),
                                     [&](const Hit* other) {
                                       return clash(*other, hit) || span(*other, hit) > pattern.reach ||
                                              (pattern.in_order && hit.first < other->last);
                                     });
      if (!fits) continue;
      chosen[item] = &hit;
      if (choose(pattern, bounds, item + 1, chosen)) return true;
    }
    return false;
  }

  static bool clash(const Hit& a, const Hit& b) {
    for (std::size_t i = 0; i < a.count; ++i)
      for (std::size_t j = 0; j < b.count; ++j)
        if (a.words[i] == b.words[j]) return true;
    return false;
  }

  [[nodiscard]] int span(const Hit& a, const Hit& b) const {
    const auto first = std::min(a.first, b.first);
    const auto last = std::max(a.last, b.last);
    return tokens_[last - 1U].place - tokens_[first].place + 1;
  }

  bool holds(const Pattern& pattern, const std::array<const Hit*, 8>& chosen) {
    polarity();
    const auto hits = std::span(chosen).first(pattern.items.count);
    std::uint32_t used = 0;
    bool asks_denied = false;
    for (const auto* hit : hits) {
      used |= own(*hit);
      asks_denied = asks_denied || hit->denied;
    }
    bool all_supposed = true;
    for (const auto* hit : hits) {
      if (hit->denied ? !denied(*hit, used) : !asks_denied && denied(*hit, used)) return false;
      for (std::size_t i = 0; i < hit->count; ++i)
        all_supposed = all_supposed && room_.polarity.supposed[hit->words[i]];
    }
    return pattern.on_condition || !all_supposed;
  }

  void polarity() {
    if (!analysed_) analyse(tokens_, room_.polarity);
    analysed_ = true;
  }
  [[nodiscard]] std::uint32_t own(const Hit& hit) const {
    std::uint32_t bits = 0;
    for (std::size_t i = 0; i < hit.count; ++i) bits |= room_.polarity.own[hit.words[i]];
    return bits;
  }
  [[nodiscard]] bool denied(const Hit& hit, std::uint32_t used) const {
    for (std::size_t i = 0; i < hit.count; ++i)
      if (room_.polarity.denied(hit.words[i], used)) return true;
    return false;
  }

  /// "... is not safe" somewhere in the sentence.
  bool taken_back(std::size_t first) {
    const auto* list = phrases_.taken_back();
    if (list == nullptr || !present(*list)) return false;
    polarity();
    const auto begin = used_;
    collect(*list);
    const auto end = used_;
    used_ = begin;
    for (auto h = begin; h < end; ++h) {
      const auto& hit = room_.hits[h];
      if (!denied(hit, own(hit)) && !set_aside(hit, first)) return true;
    }
    return false;
  }

  /// "They say it is unsafe, but ...": what comes after the turn stands.
  [[nodiscard]] bool set_aside(const Hit& hit, std::size_t first) const {
    if (hit.first >= first) return false;
    for (std::size_t i = 0; i < first; ++i)
      if ((tokens_[i].grammar & contrast) != 0) return true;
    return false;
  }

  void push(const Hit& hit) {
    if (used_ < room_.hits.size()) room_.hits[used_++] = hit;
  }

  /// Appends the places where a list stands to the room's hits.
  void collect(ListIndex list) {
    const auto begin = used_;
    for (const auto& alternative : phrases_.alternatives(list).subspan(room_.first_present[list])) {
      if (!present(alternative)) continue;
      if (used_ - begin >= most_hits) return;
      Hit hit;
      hit.denied = alternative.denied;
      extend(alternative, 0, hit);
    }
  }

  /// Sets one element after the hit so far, at every place that it may stand.
  void extend(const Alternative& alternative, std::size_t e, const Hit& sofar) {
    if (e == alternative.count) return push(sofar);
    const auto& element = phrases_.elements(alternative)[e];
    if (element.kind == Element::Kind::word) {
      for (std::size_t i = 0; i < tokens_.size(); ++i) {
        if (!is(i, element.index) || !follows(element, e, sofar, i)) continue;
        auto longer = sofar;
        take(longer, e, i, i + 1);
        extend(alternative, e + 1, longer);
      }
    } else if (element.kind == Element::Kind::figure) {
      for (std::size_t f = 0; f < figures(); ++f) {
        const auto& figure = room_.figures[f];
        const auto& asked = phrases_.test(element.index);
        if (figure.dimension != asked.dimension || !(figure.low < asked.below && figure.high > asked.above))
          continue;
        if (!follows(element, e, sofar, figure.first)) continue;
        auto longer = sofar;
        take(longer, e, figure.first, figure.last);
        longer.figure = static_cast<std::uint8_t>(f);
        extend(alternative, e + 1, longer);
      }
    } else {
      nested(alternative, e, sofar);
    }
  }

  void nested(const Alternative& alternative, std::size_t e, const Hit& sofar) {
    const auto& element = phrases_.elements(alternative)[e];
    const auto begin = used_;
    collect(element.index);
    std::array<Hit, most_hits> inner;
    const auto count = std::min(used_ - begin, inner.size());
    std::copy_n(room_.hits.begin() + static_cast<std::ptrdiff_t>(begin), count, inner.begin());
    used_ = begin;
    for (std::size_t h = 0; h < count; ++h) {
      if (!follows(element, e, sofar, inner[h].first)) continue;
      auto longer = sofar;
      if (e == 0) longer.first = inner[h].first;
      longer.last = inner[h].last;
      if (inner[h].figure != 255) longer.figure = inner[h].figure;
      for (std::size_t i = 0; i < inner[h].count && longer.count < Hit::most_words; ++i)
        longer.words[longer.count++] = inner[h].words[i];
      extend(alternative, e + 1, longer);
    }
  }

  static void take(Hit& hit, std::size_t e, std::size_t first, std::size_t last) {
    if (e == 0) hit.first = static_cast<std::uint8_t>(first);
    hit.last = static_cast<std::uint8_t>(last);
    for (auto i = first; i < last && hit.count < Hit::most_words; ++i)
      hit.words[hit.count++] = static_cast<std::uint8_t>(i);
  }

  /// True if an element may stand at word i: right after the words before it, or within a "~".
  [[nodiscard]] bool follows(const Element& element, std::size_t e, const Hit& sofar, std::size_t i) const {
    if (e == 0) return true;
    if (i < sofar.last || i - sofar.last > loose_gap) return false;
    for (std::size_t j = sofar.last; j <= i; ++j) {
      const auto& token = tokens_[j];
      if (token.before != 0 && token.before != '(' && token.before != ')') return false;
      if (j == i) break;
      if (element.loose ? (token.grammar & (turn | joiner_and)) != 0 : (token.grammar & determiner) == 0)
        return false;
    }
    return true;
  }

  [[nodiscard]] bool is(std::size_t i, Term term) const {
    if ((tokens_[i].term_bits >> (term % 64U) & 1U) == 0) return false;
    const auto terms = phrases_.lexicon().terms(tokens_[i]);
    return std::find(terms.begin(), terms.end(), term) != terms.end();
  }

  std::size_t figures() {
    if (!figures_read_) figure_count_ = read_figures(tokens_, room_.figures);
    figures_read_ = true;
    return figure_count_;
  }

  const Index& index_;
  const Phrases& phrases_;
  Index::Room& room_;
  std::span<const Token> tokens_;
  std::span<std::uint64_t> terms_, asked_, there_, planes_;
  std::uint64_t term_bits_ = 0;
  std::size_t used_ = 0;
  std::size_t trials_ = 0;
  std::size_t figure_count_ = 0;
  bool figures_read_ = false;
  bool analysed_ = false;
};

void Index::find(const Line& line, Room& room, std::vector<Told>& out) const {
  Sentence(*this, line, room).find(out);
}

bool Index::stands(std::span<const Items> groups, const Line& line, Room& room) const {
  if (groups.empty()) return false;
  Sentence sentence(*this, line, room);
  return std::any_of(groups.begin(), groups.end(),
                     [&](const Items& items) { return sentence.stands(items); });
}

bool Index::takes_back(const Line& line, Room& room) const {
  const auto tokens = line.all();
  if (tokens.empty()) return false;
  if (phrases::takes_back(tokens)) return true;
  const auto* list = phrases_.taken_back();
  // "That is not safe."; of "I told her that can't be done" what was told. "My aunt says that is dangerous"
  // takes nothing back.
  const auto begin = [&](std::string_view one, std::string_view two) {
    return tokens.size() > 4 && tokens[0].text == one && tokens[1].text == two;
  };
  const std::size_t told = begin("i", "told") || begin("nobody", "should") ? 3 : 0;
  const auto opening = tokens.subspan(told, std::min<std::size_t>(2, tokens.size() - told));
  const bool about_it = std::any_of(opening.begin(), opening.end(),
                                    [](const Token& token) { return (token.grammar & points_back) != 0; });
  return about_it && list != nullptr && Sentence(*this, line, room).tells(*list);
}

}  // namespace sealworthy::phrases
