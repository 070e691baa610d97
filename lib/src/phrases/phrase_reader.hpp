#pragma once

/// Reads the phrase language (phrases/phrases.hpp) from rules files. Mistakes are told with file and place,
/// and what is right is kept.

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "foods/catalogue.hpp"
#include "phrases/phrases.hpp"
#include "yaml/document.hpp"

namespace sealworthy::phrases {

/// Fills a Phrases. The nodes read must live until the reader is gone.
/// Cost: one pass over the texts, a look-up a word, and about eight forms for each word that is new.
class PhraseReader {
 public:
  PhraseReader(Phrases& into, std::vector<foods::LoadError>& errors) : into_(into), errors_(errors) {}

  /// Reads the lists of a `vocabulary:` map. A list may use the others of its map and those read before.
  void define(std::string_view file, const yaml::Node& vocabulary);
  /// Appends the patterns of a `told:` list.
  void read_patterns(std::string_view file, const yaml::Node& told, std::vector<Pattern>& out);
  /// The entries of an `unless:` list.
  std::vector<Items> read_unless(std::string_view file, const yaml::Node& unless);
  /// To be called last: makes the Phrases ready for matching.
  void finish();

 private:
  /// The words of one way of saying a thing.
  struct Words {
    static constexpr std::size_t most = 24;
    std::array<std::string_view, most> all;
    std::size_t count = 0, at = 0;
    [[nodiscard]] bool empty() const { return at == count; }
    [[nodiscard]] std::string_view peek(std::size_t ahead = 0) const {
      return at + ahead < count ? all[at + ahead] : std::string_view();
    }
  };

  void wrong(Position at, std::string message, std::string suggestion = {});
  bool words_of(std::string_view text, Words& out);
  /// `seldom` items are not looked for among those read before.
  bool read_item(const yaml::Node& item, ListIndex& out, bool seldom = false);
  bool read_items(const yaml::Node& node, Items& out);
  bool read_pattern(const yaml::Node& node, Pattern& out);
  /// Appends the alternative and its elements, or nothing.
  bool read_alternative(std::string_view text, Position at, bool may_deny);
  bool read_element(Words& words, Position at, Element& out);
  bool read_figure(Words& words, Position at, Element& out);
  bool read_name(std::string_view word, Position at, Element& out);
  void fill_list(const yaml::Entry& entry, ListIndex list);
  Term term(std::string_view word);
  ListIndex declare(std::string_view name);
  [[nodiscard]] bool mentions(ListIndex list, Term term) const;
  /// True if a list comes to use itself; `path` holds the lists on the way.
  [[nodiscard]] bool circular(ListIndex list, std::vector<ListIndex>& path) const;

  Phrases& into_;
  std::vector<foods::LoadError>& errors_;
  std::string_view file_;
  /// For single words: a quick hash will do.
  struct Hash {
    std::size_t operator()(std::string_view text) const { return Lexicon::Key(text).hash(); }
  };
  template <class T>
  using Map = std::unordered_map<std::string_view, T, Hash>;
  Map<ListIndex> names_;                                   ///< named lists
  std::unordered_map<std::string_view, ListIndex> items_;  ///< lists of item texts
  Map<Term> terms_;
};

}  // namespace sealworthy::phrases
