#include "foods/phrases.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "foods/each_word.hpp"
#include "foods/fields.hpp"

namespace sealworthy::foods {
namespace {

struct Section {
  std::string_view key;
  std::uint32_t role;
  bool with_plurals;  ///< nouns, listed in the singular
};
constexpr std::array sections{
    Section{"or", role_or, false},           Section{"and", role_and, false},
    Section{"fillers", role_filler, false},  Section{"adverbs", role_adverb, false},
    Section{"sizes", role_size, false},      Section{"qualities", role_quality, false},
    Section{"counters", role_counter, true}, Section{"ends", role_ends, false},
    Section{"plain", role_plain, false},     Section{"of-words", role_of, false},
    Section{"numbers", role_number, false},
};

struct Remark {
  std::string_view key;
  std::uint32_t says;
  bool ends;  ///< a name ends before it
};
constexpr std::array remarks{
    Remark{"optional", says_optional, true},   Remark{"to-taste", says_to_taste, true},
    Remark{"not-eaten", says_not_eaten, true}, Remark{"in-jar", says_in_jar, true},
    Remark{"hedge", says_hedge, true},         Remark{"denial", says_denial, false},
    Remark{"such-as", says_such_as, false},    Remark{"per-jar", says_per_jar, true},
    Remark{"leave-on", says_leave_on, false},  Remark{"percent", says_percent, false},
    Remark{"acidity", says_acidity, false},    Remark{"length", says_length, false},
};

}  // namespace

Meaning& Phrases::at_phrase(std::string_view phrase, Lexicon& lexicon) {
  Trie::Node node = Trie::root;
  each_word(phrase, [&](std::string_view word) {
    const WordId id = lexicon.intern(word);
    lexicon.entry(id).of_english = true;
    node = trie_.add(node, id);
  });
  if (meanings_.size() <= node) meanings_.resize(std::max<std::size_t>(trie_.size(), node + 1) + 256);
  return meanings_[node];
}

void Phrases::load_states(const yaml::Node& list, std::string_view file, Lexicon& lexicon,
                          std::vector<LoadError>& errors) {
  static constexpr std::array<std::string_view, 6> keys{"is", "said", "not", "like", "named", "weighs-apart"};
  Fields fields{file, errors};
  for (const auto& node : fields.items(list)) {
    if (!fields.known_keys(node, keys)) continue;
    const auto name = fields.text(node, "is");
    if (name.empty()) continue;
    if (find_state(name) != no_state) {
      fields.error(node.at, "the state '" + std::string(name) + "' is given twice");
      continue;
    }
    const auto id = static_cast<StateId>(states_.size());
    states_.push_back({std::string(name), fields.flag(node, "named"), no_state, no_state,
                       fields.flag(node, "weighs-apart")});
    for (const bool denial : {true, false})
      if (const auto* other = node.find(denial ? "not" : "like"))
        pending_.push_back({id, denial, std::string(other->text), std::string(file), other->at});
    for (const auto& said : fields.list(node, "said")) {
      auto& meaning = at_phrase(said.text, lexicon);
      if (meaning.state != no_state)
        fields.error(said.at, "'" + std::string(said.text) + "' already tells the state '" +
                                  states_[meaning.state].name + "'");
      meaning.roles |= role_state;
      meaning.state = id;
    }
  }
}

void Phrases::load_words(const yaml::Node& map, std::string_view file, Lexicon& lexicon,
                         std::vector<LoadError>& errors) {
  Fields fields{file, errors};
  std::vector<std::string_view> keys{"says", "strangers"};
  for (const auto& section : sections) keys.push_back(section.key);
  if (!fields.known_keys(map, keys)) return;
  for (const auto& section : sections)
    for (const auto& said : fields.list(map, section.key)) {
      at_phrase(said.text, lexicon).roles |= section.role;
      if (section.with_plurals && said.text.find(' ') == std::string_view::npos)
        for (const auto& many : plurals(said.text)) at_phrase(many, lexicon).roles |= section.role;
    }
  for (const auto& word : fields.list(map, "strangers"))  // known, so that no slip is looked for
    each_word(word.text, [&](std::string_view folded) { lexicon.intern(folded); });
  const auto* says = map.find("says");
  if (says == nullptr) return;
  std::vector<std::string_view> headings;
  headings.reserve(remarks.size());
  for (const auto& remark : remarks) headings.push_back(remark.key);
  if (!fields.known_keys(*says, headings)) return;
  for (const auto& remark : remarks)
    for (const auto& said : fields.list(*says, remark.key)) {
      auto& meaning = at_phrase(said.text, lexicon);
      meaning.says |= remark.says;
      if (remark.ends) meaning.roles |= role_ends;
    }
}

void Phrases::finish(std::size_t words, std::vector<LoadError>& errors) {
  first_.resize(words);
  for (WordId word = 0; word < words; ++word) first_[word] = trie_.child(Trie::root, word);
  for (const auto& pending : pending_) {
    const StateId other = find_state(pending.name);
    if (other == no_state) {
      Fields fields{pending.file, errors};
      fields.error(pending.at, "no state is called '" + pending.name + "'");
      continue;
    }
    (pending.denial ? states_[pending.state].denied : states_[pending.state].like) = other;
  }
  pending_.clear();
}

StateId Phrases::find_state(std::string_view name) const {
  const auto found =
      std::find_if(states_.begin(), states_.end(), [&](const State& state) { return state.name == name; });
  return found == states_.end() ? no_state : static_cast<StateId>(found - states_.begin());
}

}  // namespace sealworthy::foods
