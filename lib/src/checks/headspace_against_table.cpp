#include "checks/headspace_against_table.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "checks/against_table.hpp"
#include "checks/cases.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using reading::Reading;
using tested::HeadspaceRule;
using State = Point::State;

/// The product's figures that may be meant: rarely more than two.
using Figured = std::vector<const HeadspaceRule*>;

enum class Case { too_little, far_too_little, too_much, unsaid };
const std::vector<std::string_view> case_names{"too-little", "far-too-little", "too-much", "unsaid"};

/// One eighth inch or a quarter of the figure, whichever is less; and a hair, for figures in millimetres.
Headspace tolerance(Headspace figure) {
  static constexpr Headspace eighth = headspace_inches(0.125);
  static constexpr Headspace hair = headspace_inches(0.02);
  return std::min(eighth, figure * 0.25) + std::min(hair, figure * 0.02);
}

enum class Beside { less_than_half, less, held, more };

Beside compare(const Interval<Headspace>& said, const Interval<Headspace>& asked) {
  if (said.low < asked.low * 0.5) return Beside::less_than_half;
  if (said.low < asked.low - tolerance(asked.low)) return Beside::less;
  if (said.high > asked.high + tolerance(asked.high)) return Beside::more;
  return Beside::held;
}

/// True if the title, an ingredient or a step has the first word of the part: "small" of "small beans".
bool names_part(const Reading& reading, std::string_view part) {
  const std::string_view word = part.substr(0, part.find(' '));
  const auto in = [&](const text::Words& words) {
    return std::any_of(words.begin(), words.end(), [&](const text::Word& w) { return w.text == word; });
  };
  if (in(reading.title.words)) return true;
  return std::any_of(reading.ingredients.begin(), reading.ingredients.end(), [&](const auto& ingredient) {
    const auto& states = ingredient.read.states;
    return std::find(states.begin(), states.end(), word) != states.end() ||
           in(text::Words(ingredient.line->text));
  });
}

/// The figures that may be meant for a jar: of its pack and size; of those for parts, the part that is named,
/// else those for no part.
Figured figures_for(const Reading& reading, const JarProcess& jar) {
  Figured fit;
  bool parts = false;
  for (const HeadspaceRule& rule : reading.match.product->headspace) {
    const auto& pack = reading.recipe->pack;
    if (rule.pack && pack && *rule.pack != pack->value) continue;
    if (rule.jar && jar.size && *rule.jar != *jar.size) continue;
    parts = parts || !rule.part.empty();
    fit.push_back(&rule);
  }
  if (!parts) return fit;
  Figured named;
  for (const HeadspaceRule* rule : fit) {
    if (!rule->part.empty() && names_part(reading, rule->part)) named.push_back(rule);
  }
  if (!named.empty()) return named;
  Figured whole;
  for (const HeadspaceRule* rule : fit)
    if (rule->part.empty()) whole.push_back(rule);
  return whole.empty() ? fit : whole;
}

class HeadspaceAgainstTable final : public Check {
 public:
  HeadspaceAgainstTable(std::span<const Rule* const> rules, Maker& maker)
      : cases_(rules, maker, case_names) {}

  void run(const Reading& reading, Results& results) const override {
    if (reading.match.product == nullptr) {
      results.point(PointKind::headspace, State::unknown);
      return;
    }
    bool told = false;
    for (const JarProcess& jar : reading.jars) told = check(reading, jar, told, results);
  }

 private:
  /// True if a finding was given: one for all jars is enough where they share the card's headspace.
  bool check(const Reading& reading, const JarProcess& jar, bool told, Results& results) const {
    const auto figures = figures_for(reading, jar);
    if (figures.empty()) {
      results.point(PointKind::headspace, State::unknown);
      return told;
    }
    if (!jar.headspace) {
      results.point(PointKind::headspace, State::unknown, {}, words(figures));
      if (!told) tell(Case::unsaid, reading, jar, figures, results);
      return true;
    }
    Beside nearest = Beside::less_than_half;
    const HeadspaceRule* met = nullptr;
    for (const HeadspaceRule* rule : figures) {
      const Beside beside = compare(jar.headspace->value, rule->inches);
      if (beside == Beside::held && met == nullptr) met = rule;
      if (met == nullptr && beside > nearest) nearest = beside;
    }
    if (met != nullptr) {
      results.point(PointKind::headspace, State::held, quantity::words_of(jar.headspace->value),
                    quantity::words_of(met->inches));
      return told;
    }
    results.point(PointKind::headspace, State::differs, quantity::words_of(jar.headspace->value),
                  words(figures));
    const Case which = nearest == Beside::more             ? Case::too_much
                       : nearest == Beside::less_than_half ? Case::far_too_little
                                                           : Case::too_little;
    const bool own = jar.process != nullptr && jar.process->headspace;
    if (!told || own) tell(which, reading, jar, figures, results);
    return true;
  }

  static std::string words(const Figured& figures) {
    std::vector<std::string> parts;
    for (const HeadspaceRule* rule : figures) {
      std::string part = quantity::words_of(rule->inches);
      if (!rule->part.empty()) part += " (" + rule->part + ")";
      if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
    }
    std::string all;
    for (const std::string& part : parts) all += (all.empty() ? "" : " or ") + part;
    return all;
  }

  void tell(Case which, const Reading& reading, const JarProcess& jar, const Figured& figures,
            Results& results) const {
    const Rule* rule = cases_.find(which, reading);
    if (rule == nullptr) return;
    const Position at = jar.headspace ? jar.headspace->at : reading.recipe->process_or_title();
    results.add(*rule, at,
                {{"found", jar.headspace ? quantity::words_of(jar.headspace->value) : std::string()},
                 {"needed", words(figures)},
                 {"jar", jar_words(jar)},
                 {"of", of_words(reading)},
                 {"product", reading.match.product->title}});
  }

  Cases cases_;
};

}  // namespace

std::unique_ptr<Check> make_headspace_against_table(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<HeadspaceAgainstTable>(rules, maker);
}

}  // namespace sealworthy::checks
