#include "report/plan_words.hpp"

#include <fmt/format.h>

#include <cmath>

#include "quantity/figures.hpp"

namespace sealworthy::report {

std::string clock_words(double minutes) {
  const auto whole = static_cast<int>(std::lround(minutes));
  if (whole < 60) return fmt::format("{} min", whole);
  if (whole % 60 == 0) return fmt::format("{} h", whole / 60);
  return fmt::format("{} h {} min", whole / 60, whole % 60);
}

std::string span_words(double shortest, double longest) {
  if (shortest == longest) return clock_words(shortest);
  if (longest < 60) return fmt::format("{:.0f} to {}", shortest, clock_words(longest));
  return clock_words(shortest) + " to " + clock_words(longest);
}

std::string process_words(const PlannedCard& card) {
  std::string words = fmt::format("{} minutes", quantity::kitchen_number(card.minutes));
  if (card.psi) words += fmt::format(" at {} psi", quantity::kitchen_number(*card.psi));
  if (!card.gauge.empty()) words += ", " + card.gauge + " gauge";
  if (card.method == "boiling-water") words += " of boiling under water";
  if (card.method == "steam") words += " of full steam";
  return words;
}

std::string jars_words(const PlannedCard& card, int count) {
  return fmt::format("{} {}", count, count == 1 ? card.jar : card.jar_plural);
}

std::string load_words(const Plan& plan, const PlanLoad& load) {
  std::string words;
  for (const auto& jars : load.jars) {
    const auto& card = plan.cards[jars.card];
    words += fmt::format("{}{} of {}", words.empty() ? "" : ", ", jars_words(card, jars.count), card.title);
  }
  return words;
}

}  // namespace sealworthy::report
