#include "checks/side_by_side.hpp"

#include <cmath>

#include "tested/compare.hpp"
#include "tested/compare_amounts.hpp"

namespace sealworthy::checks {
namespace {

using Mark = ComparedLine::Mark;
using State = tested::LineComparison::State;

Mark mark_of(State state) {
  switch (state) {
    case State::held:
      return Mark::same;
    case State::free:
      return Mark::free;
    case State::allowed:
      return Mark::allowed;
    case State::more:
      return Mark::more;
    case State::less:
      return Mark::less;
    case State::missing:
      return Mark::missing;
    case State::unknown:
      break;
  }
  return Mark::unknown;
}

std::string card_words(const reading::Reading& reading, const std::vector<std::size_t>& ingredients) {
  std::string out;
  for (const auto i : ingredients) {
    const auto* line = reading.ingredients[i].line;
    if (line == nullptr) continue;
    if (!out.empty()) out += " + ";
    out += line->text;
  }
  return out;
}

std::string published_words(const tested::FormulaLine& line, double factor) {
  if (line.amounts.empty()) return line.what;
  return tested::words_of(line.amounts.front(), line.per_jar ? 1 : factor) + " " + line.what;
}

std::string note_of(const tested::LineComparison& line) {
  const auto percent = std::to_string(std::lround(line.percent)) + " % ";
  switch (line.state) {
    case State::more:
      return percent + "more";
    case State::less:
      return percent + "less";
    case State::missing:
      return line.replaced_by == tested::LineComparison::none ? "not on the card" : "replaced";
    case State::allowed:
      return "allowed";
    case State::unknown:
      return line.reason;
    default:
      return {};
  }
}

std::optional<double> percent_of(const tested::LineComparison& line) {
  switch (line.state) {
    case State::held:
      return 100;
    case State::more:
      return 100 + line.percent;
    case State::less:
      return 100 - line.percent;
    case State::missing:
      return 0;
    default:
      return std::nullopt;
  }
}

}  // namespace

std::optional<Comparison> side_by_side(const reading::Reading& reading) {
  if (reading.compared == nullptr) return std::nullopt;
  const auto& compared = *reading.compared;
  Comparison out;
  out.id = reading.match.product->id;
  out.title = reading.match.product->title;
  out.factor = compared.factor;
  for (const auto& line : compared.lines)
    out.lines.push_back({mark_of(line.state), card_words(reading, line.ingredients),
                         published_words(*line.line, line.factor), note_of(line), percent_of(line), line.at});
  for (const auto& added : compared.added) {
    const bool allowed = added.change != nullptr, taste = added.dry_spice || added.salt;
    out.lines.push_back({allowed ? Mark::allowed
                         : taste ? Mark::free
                                 : Mark::added,
                         card_words(reading, {added.ingredient}),
                         {},
                         allowed                                          ? "allowed"
                         : taste                                          ? "to taste"
                         : added.replaces != tested::LineComparison::none ? "in its place"
                                                                          : "not in the formula",
                         std::nullopt,
                         added.at});
  }
  return out;
}

}  // namespace sealworthy::checks
