#pragma once

/// Words of a title and of steps that tell what a card is for (rules/card-words.yaml): kept in a refrigerator
/// or freezer, put on a shelf, meant for a baby.

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "reading/reading.hpp"

namespace sealworthy::reading {

class CardWords {
 public:
  void load(std::string_view file, const yaml::Document& document, std::vector<foods::LoadError>& errors);

  /// Fills Reading::keep, keep_at and infant from its title and steps. A card with a process is always for
  /// the shelf. Cost: one look at the phrases of a letter for each word.
  void read(Reading& reading) const;

 private:
  enum class Means { refrigerator, freezer, shelf, keeping, infant, spoils_sentence, spoils_clause, or_cold };
  struct Phrase {
    std::vector<std::string> words;
    Means means;
    bool alone = false;  ///< tells it without a word of keeping beside it: "refrigerate"
  };
  struct Seen {
    std::array<bool, 8> means{};
    bool alone = false;  ///< a phrase of refrigerator or freezer that needs no word of keeping
  };

  static Means key_means(std::string_view key);
  void add(std::string_view text, Means means, bool alone);
  void look(const text::Words& words, std::size_t first, std::size_t last, Seen& seen) const;
  void read_sentence(const text::Words& words, const Sentence& sentence, bool title, Position at,
                     Reading& reading) const;
  static void judge(const Seen& clause, bool title, Position at, Reading& reading);

  std::array<std::vector<Phrase>, 256> by_letter_;  ///< by the first byte of the first word
};

}  // namespace sealworthy::reading
