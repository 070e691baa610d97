#pragma once

/// Words of the catalogue as numbers, so that a line is looked up once a word and compared as integers.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy::foods {

using WordId = std::uint32_t;
inline constexpr WordId no_word = 0xFFFFFFFF;

/// A table of folded words. A word met as a plural ("tomatoes") knows its singular, by which food names are
/// indexed. Cost of find: one hash and, nearly always, one comparison.
class Lexicon {
 public:
  struct Entry {
    std::string_view text;
    WordId lemma = no_word;   ///< the singular; the word itself if it is one
    bool of_food = false;     ///< part of some food's name
    bool whole_name = false;  ///< names a food by itself
    bool of_english = false;  ///< part of rules/foods/words.yaml or states.yaml
  };

  Lexicon();
  /// The id of a folded word; new words are taken over. Ids count up from 0.
  WordId intern(std::string_view word);
  /// The id of a folded word; no_word if it was never interned.
  [[nodiscard]] WordId find(std::string_view word) const;
  [[nodiscard]] const Entry& entry(WordId id) const { return entries_[id]; }
  Entry& entry(WordId id) { return entries_[id]; }
  [[nodiscard]] std::size_t size() const { return entries_.size(); }
  /// Interns the plurals of every word that is a singular and has none yet. "tomato" with "tomatoes" in some
  /// name gets no other plural, so that "tomatos" stays a slip.
  void add_plurals();

 private:
  void grow();
  [[nodiscard]] std::size_t slot_of(std::string_view word, std::uint32_t hash) const;
  std::string_view keep(std::string_view text);

  std::vector<Entry> entries_;
  struct Slot {
    std::uint32_t hash = 0;
    WordId word = no_word;
  };
  std::vector<Slot> slots_;  ///< open addressing; a power of two, at most half full
  std::vector<std::unique_ptr<char[]>> blocks_;
  std::size_t block_used_ = 0;
};

/// Spellings of the plural of an English noun that text::singular leads back to `word` ("berries"; "mangoes"
/// and "mangos").
std::vector<std::string> plurals(std::string_view word);

}  // namespace sealworthy::foods
