#include "plan/syrup.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "checks/phrases.hpp"
#include "quantity/figures.hpp"
#include "text/words.hpp"

namespace sealworthy::plan {
namespace {

/// The card's own words that may name the syrup: its lines and its steps.
bool card_tells(const reading::Reading& reading, std::string phrase) {
  const checks::Phrases sought({std::move(phrase)});
  const auto line = [&](const auto& one) {
    return one.line != nullptr && !sought.in(text::Words(one.line->text)).empty();
  };
  const auto step = [&](const auto& one) { return !sought.in(one.sentences.words).empty(); };
  return std::any_of(reading.ingredients.begin(), reading.ingredients.end(), line) ||
         std::any_of(reading.steps.begin(), reading.steps.end(), step);
}

/// Corn syrup in a jam is no covering.
bool covers(const tested::Product* product, const std::string& word) {
  return product != nullptr && !checks::Phrases({word}).in(text::Words(product->covering)).empty();
}

std::string cups(double published, int jars, int of_jars) {
  const double quarters = std::ceil(published * jars / of_jars * 4 - 0.01);
  const double value = quarters / 4;
  return quantity::kitchen_number(value) + (value > 1 ? " cups" : " cup");
}

}  // namespace

std::string syrup_note(const reading::Reading& reading, const reading::JarProcess& process, int jars,
                       const Planning& planning) {
  if (!process.size || planning.syrup_word.empty()) return {};
  if (!covers(reading.match.product, planning.syrup_word) || !card_tells(reading, planning.syrup_word))
    return {};
  const auto& size = reading.tables->jars()[static_cast<std::size_t>(*process.size)];
  std::vector<const Syrup*> kinds;
  const Syrup* said = nullptr;
  for (const auto& syrup : planning.syrups) {
    if (syrup.jar != size.id) continue;
    kinds.push_back(&syrup);
    if ((said == nullptr || syrup.name.size() > said->name.size()) &&
        card_tells(reading, syrup.name + " " + planning.syrup_word))
      said = &syrup;
  }
  if (said != nullptr) kinds = {said};
  std::string out;
  for (const auto* syrup : kinds) {
    if (!out.empty()) out += "; ";
    out += fmt::format("{} {} water and {} sugar", said != nullptr ? "about" : syrup->name + ": about",
                       cups(syrup->water, jars, syrup->jars), cups(syrup->sugar, jars, syrup->jars));
  }
  if (out.empty()) return {};
  std::string kind = (said != nullptr ? said->name + " " : std::string()) + planning.syrup_word;
  if (kind.front() >= 'a' && kind.front() <= 'z') kind.front() = static_cast<char>(kind.front() - 'a' + 'A');
  return fmt::format("{} for {} {}: {} ({}).", kind, jars, jars == 1 ? size.name : size.plural, out,
                     planning.syrup_source);
}

}  // namespace sealworthy::plan
