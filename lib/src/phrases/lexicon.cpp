#include "phrases/lexicon.hpp"

#include <algorithm>

#include "phrases/negation.hpp"
#include "text/forms.hpp"

namespace sealworthy::phrases {
namespace {

/// FNV-1a, never 0.
std::uint32_t hash_of(std::string_view text) {
  std::uint32_t hash = 2166136261U;
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 16777619U;
  return hash == 0 ? 1 : hash;
}

}  // namespace

Lexicon::Lexicon() : slots_(1024) {
  for (const auto& [word, grammar] : grammar_words()) slot(word).grammar |= grammar;
}

std::string_view Lexicon::text(const Slot& slot) const {
  const auto size = static_cast<unsigned char>(texts_[slot.text]);
  return {texts_.data() + slot.text + 1, size};
}

const Lexicon::Slot* Lexicon::find(std::string_view form) const {
  const auto hash = hash_of(form);
  const auto mask = slots_.size() - 1;
  for (auto i = hash & mask;; i = (i + 1) & mask) {
    const auto& slot = slots_[i];
    if (slot.hash == 0) return nullptr;
    if (slot.hash == hash && text(slot) == form) return &slot;
  }
}

void Lexicon::grow() {
  std::vector<Slot> old(slots_.size() * 2);
  old.swap(slots_);
  const auto mask = slots_.size() - 1;
  for (const auto& slot : old) {
    if (slot.hash == 0) continue;
    auto i = slot.hash & mask;
    while (slots_[i].hash != 0) i = (i + 1) & mask;
    slots_[i] = slot;
  }
}

Lexicon::Slot& Lexicon::slot(std::string_view form) {
  form = form.substr(0, 255);
  if (used_ * 2 >= slots_.size()) grow();
  const auto hash = hash_of(form);
  const auto mask = slots_.size() - 1;
  auto i = hash & mask;
  while (slots_[i].hash != 0) {
    if (slots_[i].hash == hash && text(slots_[i]) == form) return slots_[i];
    i = (i + 1) & mask;
  }
  ++used_;
  auto& fresh = slots_[i];
  fresh.hash = hash;
  fresh.text = static_cast<std::uint32_t>(texts_.size());
  texts_.push_back(static_cast<char>(form.size()));
  texts_.insert(texts_.end(), form.begin(), form.end());
  return fresh;
}

void Lexicon::add(std::string_view form, Term term) {
  auto& place = slot(form);
  for (auto i = place.first; i != 0; i = nodes_[i - 1].next)
    if (nodes_[i - 1].term == term) return;
  nodes_.push_back({term, place.first});
  place.first = static_cast<std::uint32_t>(nodes_.size());
  ++place.count;
}

Term Lexicon::term_named(std::string name) {
  names_.push_back(std::move(name));
  return static_cast<Term>(names_.size() - 1);
}

Term Lexicon::any_form(std::string_view word) {
  const auto term = term_named(std::string(word));
  text::each_form(word, [&](std::string_view form) { add(form, term); });
  return term;
}

Term Lexicon::exactly(std::string_view form) {
  const auto term = term_named("=" + std::string(form));
  add(form, term);
  return term;
}

void Lexicon::finish() {
  for (auto& slot : slots_) {
    const auto begin = flat_.size();
    for (auto i = slot.first; i != 0; i = nodes_[i - 1].next) flat_.push_back(nodes_[i - 1].term);
    slot.first = static_cast<std::uint32_t>(begin);
  }
  nodes_ = {};
}

Token Lexicon::read(const text::Word& word) const {
  Token token;
  token.text = word.text;
  token.before = word.before;
  token.number = word.number;
  token.hyphened = word.hyphened;
  const auto* slot = find(word.text);
  if (slot == nullptr && word.text.ends_with("'s")) slot = find(word.text.substr(0, word.text.size() - 2));
  if (slot != nullptr) {
    token.grammar = slot->grammar;
    token.first_term = slot->first;
    token.term_count = slot->count;
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
