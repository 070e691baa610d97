#include "foods/lexicon.hpp"

#include <algorithm>
#include <cstring>

#include "text/words.hpp"

namespace sealworthy::foods {
namespace {

constexpr std::size_t block_size = std::size_t{32} * 1024;

/// FNV-1a; the words are short and few, and the order of the table shows nowhere.
std::uint32_t hash_of(std::string_view word) {
  std::uint64_t h = 1469598103934665603ULL;
  for (const char c : word) h = (h ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
  return static_cast<std::uint32_t>(h ^ (h >> 32));
}

/// Faster than a call of memcmp for words of a few letters.
bool same(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (a[i] != b[i]) return false;
  return true;
}

bool ends(std::string_view word, std::string_view tail) {
  return word.size() > tail.size() && word.ends_with(tail);
}
bool vowel(char c) { return std::string_view("aeiou").find(c) != std::string_view::npos; }

}  // namespace

std::vector<std::string> plurals(std::string_view word) {
  std::vector<std::string> out;
  if (word.size() < 3) return out;
  const std::string base(word);
  if (ends(word, "y") && !vowel(word[word.size() - 2]))
    out.push_back(base.substr(0, base.size() - 1) + "ies");
  if (ends(word, "f")) out.push_back(base.substr(0, base.size() - 1) + "ves");
  if (ends(word, "o")) out.push_back(base + "es");
  if (ends(word, "s") || ends(word, "x") || ends(word, "z") || ends(word, "sh") || ends(word, "ch"))
    out.push_back(base + "es");
  out.push_back(base + "s");
  std::erase_if(out, [&](const std::string& many) { return text::singular(many) != word; });
  return out;
}

Lexicon::Lexicon() : slots_(16384) { entries_.reserve(8192); }

std::string_view Lexicon::keep(std::string_view text) {
  if (text.size() > block_size) {
    blocks_.insert(blocks_.begin(), std::make_unique<char[]>(text.size()));
    std::memcpy(blocks_.front().get(), text.data(), text.size());
    return {blocks_.front().get(), text.size()};
  }
  if (blocks_.empty() || block_used_ + text.size() > block_size) {
    blocks_.push_back(std::make_unique<char[]>(block_size));
    block_used_ = 0;
  }
  char* at = blocks_.back().get() + block_used_;
  std::memcpy(at, text.data(), text.size());
  block_used_ += text.size();
  return {at, text.size()};
}

std::size_t Lexicon::slot_of(std::string_view word, std::uint32_t hash) const {
  const std::size_t mask = slots_.size() - 1;
  std::size_t slot = hash & mask;
  while (slots_[slot].word != no_word &&
         !(slots_[slot].hash == hash && same(entries_[slots_[slot].word].text, word)))
    slot = (slot + 1) & mask;
  return slot;
}

WordId Lexicon::find(std::string_view word) const { return slots_[slot_of(word, hash_of(word))].word; }

void Lexicon::grow() {
  slots_.assign(slots_.size() * 2, Slot{});
  for (WordId id = 0; id < entries_.size(); ++id) {
    const auto hash = hash_of(entries_[id].text);
    slots_[slot_of(entries_[id].text, hash)] = {hash, id};
  }
}

WordId Lexicon::intern(std::string_view word) {
  const auto hash = hash_of(word);
  if (const WordId known = slots_[slot_of(word, hash)].word; known != no_word) return known;
  if ((entries_.size() + 1) * 2 > slots_.size()) grow();
  const auto id = static_cast<WordId>(entries_.size());
  entries_.push_back({keep(word), id, false, false, false});
  slots_[slot_of(entries_.back().text, hash)] = {hash, id};
  const std::string one = text::singular(word);
  if (one != word) {
    const WordId lemma = intern(one);
    entries_[id].lemma = lemma;
  }
  return id;
}

void Lexicon::add_plurals() {
  const auto known = static_cast<WordId>(entries_.size());
  std::vector<bool> has_plural(known, false);
  for (WordId id = 0; id < known; ++id) {
    auto& entry = entries_[id];
    if (entry.lemma == id) continue;
    has_plural[entry.lemma] = has_plural[entry.lemma] || entry.of_food;
    entry.of_food = entries_[entry.lemma].of_food;
  }
  for (WordId id = 0; id < known; ++id) {
    if (has_plural[id] || entries_[id].lemma != id || !entries_[id].of_food) continue;
    for (const auto& many : plurals(entries_[id].text)) {
      const WordId plural = intern(many);
      entries_[plural].of_food = true;
    }
  }
}

}  // namespace sealworthy::foods
