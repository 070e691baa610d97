#include "reading/card_words.hpp"

#include <optional>

#include "checks/fields.hpp"
#include "text/words.hpp"

namespace sealworthy::reading {
namespace {

std::size_t letter(std::string_view word) {
  return word.empty() ? 0 : static_cast<unsigned char>(word.front());
}

}  // namespace

void CardWords::add(std::string_view text, Means means, bool alone) {
  Phrase phrase{{}, means, alone};
  const text::Words words(text);
  for (const text::Word& word : words) phrase.words.emplace_back(word.text);
  if (phrase.words.empty()) return;
  by_letter_[letter(phrase.words.front())].push_back(std::move(phrase));
}

void CardWords::load(std::string_view file, const yaml::Document& document,
                     std::vector<foods::LoadError>& errors) {
  const checks::ErrorSink sink{file, errors};
  checks::Fields top(document.root(), "card words file", sink);
  const yaml::Node* words = top.find("card-words");
  top.done();
  if (words == nullptr) return;
  struct Key {
    std::string_view key;
    Means means;
    bool alone;
  };
  static constexpr std::array keys{
      Key{"refrigerator", Means::refrigerator, false},
      Key{"freezer", Means::freezer, false},
      Key{"refrigerate", Means::refrigerator, true},
      Key{"freeze", Means::freezer, true},
      Key{"shelf", Means::shelf, false},
      Key{"keeping", Means::keeping, false},
      Key{"infant", Means::infant, false},
      Key{"spoils-sentence", Means::spoils_sentence, false},
      Key{"spoils-clause", Means::spoils_clause, false},
      Key{"or-cold", Means::or_cold, false},
  };
  checks::Fields fields(*words, "card-words", sink);
  for (const Key& key : keys) {
    for (const std::string& text : fields.list(key.key)) add(text, key.means, key.alone);
  }
  fields.done();
}

void CardWords::look(const text::Words& words, std::size_t first, std::size_t last, Seen& seen) const {
  for (std::size_t i = first; i < last; ++i) {
    for (const Phrase& phrase : by_letter_[letter(words[i].text)]) {
      const std::size_t size = phrase.words.size();
      if (size > last - i) continue;
      bool all = true;
      for (std::size_t k = 0; k < size && all; ++k) all = words[i + k].text == phrase.words[k];
      if (!all) continue;
      seen.means[static_cast<std::size_t>(phrase.means)] = true;
      if (phrase.alone) seen.alone = true;
    }
  }
}

void CardWords::judge(const Seen& clause, bool title, Position at, Reading& reading) {
  const auto has = [&](Means means) { return clause.means[static_cast<std::size_t>(means)]; };
  if (has(Means::spoils_clause)) return;
  if (has(Means::infant)) reading.infant = true;
  if (!title && !clause.alone && !has(Means::keeping)) return;
  // The shelf wins: jars that are told to stand there need their process.
  if (!title && has(Means::shelf)) {
    reading.keep = Keep::shelf;
    reading.keep_at = at;
    return;
  }
  if (reading.keep_at.line != 0) return;
  if (has(Means::freezer) || has(Means::refrigerator)) {
    reading.keep = has(Means::freezer) ? Keep::freezer : Keep::refrigerator;
    reading.keep_at = title ? Position{} : at;
  }
}

void CardWords::read_sentence(const text::Words& words, const Sentence& sentence, bool title, Position at,
                              Reading& reading) const {
  Seen whole;
  look(words, sentence.first, sentence.last, whole);
  bool any = false;
  for (const bool means : whole.means) any = any || means;
  const auto has = [&](Means means) { return whole.means[static_cast<std::size_t>(means)]; };
  if (!any || has(Means::spoils_sentence) || (has(Means::or_cold) && !has(Means::refrigerator))) return;
  for (std::size_t first = sentence.first; first < sentence.last;) {
    std::size_t last = first + 1;
    while (last < sentence.last && words[last].before != ',' && words[last].before != ';') ++last;
    Seen clause;
    look(words, first, last, clause);
    judge(clause, title, at, reading);
    first = last;
  }
}

void CardWords::read(Reading& reading) const {
  const Position title_at = reading.recipe->title.at;
  for (const Sentence& sentence : reading.title.all)
    read_sentence(reading.title.words, sentence, true, title_at, reading);
  for (const StepText& step : reading.steps) {
    for (const Sentence& sentence : step.sentences.all)
      read_sentence(step.sentences.words, sentence, false, step.at, reading);
  }
  if (reading.processed()) reading.keep = Keep::shelf;
  if (reading.keep_at.line == 0) reading.keep_at = title_at;
}

}  // namespace sealworthy::reading
