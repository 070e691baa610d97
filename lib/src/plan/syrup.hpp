#pragma once

/// Syrup that fruit is covered with, for so many jars, by the published table (rules/planning.yaml).

#include <string>

#include "plan/planning.hpp"
#include "reading/reading.hpp"

namespace sealworthy::plan {

/// "Light syrup for 18 pints: about 11 1/2 cups water and 3 cups sugar." Every kind of syrup where the card
/// does not say which. Empty where the tested process covers the food with none or the card names none, or
/// the table has no row for its jars.
std::string syrup_note(const reading::Reading& reading, const reading::JarProcess& process, int jars,
                       const Planning& planning);

}  // namespace sealworthy::plan
