#include "foods/tokens.hpp"

#include <algorithm>

namespace sealworthy::foods {
namespace {

constexpr std::size_t shortest_left = 4;  ///< letters of two words written as one
constexpr std::size_t shortest_right = 3;
constexpr std::size_t longest_before_number = 3;  ///< words of a name before its number ("curing salt no. 1")

bool upper(char c) { return c >= 'A' && c <= 'Z'; }

/// A mark that text::Words keeps as a word: \", %, °, +, &.
bool symbol(std::string_view text) {
  if (text.front() >= 'a' && text.front() <= 'z') return false;
  return std::none_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0xC3;
  });
}

/// "shaken", "butterflied": words that describe, of which no list is complete.
bool participle(std::string_view text) { return text.size() >= 6 && text.ends_with("ed"); }

void take_entry(Token& token, WordId id, const Lexicon& lexicon) {
  const auto& entry = lexicon.entry(id);
  token.word = id;
  token.lemma = entry.lemma;
  token.plural = entry.lemma != id;
  token.food_word = entry.of_food;
  token.known = entry.of_food || entry.of_english;
}

}  // namespace

Tokens::Tokens(std::string_view line, const text::Words& words, const Index& index)
    : line_(line), index_(index) {
  tokens_.reserve(words.size());
  for (const auto& word : words) add(word);
  mark_phrases();
}

void Tokens::add(const text::Word& word) {
  Token& token = tokens_.emplace_back();
  token.text = word.text;
  token.begin = word.begin;
  token.end = word.end;
  token.before = word.before;
  token.depth = static_cast<std::uint8_t>(std::min(word.depth, 255));
  token.number = word.number;
  token.hyphened = word.hyphened;
  token.capital = upper(line_[word.begin]);
  token.slash = word.begin > 0 && line_[word.begin - 1] == '/' && tokens_.size() > 1 &&
                !tokens_[tokens_.size() - 2].number;
  const WordId id = index_.lexicon.find(word.text);
  if (id != no_word) {
    take_entry(token, id, index_.lexicon);
  } else if (symbol(word.text)) {
    token.known = true;
  } else if (!word.number) {
    const Token unknown = token;
    tokens_.pop_back();
    add_unknown(unknown);
  }
}

/// A word that stands nowhere in the rules: two words run together, a slip of one, or a stranger.
void Tokens::add_unknown(Token token) {
  if (add_run_together(token)) return;
  const WordId meant = index_.slips.meant(token.text, index_.lexicon);
  if (meant != no_word) {
    take_entry(token, meant, index_.lexicon);
    token.slip = true;
  } else if (participle(token.text)) {
    token.roles = role_adverb;
  }
  tokens_.push_back(token);
}

/// Recipes copied from pages lose spaces: "cucumberstrimmed", "onionsthin".
bool Tokens::add_run_together(const Token& token) {
  const auto size = token.text.size();
  if (size < shortest_left + shortest_right || size > 40 || token.end - token.begin != size) return false;
  for (std::size_t cut = size - shortest_right; cut >= shortest_left; --cut) {
    const WordId left = index_.lexicon.find(token.text.substr(0, cut));
    if (left == no_word || !index_.lexicon.entry(left).of_food) continue;
    const WordId right = index_.lexicon.find(token.text.substr(cut));
    if (right == no_word) continue;
    Token first = token;
    first.text = token.text.substr(0, cut);
    first.end = token.begin + static_cast<std::uint32_t>(cut);
    take_entry(first, left, index_.lexicon);
    Token second = token;
    second.text = token.text.substr(cut);
    second.begin = first.end;
    second.before = 0;
    second.capital = false;
    take_entry(second, right, index_.lexicon);
    tokens_.push_back(first);
    tokens_.push_back(second);
    return true;
  }
  return false;
}

void Tokens::mark_phrases() {
  for (std::size_t at = 0; at < tokens_.size();) {
    Trie::Node node = Trie::root;
    const Meaning* found = nullptr;
    std::size_t length = 1;
    for (std::size_t i = at; i < tokens_.size(); ++i) {
      const auto& token = tokens_[i];
      if (token.word == no_word || token.slip || (i > at && token.before != 0)) break;
      node = i == at ? index_.phrases.first(token.word) : index_.phrases.child(node, token.word);
      if (node == Trie::none) break;
      const auto& meaning = index_.phrases.meaning(node);
      if (!meaning.any()) continue;
      found = &meaning;
      length = i - at + 1;
    }
    if (found != nullptr) {
      for (std::size_t i = at; i < at + length; ++i) {
        tokens_[i].roles = found->roles;
        tokens_[i].offset = static_cast<std::uint8_t>(i - at);
      }
      tokens_[at].says = found->says;
      tokens_[at].state = found->state;
      tokens_[at].length = static_cast<std::uint8_t>(length);
    }
    at += length;
  }
  for (auto& token : tokens_) {
    if (symbol(token.text)) {
      token.roles |= role_filler;
      if (token.text == "\"") token.says |= says_length;
    }
    // words of phrases that do not stand here
    if (token.known && !token.food_word && token.roles == 0 && token.says == 0) token.roles = role_plain;
  }
}

/// "10cupspickling": the amount ends inside a word; the rest of it is a word of its own.
void Tokens::split(std::size_t i, std::uint32_t at) {
  const Token whole = tokens_[i];
  boost::container::small_vector<Token, 24> behind(tokens_.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                                                   tokens_.end());
  tokens_.resize(i + 1);
  tokens_[i].end = at;
  Token rest;
  rest.text = whole.text.substr(at - whole.begin);
  rest.begin = at;
  rest.end = whole.end;
  rest.depth = whole.depth;
  const WordId id = index_.lexicon.find(rest.text);
  if (id != no_word) {
    take_entry(rest, id, index_.lexicon);
    tokens_.push_back(rest);
  } else {
    add_unknown(rest);
  }
  tokens_.insert(tokens_.end(), behind.begin(), behind.end());
  mark_phrases();
}

void Tokens::spend(std::size_t begin, std::size_t end, bool start) {
  for (std::size_t i = 0; i < tokens_.size(); ++i) {
    if (tokens_[i].begin >= end || tokens_[i].end <= begin) continue;
    const bool ascii = tokens_[i].end - tokens_[i].begin == tokens_[i].text.size();
    if (tokens_[i].end > end && ascii && !tokens_[i].number) split(i, static_cast<std::uint32_t>(end));
    tokens_[i].spent = true;
    tokens_[i].amount_start = start;
    start = false;
  }
}

void Tokens::match_names() {
  matches_.assign(tokens_.size(), NameMatch{});
  for (std::size_t i = 0; i < tokens_.size(); ++i) {
    const auto& token = tokens_[i];
    if (token.food_word && !token.spent && index_.name_first[token.lemma] != Trie::none &&
        !inside_remark(i, tokens_.size()))
      matches_[i] = match_from(i);
  }
}

/// "greens" are a food, "green" is a colour: a name given in the plural only does not lend itself to a word
/// that describes.
bool Tokens::names_food(const Token& token, Trie::Node node) const {
  const auto& end = index_.name_ends[node];
  return token.plural || end.one != no_food || !token.is(role_quality | role_state | role_adverb);
}

/// "olives in *brine*": a word behind the first of a remark is no part of a name that did not take that
/// first.
bool Tokens::inside_remark(std::size_t i, std::size_t stepped) const {
  const auto& token = tokens_[i];
  return token.offset > 0 && token.is(role_state | role_ends) && stepped + 1 != i;
}

NameMatch Tokens::match_from(std::size_t start) const {
  NameMatch found;
  Trie::Node node = Trie::root;
  const auto depth = tokens_[start].depth;
  bool noun = false;  // a noun has come: a comma now ends the name
  std::size_t stepped = start;
  std::uint16_t words = 0;
  for (std::size_t i = start; i < tokens_.size(); ++i) {
    const auto& token = tokens_[i];
    if (token.depth > depth && i > start) continue;
    if (token.depth < depth) break;
    const bool sentence = token.before == ';' || token.before == ':' || token.before == '.';
    if (i > start && (token.spent || (sentence && !token.number))) break;  // but "cure no. 1"
    if (i > start && token.before == ',' && noun) break;
    const bool usable = token.lemma != no_word && (i == start || !inside_remark(i, stepped));
    const Trie::Node next = !usable      ? Trie::none
                            : i == start ? index_.name_first[token.lemma]
                                         : index_.names.child(node, token.lemma);
    if (next != Trie::none) {
      node = next;
      stepped = i;
      ++words;
      if (!token.is(role_state | role_quality)) noun = true;
      const FoodId food = index_.food_at(node, token.plural);
      if (food != no_food && names_food(token, node)) {
        const auto last = static_cast<std::uint32_t>(i);
        const auto length = static_cast<std::uint16_t>(std::min<std::size_t>(i + 1 - start, 0xFFFF));
        found = {static_cast<std::uint32_t>(start),          last, words,
                 static_cast<std::uint16_t>(length - words), food, node};
      }
    } else if (i == start || !token.is(light_roles)) {
      break;
    }
  }
  return found;
}

bool Tokens::in_name(std::size_t i) const {
  for (std::size_t back = 1; back <= longest_before_number && back <= i; ++back)
    if (tokens_[i - back].food_word && match_from(i - back).last >= i) return true;
  return false;
}

NameMatch Tokens::match_along(std::span<const std::uint32_t> order) const {
  constexpr std::uint32_t passed = light_roles | role_counter | role_plain;
  const auto passes = [&](std::uint32_t i) { return tokens_[i].is(passed) || tokens_[i].number; };
  for (std::size_t start = 0; start < order.size(); ++start) {
    NameMatch found;
    Trie::Node node = Trie::root;
    std::size_t i = start;
    for (; i < order.size(); ++i) {
      const auto& token = tokens_[order[i]];
      const Trie::Node next = token.lemma == no_word ? Trie::none : index_.names.child(node, token.lemma);
      if (next != Trie::none) {
        found = {node == Trie::root ? order[i] : found.first, order[i], 0, 0,
                 index_.food_at(next, token.plural),          next};
        node = next;
      } else if (!passes(order[i])) {
        break;
      }
    }
    if (i == order.size() && found.found()) return found;
    if (!passes(order[start])) break;
  }
  return {};
}

}  // namespace sealworthy::foods
