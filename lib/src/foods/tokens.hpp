#pragma once

/// The words of one ingredient line, each with what the catalogue knows of it.

#include <boost/container/small_vector.hpp>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

#include "foods/index.hpp"
#include "text/words.hpp"

namespace sealworthy::foods {

struct Token {
  std::string_view text;    ///< folded
  std::uint32_t begin = 0;  ///< bytes of the line
  std::uint32_t end = 0;
  WordId word = no_word;
  WordId lemma = no_word;
  std::uint32_t roles = 0;   ///< of the word, or of the phrase that it stands in
  std::uint32_t says = 0;    ///< at the first word of a remark
  StateId state = no_state;  ///< at the first word that tells it
  std::uint8_t length = 1;   ///< words of the phrase that starts here
  std::uint8_t offset = 0;   ///< words since the phrase started
  char before = 0;           ///< strongest mark before the word, as in text::Word
  std::uint8_t depth = 0;    ///< parentheses around it, at most 255
  bool number = false;
  bool hyphened = false;
  bool spent = false;         ///< belongs to an amount
  bool amount_start = false;  ///< the first word of an amount
  bool food_word = false;     ///< occurs in some food's name
  bool known = false;         ///< of a food's name, or English that the rules know
  bool plural = false;
  bool slash = false;    ///< a slash joins it to the word before ("cilantro/parsley")
  bool slip = false;     ///< `lemma` is what an unknown word was taken for
  bool capital = false;  ///< written with a capital first letter

  [[nodiscard]] bool is(std::uint32_t any_role) const { return (roles & any_role) != 0; }
};

/// A food's name found in a line: the words from `first` to `last` name `food`.
struct NameMatch {
  std::uint32_t first = 0;
  std::uint32_t last = 0;
  std::uint16_t words = 0;    ///< that the name has
  std::uint16_t skipped = 0;  ///< words of no weight between them
  FoodId food = no_food;
  Trie::Node node = Trie::none;

  [[nodiscard]] bool found() const { return food != no_food; }
};

class Tokens {
 public:
  /// Both must outlive the tokens.
  Tokens(std::string_view line, const text::Words& words, const Index& index);

  [[nodiscard]] std::size_t size() const { return tokens_.size(); }
  [[nodiscard]] const Token& operator[](std::size_t i) const { return tokens_[i]; }
  [[nodiscard]] std::string_view line() const { return line_; }
  /// Marks the tokens that overlap bytes [begin, end) as part of an amount; `start`: it begins there.
  void spend(std::size_t begin, std::size_t end, bool start);
  /// Finds the names that start at each token. To be called when the amounts are spent.
  void match_names();
  [[nodiscard]] const NameMatch& match(std::size_t i) const { return matches_[i]; }
  /// True if the number at token i belongs to a food's name ("cure no. 1").
  [[nodiscard]] bool in_name(std::size_t i) const;
  /// The longest name along these tokens, each used once in the order given, words of no weight passed over.
  [[nodiscard]] NameMatch match_along(std::span<const std::uint32_t> order) const;

 private:
  void add(const text::Word& word);
  void add_unknown(Token token);
  void split(std::size_t i, std::uint32_t at);
  bool add_run_together(const Token& token);
  void mark_phrases();
  [[nodiscard]] NameMatch match_from(std::size_t start) const;
  [[nodiscard]] bool inside_remark(std::size_t i, std::size_t stepped) const;
  [[nodiscard]] bool names_food(const Token& token, Trie::Node node) const;

  std::string_view line_;
  const Index& index_;
  boost::container::small_vector<Token, 24> tokens_;
  boost::container::small_vector<NameMatch, 24> matches_;
};

/// Roles of words that may stand within a name without being part of it ("fresh *chopped* dill").
inline constexpr std::uint32_t light_roles =
    role_state | role_adverb | role_size | role_quality | role_filler;

}  // namespace sealworthy::foods
