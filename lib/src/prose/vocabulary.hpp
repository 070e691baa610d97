#pragma once

/// The words by which directions are understood (rules/directions.yaml), and the trade words of methods.

#include <array>
#include <cstdint>
#include <deque>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "foods/catalogue.hpp"
#include "phrases/lexicon.hpp"
#include "reading/methods.hpp"
#include "text/byte_scan.hpp"

namespace sealworthy::prose {

/// What a word or a few words may mean in directions; the keys of rules/directions.yaml in their order.
enum class Sense : std::uint8_t {
  process,
  other_work,
  heat_jars,
  after,
  increase,
  fill,
  liquid,
  raw,
  hot,
  raw_pack,
  hot_pack,
  headspace,
  leave,
  top,
  jar,
  each,
  put_in,
  empty_jars,
  lids_alone,
  closed,
  gauge_dial,
  gauge_weighted,
  pressure,
  above,
  below,
  and_up,
  higher,
  at_home,
  filled_jars,
  mixture,
  in_water,
  altitude,
  canning,
  heading_ingredients,
  heading_directions,
  heading_notes,
  heading_other,
  yield,
  taken_back,
  aside,
  shorten,
  if_liked,
  seal,
  glasses,
  stored,
  oven_work,
  heat_food,
  goes_on_hot,
};
constexpr std::size_t senses = 48;

/// The senses of the words that begin at a place, each with how many words it takes up.
struct Senses {
  std::array<std::uint8_t, senses> length{};  ///< 0: not this sense
  [[nodiscard]] std::size_t words(Sense sense) const { return length[static_cast<std::size_t>(sense)]; }
  [[nodiscard]] bool has(Sense sense) const { return words(sense) != 0; }
};

/// A method named in a sentence.
struct MethodAt {
  const reading::MethodWord* method = nullptr;
  std::size_t words = 0;  ///< so many words of the sentence
  /// The words can mean nothing but canning ("water bath canner"); "oven" and "boiling water" may be any
  /// work.
  bool sure = false;
};

class Vocabulary {
 public:
  void load(std::string_view file, const yaml::Document& document, std::vector<foods::LoadError>& errors);
  /// To be called last. `methods` must outlive the vocabulary.
  void finish(const reading::Methods& methods);

  /// Cost: one look-up.
  [[nodiscard]] Senses at(std::span<const phrases::Token> tokens, std::size_t place) const;
  /// The longest name of a method that begins at a place; words == 0: none.
  [[nodiscard]] MethodAt method_at(std::span<const phrases::Token> tokens, std::size_t place) const;
  /// What boiling closed jars in any pot comes to.
  [[nodiscard]] const reading::MethodWord* boiling_water() const { return boiling_water_; }
  /// Figures beyond these are no pressure and no time of a process.
  [[nodiscard]] double largest_psi() const { return largest_psi_; }
  [[nodiscard]] double longest_minutes() const { return longest_minutes_; }
  /// For reading sentences with the words that deny.
  [[nodiscard]] const phrases::Lexicon& lexicon() const { return lexicon_; }
  /// True if the whole text is a phrase of this sense (a heading).
  [[nodiscard]] bool is(std::string_view text, Sense sense) const;
  /// Whether bytes of any kind (a page with its markup, JSON) hold a word of canning, `page-words`. Cost: a
  /// scan of the bytes.
  [[nodiscard]] bool may_speak_of_canning(std::string_view bytes) const { return canning_.finds(bytes); }
  /// True if the first word of a text has this sense.
  [[nodiscard]] bool begins_with(std::string_view text, Sense sense) const;

 private:
  struct Phrase {
    std::vector<std::string> words;
    Sense sense = Sense::process;
  };
  struct Name {
    std::vector<std::string> words;
    const reading::MethodWord* method = nullptr;
    bool sure = false;
  };
  void add(std::string_view text, Sense sense);

  std::unordered_map<std::string, std::vector<Phrase>> phrases_;  ///< by first word
  std::unordered_map<std::string, std::vector<Name>> names_;      ///< by first word
  phrases::Lexicon lexicon_;
  text::ByteScan canning_;
  const reading::MethodWord* boiling_water_ = nullptr;
  double largest_psi_ = 0;
  double longest_minutes_ = 0;
};

}  // namespace sealworthy::prose
