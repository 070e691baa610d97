#include "checks/card_and_formula.hpp"

#include <algorithm>
#include <string>

#include "foods/catalogue.hpp"
#include "reading/ingredients.hpp"
#include "reading/jars.hpp"
#include "tested/compare.hpp"
#include "text/words.hpp"

namespace sealworthy::checks {
namespace {

using reading::Reading;
using tested::LineComparison;

/// True if the product has a process in the canner of each jar that tells one.
bool right_canner(const tested::Product& product, const Reading& reading) {
  return std::all_of(reading.jars.begin(), reading.jars.end(), [&](const reading::JarProcess& jar) {
    const auto methods = reading::table_methods(jar);
    return jar.process != nullptr && std::any_of(product.rows.begin(), product.rows.end(),
                                                 [&](const auto& row) { return methods.has(row.method); });
  });
}

bool differs(const LineComparison& line) {
  using State = LineComparison::State;
  return !line.dry_spice &&
         (line.state == State::more || line.state == State::less || line.state == State::missing);
}

bool names(const text::Words& sentence, const reading::Ingredient& ingredient) {
  return std::any_of(ingredient.read.foods.begin(), ingredient.read.foods.end(), [&](const auto& named) {
    const text::Words name(named.name);
    if (name.empty()) return false;
    const std::string last = text::singular(name[name.size() - 1].text);
    return std::any_of(sentence.begin(), sentence.end(),
                       [&](const auto& word) { return text::singular(word.text) == last; });
  });
}

}  // namespace

bool keeps_to_formula(const Reading& reading) {
  if (reading.compared == nullptr || reading.match.product == nullptr) return false;
  const auto& compared = *reading.compared;
  return right_canner(*reading.match.product, reading) &&
         std::none_of(compared.lines.begin(), compared.lines.end(), differs) &&
         std::none_of(compared.added.begin(), compared.added.end(), [](const auto& added) {
           return added.food != nullptr && !added.dry_spice && !added.salt && !added.water &&
                  added.change == nullptr;
         });
}

std::string_view told_in_steps(const Reading& reading, const reading::Ingredient& ingredient,
                               const Phrases& told, const Phrases& not_told) {
  if (told.empty()) return {};
  for (const auto& step : reading.steps)
    for (const auto& sentence : step.sentences.all) {
      const auto& all = step.sentences.words;
      if (sentence.question || sentence.first == sentence.last) continue;
      const auto begin = all[sentence.first].begin;
      const text::Words words(step.text.substr(begin, all[sentence.last - 1].end - begin));
      const auto phrase = told.in(words);
      if (phrase.empty() || !not_told.in(words).empty()) continue;
      const bool other = std::any_of(
          reading.ingredients.begin(), reading.ingredients.end(), [&](const reading::Ingredient& one) {
            return &one != &ingredient && reading::in_jar(one) && names(words, one);
          });
      if (!other || names(words, ingredient)) return phrase;
    }
  return {};
}

}  // namespace sealworthy::checks
