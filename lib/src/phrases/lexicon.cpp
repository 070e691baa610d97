#include "phrases/lexicon.hpp"

#include <algorithm>
#include <cstring>

#include "phrases/negation.hpp"
#include "text/forms.hpp"

namespace sealworthy::phrases {
namespace {

template <class T>
std::uint64_t load(const char* from) {
  T value;
  std::memcpy(&value, from, sizeof value);
  return value;
}

constexpr std::uint32_t told_by_key = 16;  ///< letters

}  // namespace

Lexicon::Key::Key(std::string_view word) : size(static_cast<std::uint32_t>(word.size())) {
  const char* p = word.data();
  if (size >= 8) {
    head = load<std::uint64_t>(p);
    tail = load<std::uint64_t>(p + size - 8);
  } else if (size >= 4) {
    head = load<std::uint32_t>(p);
    tail = load<std::uint32_t>(p + size - 4);
  } else if (size > 0) {
    head = static_cast<unsigned char>(p[0]);
    tail = load<std::uint8_t>(p + size / 2) << 8U | load<std::uint8_t>(p + size - 1);
  }
}

std::uint32_t Lexicon::Key::hash() const {
  const auto mixed = (head ^ (tail << 29U | tail >> 35U) ^ size) * 0x9E3779B97F4A7C15U;
  return static_cast<std::uint32_t>(mixed >> 32U);
}

bool Lexicon::is(const Entry& entry, const Key& key, std::string_view form) const {
  if (!(entry.key == key)) return false;
  return key.size <= told_by_key || std::string_view(texts_.data() + entry.text, key.size) == form;
}

Lexicon::Lexicon() : slots_(1024) {
  for (const auto& [word, grammar] : grammar_words()) entry(word).grammar |= grammar;
}

const Lexicon::Entry* Lexicon::find(std::string_view form) const {
  const Key key(form);
  const auto hash = key.hash();
  const auto mask = slots_.size() - 1;
  for (auto i = hash & mask;; i = (i + 1) & mask) {
    const auto& slot = slots_[i];
    if (slot.entry == 0) return nullptr;
    if (slot.hash == hash && is(entries_[slot.entry - 1], key, form)) return &entries_[slot.entry - 1];
  }
}

void Lexicon::grow() {
  std::vector<Slot> old(slots_.size() * 2);
  old.swap(slots_);
  const auto mask = slots_.size() - 1;
  for (const auto& slot : old) {
    if (slot.entry == 0) continue;
    auto i = slot.hash & mask;
    while (slots_[i].entry != 0) i = (i + 1) & mask;
    slots_[i] = slot;
  }
}

Lexicon::Entry& Lexicon::entry(std::string_view form) {
  form = form.substr(0, 255);
  if (entries_.size() * 2 >= slots_.size()) grow();
  const Key key(form);
  const auto hash = key.hash();
  const auto mask = slots_.size() - 1;
  auto i = hash & mask;
  while (slots_[i].entry != 0) {
    auto& known = entries_[slots_[i].entry - 1];
    if (slots_[i].hash == hash && is(known, key, form)) return known;
    i = (i + 1) & mask;
  }
  auto& fresh = entries_.emplace_back();
  slots_[i] = {hash, static_cast<std::uint32_t>(entries_.size())};
  fresh.key = key;
  fresh.text = static_cast<std::uint32_t>(texts_.size());
  if (form.size() > told_by_key) texts_.insert(texts_.end(), form.begin(), form.end());
  return fresh;
}

void Lexicon::add(std::string_view form, Term term) {
  auto& place = entry(form);
  if (place.first != 0 && nodes_[place.first - 1].term == term) return;  // a form may come twice in a row
  nodes_.push_back({term, place.first});
  place.first = static_cast<std::uint32_t>(nodes_.size());
  ++place.count;
}

Term Lexicon::any_form(std::string_view word) {
  const auto term = static_cast<Term>(terms_++);
  text::each_form(word, [&](std::string_view form) { add(form, term); });
  return term;
}

Term Lexicon::exactly(std::string_view form) {
  const auto term = static_cast<Term>(terms_++);
  add(form, term);
  return term;
}

void Lexicon::finish() {
  flat_.reserve(nodes_.size());
  for (auto& entry : entries_) {
    const auto begin = flat_.size();
    for (auto i = entry.first; i != 0; i = nodes_[i - 1].next) {
      flat_.push_back(nodes_[i - 1].term);
      entry.term_bits |= std::uint64_t{1} << (nodes_[i - 1].term % 64U);
    }
    entry.first = static_cast<std::uint32_t>(begin);
  }
  nodes_ = {};
}

Token Lexicon::read(const text::Word& word) const {
  Token token;
  token.text = word.text;
  token.before = word.before;
  token.number = word.number;
  token.hyphened = word.hyphened;
  const auto* known = find(word.text);
  if (known == nullptr && word.text.ends_with("'s")) known = find(word.text.substr(0, word.text.size() - 2));
  if (known != nullptr) {
    token.grammar = known->grammar;
    token.first_term = known->first;
    token.term_count = known->count;
    token.term_bits = known->term_bits;
  }
  return token;
}

void Line::read(const Lexicon& lexicon, const text::Words& words, const reading::Sentence& sentence) {
  size = std::min(sentence.last - sentence.first, longest);
  int place = 0;
  for (std::size_t i = 0; i < size; ++i) {
    auto& token = tokens[i];
    token = lexicon.read(words[sentence.first + i]);
    if (i > 0 && (token.before != 0 || (token.grammar & Grammar::turn) != 0)) place += 2;
    token.place = static_cast<std::int16_t>(place++);
  }
}

}  // namespace sealworthy::phrases
