#pragma once

/// Splitting a line of kitchen English into words, the same way for food names, units, states and steps.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy::text {

/// A word of a text: letters and digits, folded (ASCII lower case, accents dropped, ’ read as '). Hyphens
/// split: "black-eyed" is two words, the second with `hyphened` set. Numbers ("1", "1/2", "½", "1.5",
/// "5,280") are one word with `number` set and are not folded. "don't" is one word.
struct Word {
  std::string_view text;    ///< folded; lives in the Words that made it
  std::uint32_t begin = 0;  ///< byte offsets of the word as written
  std::uint32_t end = 0;
  bool number = false;
  bool hyphened = false;  ///< joined to the word before by a hyphen
  char before = 0;  ///< strongest mark between the word before and this: . ; : , ( ) or 0 (and '\n' as '.')
  int depth = 0;    ///< how many parentheses it stands in
};

/// The words of one text. Movable, not copyable: words view into it.
class Words {
 public:
  explicit Words(std::string_view text);
  Words(const Words&) = delete;
  Words& operator=(const Words&) = delete;
  Words(Words&&) noexcept = default;
  Words& operator=(Words&&) noexcept = default;

  [[nodiscard]] const std::vector<Word>& all() const { return words_; }
  [[nodiscard]] auto begin() const { return words_.begin(); }
  [[nodiscard]] auto end() const { return words_.end(); }
  [[nodiscard]] std::size_t size() const { return words_.size(); }
  [[nodiscard]] bool empty() const { return words_.empty(); }
  const Word& operator[](std::size_t i) const { return words_[i]; }

 private:
  std::vector<char> folded_;  // a vector keeps its address when moved; a short std::string would not
  std::vector<Word> words_;
};

/// Folds a text as Words does, keeping everything between words as single spaces.
std::string fold(std::string_view text);

/// The singular of an English kitchen noun ("tomatoes" -> "tomato", "leaves" -> "leaf", "radishes" ->
/// "radish"); a word that has none comes back as it is ("asparagus", "molasses"). Works on folded words.
std::string singular(std::string_view word);

}  // namespace sealworthy::text
