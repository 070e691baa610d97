#pragma once

/// Words that the text and the page of a plan share.

#include <sealworthy/plan.hpp>
#include <string>

namespace sealworthy::report {

/// "5 h 40 min", "45 min"
std::string clock_words(double minutes);
/// "30 to 45 min", "10 min"
std::string span_words(double shortest, double longest);
/// "40 minutes in a boiling-water canner", "20 minutes at 12 psi, dial gauge"
std::string process_words(const PlannedCard& card);
/// "9 pints of Crushed tomatoes, 3 pints of Salsa"
std::string load_words(const Plan& plan, const PlanLoad& load);
/// "28 pints"
std::string jars_words(const PlannedCard& card, int count);

}  // namespace sealworthy::report
