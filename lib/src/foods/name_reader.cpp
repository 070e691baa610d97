#include "foods/name_reader.hpp"

#include <boost/container/small_vector.hpp>

namespace sealworthy::foods {
namespace {

using Order = boost::container::small_vector<std::uint32_t, 16>;

/// Roles of words that may be left over around a name without making it another food.
constexpr std::uint32_t passable =
    light_roles | role_counter | role_plain | role_of | role_or | role_and | role_ends;

class Reader {
 public:
  Reader(const Tokens& tokens, Part part, const Index& index)
      : tokens_(tokens), part_(part), index_(index), depth_(tokens[part.first].depth) {}

  [[nodiscard]] bool usable(std::size_t i) const { return at_depth(tokens_[i], depth_); }
  [[nodiscard]] NameMatch best() const;
  [[nodiscard]] bool nothing_left_behind(std::size_t last) const;
  [[nodiscard]] bool nothing_left_before(std::size_t first, FoodId food) const;
  [[nodiscard]] FoodId kind_before(std::size_t i, FoodId food) const;
  [[nodiscard]] std::string text(const NameMatch& match) const;
  [[nodiscard]] NamePart result(const NameMatch& match) const;
  [[nodiscard]] NamePart result_along(const NameMatch& match, const Order& order) const;
  void append(Order& order, std::size_t from, std::size_t to) const;
  /// The place of an "of" outside a name, part_.last + 1 if there is none.
  [[nodiscard]] std::size_t of() const;

 private:
  [[nodiscard]] bool light_match(std::size_t i) const;
  [[nodiscard]] bool variety(std::size_t i) const;
  [[nodiscard]] bool names_beside(std::size_t i, std::size_t first) const;

  const Tokens& tokens_;
  Part part_;
  const Index& index_;
  std::size_t depth_;
};

/// A food named by one word that mostly counts or describes others: "hearts", "steaks", "black".
bool Reader::light_match(std::size_t i) const {
  return tokens_.match(i).last == i && tokens_[i].is(role_counter | role_state | role_quality);
}

/// Of two names that end at the same word: "green peppers" goes before "ground ... peppers".
bool better(const NameMatch& a, const NameMatch& b) {
  return a.words != b.words ? a.words > b.words : a.skipped < b.skipped;
}

/// The name that ends last, as English puts the noun last; of those, the one of most words.
NameMatch Reader::best() const {
  NameMatch best;
  for (std::size_t i = part_.first; i <= part_.last; ++i) {
    const auto& match = tokens_.match(i);
    if (!usable(i) || !match.found() || match.last > part_.last) continue;
    if (best.found() && (match.last < best.last || light_match(i))) continue;
    if (best.found() && match.last == best.last && !better(match, best)) continue;
    best = match;
  }
  return best;
}

/// "Blenheim apricots": a word with a capital before a name in small letters is a variety or a place.
bool Reader::variety(std::size_t i) const {
  if (!tokens_[i].capital || tokens_[i].known || i == part_.last) return false;
  for (std::size_t j = i + 1; j <= part_.last; ++j)
    if (usable(j) && tokens_[j].food_word) return !tokens_[j].capital;
  return false;
}

bool Reader::nothing_left_behind(std::size_t last) const {
  for (std::size_t i = last + 1; i <= part_.last; ++i)
    if (usable(i) && !tokens_[i].is(passable) && !tokens_[i].number) return false;
  return true;
}

/// The food of words before the matched ones that is a kind of it: "jalapeno hot peppers"; pages also double
/// their words, "onion onions".
FoodId Reader::kind_before(std::size_t i, FoodId food) const {
  const auto& match = tokens_.match(i);
  if (!match.found()) return no_food;
  for (FoodId at = match.food; at != no_food; at = index_.parents[at])
    if (at == food) return match.food;
  return no_food;
}

bool Reader::nothing_left_before(std::size_t first, FoodId food) const {
  std::size_t kind = part_.first;
  for (std::size_t i = part_.first; i < first; ++i) {
    if (!usable(i)) continue;
    if (kind_before(i, food) != no_food) kind = tokens_.match(i).last + std::size_t{1};
    if (i >= kind && !tokens_[i].is(passable) && !tokens_[i].number && !variety(i)) return false;
  }
  return true;
}

/// Whether a word outside the matched words belongs to the name as cooks write it.
bool Reader::names_beside(std::size_t i, std::size_t first) const {
  const auto& token = tokens_[i];
  if (token.number || token.is(role_adverb | role_size | role_filler | role_ends | role_plain)) return false;
  if (!token.is(role_state)) return true;
  const auto& said = tokens_[i - token.offset];  // the state stands at the first word of its phrase
  return said.state != no_state && index_.phrases.state(said.state).named && (said.length == 1 || i < first);
}

std::string Reader::text(const NameMatch& match) const {
  std::string out;
  std::size_t before = part_.last + 1;
  const std::size_t first = match.found() ? match.first : part_.last + std::size_t{1};
  Trie::Node node = Trie::root;
  for (std::size_t i = part_.first; i <= part_.last; ++i) {
    const auto& token = tokens_[i];
    if (!usable(i)) continue;
    const bool inside = i >= first && i <= match.last;
    const Trie::Node next =
        inside && token.lemma != no_word ? index_.names.child(node, token.lemma) : Trie::none;
    if (next != Trie::none)
      node = next;
    else if (!names_beside(i, first) ||
             (out.empty() && token.is(role_counter) && i < first && match.found()) ||
             (token.is(role_of | role_and | role_or) && (out.empty() || i == part_.last)))
      continue;
    if (!out.empty() && tokens_[before].end != token.begin) {
      const bool hyphen = before + 1 == i && token.begin == tokens_[before].end + 1 && token.hyphened;
      out += hyphen ? tokens_.line()[tokens_[before].end] : ' ';
    }
    out.append(tokens_.line().substr(token.begin, token.end - token.begin));
    before = i;
  }
  return out;
}

NamePart Reader::result(const NameMatch& match) const {
  NamePart part;
  part.name = text(match);
  if (!match.found()) {
    part.whole = false;
    return part;
  }
  part.food = match.food;
  part.node = match.node;
  for (std::size_t i = part_.first; i < match.first; ++i)
    if (const FoodId kind = kind_before(i, match.food); usable(i) && kind != no_food && kind != match.food) {
      part.food = kind;
      part.node = tokens_.match(i).node;
    }
  part.whole = nothing_left_before(match.first, match.food) && nothing_left_behind(match.last);
  for (std::size_t i = match.first; i <= match.last; ++i) part.slip = part.slip || tokens_[i].slip;
  return part;
}

NamePart Reader::result_along(const NameMatch& match, const Order& order) const {
  NamePart part;
  part.name = text({});
  part.food = match.food;
  part.node = match.node;
  for (const auto i : order) part.slip = part.slip || tokens_[i].slip;
  return part;
}

void Reader::append(Order& order, std::size_t from, std::size_t to) const {
  for (std::size_t i = from; i <= to; ++i)
    if (at_depth(tokens_[i], tokens_[from].depth)) order.push_back(static_cast<std::uint32_t>(i));
}

std::size_t Reader::of() const {
  std::size_t covered = part_.first;
  for (std::size_t i = part_.first; i <= part_.last; ++i) {
    if (!usable(i)) continue;
    if (tokens_.match(i).found()) covered = std::max(covered, tokens_.match(i).last + std::size_t{1});
    if (tokens_[i].is(role_of) && i >= covered && i > part_.first && i < part_.last) return i;
  }
  return part_.last + 1;
}

/// "juice of lemons" is "lemon juice"; "bunch of dill" is "dill".
NamePart read_with_of(const Tokens& tokens, const Part& part, std::size_t of, const Index& index) {
  const Part left{part.first, of - 1};
  const Part right{of + 1, part.last};
  const Reader whole(tokens, part, index);
  Order turned;
  whole.append(turned, right.first, right.last);
  whole.append(turned, left.first, left.last);
  const auto match = tokens.match_along({turned.data(), turned.size()});
  const Reader behind(tokens, right, index);
  if (match.found() && match.first >= right.first && match.last <= left.last) {
    auto result = behind.result_along(match, turned);
    // "juice of 2 lemons" counts lemons, "oil of cloves" is one thing
    if (!tokens[right.first].spent && !tokens[of + 1].spent) result.name = whole.text({});
    return result;
  }
  const Reader before(tokens, left, index);
  const bool only_measures = before.nothing_left_before(of, no_food);
  if (!only_measures && before.best().found()) return whole.result(before.best());
  if (!only_measures && !behind.best().found()) return whole.result({});
  auto result = behind.result(behind.best());
  result.whole = result.whole && only_measures;
  return result;
}

}  // namespace

NamePart read_joined(const Tokens& tokens, const Part& first, const Part& second, const Index& index) {
  const Reader reader(tokens, first, index);
  Order order;
  reader.append(order, first.first, first.last);
  reader.append(order, second.first, second.last);
  const auto match = tokens.match_along({order.data(), order.size()});
  const bool of_both = match.first >= first.first && match.first <= first.last &&
                       match.last >= second.first && match.last <= second.last;
  if (!match.found() || !of_both) return {};
  return reader.result_along(match, order);
}

namespace {

/// "*lime* or orange juice", "*juice* and rind of one orange": what an alternative borrows from the last one.
NamePart read_borrowing(const Tokens& tokens, const Part& part, const Part& shared, const Index& index) {
  const Reader lender(tokens, shared, index);
  const Reader reader(tokens, part, index);
  if (const auto of = lender.of(); of <= shared.last) {
    if (reader.of() <= part.last) return {};
    const Part behind{of + 1, shared.last};
    auto joined = read_joined(tokens, behind, part, index);
    return joined;
  }
  // the most words of the last alternative that make a name with this one
  for (std::size_t from = shared.first + 1; from <= shared.last; ++from) {
    if (!tokens[from].food_word) continue;
    auto joined = read_joined(tokens, part, {from, shared.last}, index);
    if (joined.food == no_food || joined.node == lender.best().node) continue;
    joined.written = joined.name;
    joined.name += ' ';
    joined.name += Reader(tokens, {from, shared.last}, index).text({});
    return joined;
  }
  return {};
}

}  // namespace

NamePart read_name(const Tokens& tokens, const Part& part, const Part* shared, const Index& index) {
  if (shared != nullptr)
    if (auto joined = read_borrowing(tokens, part, *shared, index); joined.food != no_food) return joined;
  const Reader reader(tokens, part, index);
  if (const auto of = reader.of(); of <= part.last) return read_with_of(tokens, part, of, index);
  return reader.result(reader.best());
}

}  // namespace sealworthy::foods
