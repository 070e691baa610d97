#pragma once

/// The words that patterns know, found with one look-up a word whatever form it stands in.

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "reading/sentences.hpp"

namespace sealworthy::phrases {

/// What a word does in a sentence, as far as negation asks (phrases/negation.cpp has the words).
enum Grammar : std::uint32_t {
  determiner = 1U << 0U,    ///< the, your, each: patterns read over it
  denier = 1U << 1U,        ///< not, never, don't
  noun_denier = 1U << 2U,   ///< no, without
  denying_verb = 1U << 3U,  ///< skip, avoid, forget
  denying_word = 1U << 4U,  ///< unnecessary, pointless: denies its whole clause
  instead_of = 1U << 5U,    ///< instead, rather: with "of", "than"
  turn = 1U << 6U,          ///< but, then, until: begins another clause
  joiner_and = 1U << 7U,    ///< and
  joiner_or = 1U << 8U,     ///< or
  be_form = 1U << 9U,       ///< is, are, be
  finite = 1U << 10U,       ///< you, it, will, can: a noun phrase ends before it
  condition = 1U << 11U,    ///< if, whether
  relative = 1U << 12U,     ///< that, which, who
  direction = 1U << 13U,    ///< put, fill, turn: verbs that begin a direction
  softener = 1U << 14U,     ///< just, simply, only
  contrast = 1U << 15U,     ///< but, yet, although
  points_back = 1U << 16U,  ///< this, that, it: speaks of the sentence before
  number_word = 1U << 17U,  ///< two, half, few
};

/// A word (or one exact form) that some pattern asks for.
using Term = std::uint16_t;

/// One word of a sentence with what the lexicon knows of it.
struct Token {
  std::string_view text;
  std::uint32_t grammar = 0;
  std::uint64_t term_bits = 0;  ///< the terms' numbers modulo 64, to rule out most at once
  std::uint32_t first_term = 0;
  std::uint16_t term_count = 0;
  std::int16_t place = 0;  ///< position, with a mark or a turn counted as two words more
  char before = 0;         ///< the mark before it, as text::Word has it
  bool number = false;
  bool hyphened = false;
};

class Lexicon {
 public:
  /// Length and letters of a word in three numbers, the same for two words only if they are the same up to
  /// 16 letters long.
  struct Key {
    std::uint64_t head = 0, tail = 0;
    std::uint32_t size = 0;
    friend bool operator==(const Key&, const Key&) = default;
    explicit Key(std::string_view word = {});
    [[nodiscard]] std::uint32_t hash() const;
  };

  Lexicon();
  /// The term of a base word in any of its forms, or of one form exactly.
  Term any_form(std::string_view word);
  Term exactly(std::string_view form);
  /// To be called after the last term: lays the terms of each form side by side.
  void finish();

  /// How many terms there are.
  [[nodiscard]] std::size_t size() const { return terms_; }
  [[nodiscard]] std::span<const Term> terms(const Token& token) const {
    return std::span(flat_).subspan(token.first_term, token.term_count);
  }
  /// Reads a word; unknown words come back without grammar and terms.
  [[nodiscard]] Token read(const text::Word& word) const;

 private:
  struct Slot {
    std::uint32_t hash = 0;
    std::uint32_t entry = 0;  ///< into entries_, plus one; 0: free
  };
  struct Entry {
    Key key;
    std::uint32_t text = 0;  ///< offset into texts_, of words longer than a key tells
    std::uint32_t grammar = 0;
    std::uint32_t first = 0;  ///< before finish(): head of a chain in nodes_, plus one
    std::uint16_t count = 0;
    std::uint64_t term_bits = 0;  ///< as in Token
  };
  struct Node {
    Term term = 0;
    std::uint32_t next = 0;
  };
  Entry& entry(std::string_view form);
  [[nodiscard]] const Entry* find(std::string_view form) const;
  [[nodiscard]] bool is(const Entry& entry, const Key& key, std::string_view form) const;
  void grow();
  void add(std::string_view form, Term term);

  std::vector<Slot> slots_;
  std::vector<Entry> entries_;
  std::vector<char> texts_;
  std::vector<Node> nodes_;
  std::vector<Term> flat_;
  std::size_t terms_ = 0;
};

/// A sentence as patterns see it. Lives on the stack of one check run.
struct Line {
  static constexpr std::size_t longest = 96;
  std::array<Token, longest> tokens;
  std::size_t size = 0;

  /// Reads the words of a sentence; those past the 96th are left out.
  void read(const Lexicon& lexicon, const text::Words& words, const reading::Sentence& sentence);
  [[nodiscard]] std::span<const Token> all() const { return {tokens.data(), size}; }
};

}  // namespace sealworthy::phrases
