#include "prose/steps_of_card.hpp"

#include <algorithm>
#include <string>

#include "prose/marks.hpp"
#include "prose/process.hpp"
#include "prose/process_words.hpp"

namespace sealworthy::prose {
namespace {

using recipe::Process;
using recipe::Recipe;
using Jars = std::vector<recipe::Placed<quantity::JarText>>;

bool tells_a_time(const Recipe& card) {
  return std::any_of(card.steps.begin(), card.steps.end(), [](const auto& step) {
    const std::string_view text = step.value;
    return text.find("min") != std::string_view::npos || text.find("hour") != std::string_view::npos ||
           text.find("hr") != std::string_view::npos;
  });
}

bool share_a_size(const Jars& a, const Jars& b) {
  return std::any_of(a.begin(), a.end(), [&](const auto& jar) {
    return std::any_of(b.begin(), b.end(), [&](const auto& j) { return j.value.volume == jar.value.volume; });
  });
}

/// Both tell it, and nothing of the one lies within the other.
template <class T>
bool apart(const std::optional<recipe::Placed<T>>& a, const std::optional<recipe::Placed<T>>& b) {
  return a && b && !a->value.overlaps(b->value);
}

/// Told for another jar, altitude or gauge than the card's own process.
bool for_another(const Draft& told, const Process& process, const Recipe& card) {
  const Jars& sizes = process.jars.empty() ? card.jars : process.jars;
  if (!told.jars.empty() && !sizes.empty() && !share_a_size(told.jars, sizes)) return true;
  return apart(told.altitude, process.altitude) || (told.altitude && !process.altitude) ||
         (told.gauge && process.gauge && told.gauge->value != process.gauge->value);
}

bool agrees(const Draft& told, const Process& process, const reading::Methods& methods) {
  if (apart(told.time, process.time) || apart(told.pressure, process.pressure)) return false;
  const auto* method = process.method ? methods.find(process.method->value) : nullptr;
  if (method == nullptr || !told.method) return true;
  return method->kind == told.kind || (water(method->kind) && water(told.kind));
}

}  // namespace

std::vector<recipe::Placed<Altitude>> homes_told(const Recipe& card, const Vocabulary& vocabulary) {
  std::vector<recipe::Placed<Altitude>> homes;
  for (const auto& step : card.steps) {
    const std::string_view text = step.value;
    const bool may = text.find("feet") != std::string_view::npos ||
                     text.find("ft") != std::string_view::npos ||
                     text.find("met") != std::string_view::npos || text.find(" m") != std::string_view::npos;
    if (!may) continue;
    const recipe::PageText page{step.value, step.at, false};
    for (const Sentence& sentence : read_sentences(page, vocabulary, card.units))
      if (const auto home = find_home(sentence)) homes.push_back(*home);
  }
  return homes;
}

std::vector<recipe::Doubt> other_processes(const Recipe& card, const Vocabulary& vocabulary,
                                           const reading::Methods& methods) {
  if (card.processes.empty() || !tells_a_time(card)) return {};
  std::vector<recipe::PageText> texts;
  texts.reserve(card.steps.size());
  for (const auto& step : card.steps) texts.push_back({step.value, step.at, false});
  std::vector<Sentence> sentences;
  for (const auto& text : texts)
    for (Sentence& sentence : read_sentences(text, vocabulary, card.units))
      sentences.push_back(std::move(sentence));
  ProcessReader reader(vocabulary);
  for (std::size_t i = 0; i < sentences.size(); ++i)
    reader.read(sentences[i], i + 1 < sentences.size() ? &sentences[i + 1] : nullptr);
  std::vector<recipe::Doubt> doubts;
  for (const Draft& told : reader.finish(nullptr)) {
    const auto is_for = [&](const Process& process) { return !for_another(told, process, card); };
    const auto fits = [&](const Process& process) {
      return is_for(process) && agrees(told, process, methods);
    };
    const auto& all = card.processes;
    if (std::any_of(all.begin(), all.end(), is_for) && std::none_of(all.begin(), all.end(), fits))
      doubts.push_back({told.at, told.words, "`process:` says otherwise"});
  }
  return doubts;
}

}  // namespace sealworthy::prose
