#include "prose/sentence.hpp"

#include <algorithm>

#include "prose/marks.hpp"
#include "text/locator.hpp"

namespace sealworthy::prose {

bool Sentence::has(Sense sense) const {
  return std::any_of(senses.begin(), senses.end(), [&](const Senses& s) { return s.has(sense); });
}

bool Sentence::has(Mark::Kind kind) const {
  return std::any_of(marks.begin(), marks.end(), [&](const Mark& mark) { return mark.kind == kind; });
}

std::string_view Sentence::words(std::size_t first, std::size_t last) const {
  if (first >= last || last > bytes.size()) return {};
  return text.substr(bytes[first].first, bytes[last - 1].second - bytes[first].first);
}

Position Sentence::at(std::size_t word) const {
  if (source == nullptr || !source->verbatim || word >= bytes.size())
    return source == nullptr ? Position{} : source->at;
  return text::Locator(source->text, source->at).at(bytes[word].first);
}

std::vector<Sentence> read_sentences(const recipe::PageText& step, const Vocabulary& vocabulary,
                                     quantity::Units units) {
  const auto shared = std::make_shared<const reading::Sentences>(step.text);
  const reading::Sentences& split = *shared;
  std::vector<Sentence> out;
  out.reserve(split.all.size());
  for (const reading::Sentence& run : split.all) {
    Sentence sentence;
    sentence.split = shared;
    sentence.source = &step;
    sentence.text = step.text;
    sentence.question = run.question;
    for (std::size_t i = run.first; i < run.last && sentence.tokens.size() < phrases::Line::longest; ++i) {
      const text::Word& word = split.words[i];
      sentence.tokens.push_back(vocabulary.lexicon().read(word));
      sentence.bytes.emplace_back(word.begin, word.end);
    }
    sentence.begin = sentence.bytes.front().first;
    sentence.end = sentence.bytes.back().second;
    for (std::size_t i = 0; i < sentence.tokens.size(); ++i)
      sentence.senses.push_back(vocabulary.at(sentence.tokens, i));
    phrases::analyse(sentence.tokens, sentence.polarity);
    find_marks(sentence, vocabulary, units);
    out.push_back(std::move(sentence));
  }
  return out;
}

}  // namespace sealworthy::prose
