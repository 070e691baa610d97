#include "prose/steps_of_card.hpp"

#include <algorithm>
#include <string>

#include "prose/marks.hpp"
#include "prose/process.hpp"
#include "prose/process_words.hpp"
#include "prose/understand.hpp"

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

/// Of processes told for several jars those that the card fills; all where it fills none of them.
void keep_card_jars(const Recipe& card, std::vector<Process>& told) {
  const auto filled = [&](const auto& jar) { return share_a_size({jar}, card.jars); };
  const auto any = [&](const Process& process) {
    return process.jars.empty() || std::any_of(process.jars.begin(), process.jars.end(), filled);
  };
  if (card.jars.empty() || std::none_of(told.begin(), told.end(), any)) return;
  std::erase_if(told, [&](const Process& process) { return !any(process); });
  for (Process& process : told) std::erase_if(process.jars, [&](const auto& jar) { return !filled(jar); });
}

bool names_jars(const Recipe& recipe) {
  return !recipe.jars.empty() || std::any_of(recipe.processes.begin(), recipe.processes.end(),
                                             [](const Process& process) { return !process.jars.empty(); });
}

/// True where the steps may say what goes into each jar and no line of the ingredients does.
bool may_tell_per_jar(const Recipe& card) {
  const auto plain = [](const recipe::IngredientLine& line) { return !line.per_jar && line.food.empty(); };
  return std::all_of(card.ingredients.begin(), card.ingredients.end(), plain) &&
         std::any_of(card.steps.begin(), card.steps.end(), [](const auto& step) {
           return step.value.find("each ") != std::string_view::npos ||
                  step.value.find("every ") != std::string_view::npos ||
                  step.value.find("per ") != std::string_view::npos;
         });
}

recipe::Page page_of(const Recipe& card) {
  recipe::Page page;
  page.title = {card.title.value, card.title.at, false};
  for (const auto& line : card.ingredients) page.ingredients.push_back({line.text, line.at, false});
  for (const auto& step : card.steps) page.directions.push_back({step.value, step.at, false});
  page.arena = card.arena;
  page.units = card.units;
  return page;
}

}  // namespace

bool fill_from_steps(Recipe& card, const Vocabulary& vocabulary) {
  const bool no_process = card.processes.empty() && !card.process_at;
  const bool per_jar = may_tell_per_jar(card);
  const bool whole = !no_process && card.pack && card.headspace && names_jars(card);
  if (card.steps.empty() || (whole && !per_jar)) return false;
  auto read = understand(page_of(card), vocabulary);
  auto* understood = std::get_if<Understood>(&read);
  if (understood == nullptr) return false;
  Recipe& told = understood->recipe;
  if (!card.pack) card.pack = told.pack;
  if (!card.headspace) card.headspace = told.headspace;
  const bool taken = no_process && !told.processes.empty();
  if (taken) {
    keep_card_jars(card, told.processes);
    card.processes = std::move(told.processes);
    card.process_at = card.processes.front().at;
    card.doubts = std::move(told.doubts);
  }
  if (!names_jars(card)) card.jars = std::move(told.jars);
  if (per_jar) card.ingredients = std::move(told.ingredients);
  card.arena = told.arena;  // which keeps the card's own
  return taken;
}

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
