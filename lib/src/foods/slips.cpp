#include "foods/slips.hpp"

#include <algorithm>
#include <atomic>
#include <functional>
#include <string>
#include <unordered_map>

namespace sealworthy::foods {
namespace {

bool letter(char c) { return c >= 'a' && c <= 'z'; }

constexpr std::size_t most_asked = 4096;

struct Hash : std::hash<std::string_view> {
  using is_transparent = void;
};

/// The words that one thread asked for.
struct Asked {
  std::uint64_t of = 0;  ///< Slips::number_
  std::unordered_map<std::string, WordId, Hash, std::equal_to<>> answers;
};

}  // namespace

bool one_slip_apart(std::string_view a, std::string_view b) {
  if (a.size() < b.size()) std::swap(a, b);
  if (a.size() - b.size() > 1 || a == b) return false;
  const auto differ = std::mismatch(b.begin(), b.end(), a.begin());
  const auto at = static_cast<std::size_t>(differ.first - b.begin());
  if (a.size() > b.size()) return a.substr(at + 1) == b.substr(at);
  if (a.substr(at + 1) == b.substr(at + 1)) return true;
  return at + 1 < a.size() && a[at] == b[at + 1] && a[at + 1] == b[at] &&
         a.substr(at + 2) == b.substr(at + 2);
}

void Slips::build(const Lexicon& lexicon) {
  static std::atomic<std::uint64_t> built{0};
  number_ = ++built;
  for (WordId id = 0; id < lexicon.size(); ++id) {
    const auto& entry = lexicon.entry(id);
    if (!entry.of_food || entry.text.size() < shortest) continue;
    if (!std::all_of(entry.text.begin(), entry.text.end(), letter)) continue;
    by_first_[static_cast<std::size_t>(entry.text.front() - 'a')].push_back(id);
    by_last_[static_cast<std::size_t>(entry.text.back() - 'a')].push_back(id);
  }
  const auto shorter = [&](WordId a, WordId b) {
    return lexicon.entry(a).text.size() < lexicon.entry(b).text.size();
  };
  for (auto* table : {&by_first_, &by_last_})
    for (auto& words : *table) std::stable_sort(words.begin(), words.end(), shorter);
}

WordId Slips::meant(std::string_view word, const Lexicon& lexicon) const {
  if (word.size() < shortest || word.size() > longest) return no_word;
  if (!std::all_of(word.begin(), word.end(), letter)) return no_word;
  thread_local Asked asked;
  if (asked.of != number_ || asked.answers.size() >= most_asked) asked = {number_, {}};
  if (const auto known = asked.answers.find(word); known != asked.answers.end()) return known->second;
  const WordId answer = find(word, lexicon);
  asked.answers.emplace(word, answer);
  return answer;
}

WordId Slips::find(std::string_view word, const Lexicon& lexicon) const {
  Candidates found;
  search(by_first_[static_cast<std::size_t>(word.front() - 'a')], word, lexicon, found);
  search(by_last_[static_cast<std::size_t>(word.back() - 'a')], word, lexicon, found);
  if (found.name != no_word) return found.names_differ ? no_word : found.name;
  return found.parts_differ ? no_word : found.part;
}

void Slips::search(const std::vector<WordId>& words, std::string_view word, const Lexicon& lexicon,
                   Candidates& found) {
  auto at = std::lower_bound(words.begin(), words.end(), word.size() - 1, [&](WordId id, std::size_t size) {
    return lexicon.entry(id).text.size() < size;
  });
  for (; at != words.end(); ++at) {
    const auto& entry = lexicon.entry(*at);
    if (entry.text.size() > word.size() + 1) return;
    if (!one_slip_apart(word, entry.text)) continue;
    const bool whole = lexicon.entry(entry.lemma).whole_name;
    WordId& best = whole ? found.name : found.part;
    bool& differ = whole ? found.names_differ : found.parts_differ;
    if (best == no_word)
      best = *at;
    else if (lexicon.entry(best).lemma != entry.lemma)
      differ = true;
  }
}

}  // namespace sealworthy::foods
