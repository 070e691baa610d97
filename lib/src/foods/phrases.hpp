#pragma once

/// The English of ingredient lines, from rules/foods/words.yaml and states.yaml: which words join, measure,
/// describe, end a name, and what states and remarks they tell.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "foods/lexicon.hpp"
#include "foods/trie.hpp"

namespace sealworthy::foods {

/// What a word does in a line; a word may do several things.
enum Role : std::uint32_t {
  role_or = 1U << 0,
  role_and = 1U << 1,
  role_filler = 1U << 2,
  role_adverb = 1U << 3,
  role_size = 1U << 4,
  role_quality = 1U << 5,
  role_counter = 1U << 6,
  role_ends = 1U << 7,
  role_plain = 1U << 8,
  role_of = 1U << 9,
  role_state = 1U << 10,
  role_number = 1U << 11,
};

/// What a remark says.
enum Says : std::uint32_t {
  says_optional = 1U << 0,
  says_to_taste = 1U << 1,
  says_not_eaten = 1U << 2,
  says_in_jar = 1U << 3,
  says_hedge = 1U << 4,
  says_denial = 1U << 5,
  says_such_as = 1U << 6,
  says_per_jar = 1U << 7,
  says_leave_on = 1U << 8,
  says_percent = 1U << 9,
  says_acidity = 1U << 10,
  says_length = 1U << 11,
};

using StateId = std::uint16_t;
inline constexpr StateId no_state = 0xFFFF;

struct State {
  std::string name;
  bool named = false;         ///< part of a name as cooks write it
  StateId denied = no_state;  ///< the state that stands when this one is denied
  StateId like = no_state;    ///< a cup of it weighs about as much as a cup of that
  bool weighs_apart =
      false;  ///< a cup of it weighs so differently that it stands only for lines that tell it
};

struct Meaning {
  std::uint32_t roles = 0;
  std::uint32_t says = 0;
  StateId state = no_state;

  [[nodiscard]] bool any() const { return roles != 0 || says != 0; }
};

class Phrases {
 public:
  void load_states(const yaml::Node& list, std::string_view file, Lexicon& lexicon,
                   std::vector<LoadError>& errors);
  void load_words(const yaml::Node& map, std::string_view file, Lexicon& lexicon,
                  std::vector<LoadError>& errors);
  /// After the last load: states that other states point to, and where each word leads to.
  void finish(std::size_t words, std::vector<LoadError>& errors);

  [[nodiscard]] Trie::Node child(Trie::Node node, WordId word) const { return trie_.child(node, word); }
  /// The child of the root.
  [[nodiscard]] Trie::Node first(WordId word) const {
    return word < first_.size() ? first_[word] : Trie::none;
  }
  [[nodiscard]] const Meaning& meaning(Trie::Node node) const {
    return node < meanings_.size() ? meanings_[node] : nothing_;
  }
  [[nodiscard]] const State& state(StateId id) const { return states_[id]; }
  [[nodiscard]] std::size_t states() const { return states_.size(); }
  /// The state of a canonical name, no_state if there is none.
  [[nodiscard]] StateId find_state(std::string_view name) const;

 private:
  struct Pending {
    StateId state;
    bool denial;  ///< else `like`
    std::string name;
    std::string file;
    Position at;
  };
  Meaning& at_phrase(std::string_view phrase, Lexicon& lexicon);

  Trie trie_;
  std::vector<Trie::Node> first_;  ///< by word
  std::vector<Meaning> meanings_;  ///< by node
  Meaning nothing_;
  std::vector<State> states_;
  std::vector<Pending> pending_;
};

}  // namespace sealworthy::foods
