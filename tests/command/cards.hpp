#pragma once

/// Cards that the tests of the command change.

#include <doctest/doctest.h>

#include <string>

namespace sealworthy::test {

/// Snap beans as USDA's Complete Guide (2015), Guide 4, prints them: pints, dial gauge, 20 minutes at 11 psi
/// to 2,000 ft.
inline const std::string beans = R"(recipe: Hollow Farm beans
ingredients:
  - 9 lb green beans, trimmed, cut in 1-inch pieces
  - boiling water
pack: raw
jars: pint
headspace: 1 inch
process:
  method: pressure canner
  gauge: dial
  pressure: 11 psi
  time: 20 minutes
  altitude: 0-2,000 ft
)";

inline std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

/// The same card by boiling water, which no time makes right for low-acid food.
inline std::string wash_boiler() {
  auto card = replaced(beans, "pressure canner", "boiling water");
  card = replaced(card, "  gauge: dial\n", "");
  return replaced(card, "  pressure: 11 psi\n", "");
}

}  // namespace sealworthy::test
