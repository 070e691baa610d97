/// Acid in each jar: figures of the USDA Complete Guide (2015), Guide 3, Acidification (page 3-5).
#include <doctest/doctest.h>

#include "whole.hpp"

namespace sealworthy::checks {
namespace {

using State = Point::State;

/// Crushed tomatoes with these further lines of ingredients.
RecipeReport tomatoes(const std::string& lines, const std::string& jars = "quart",
                      const std::string& more = "") {
  return check_card("recipe: Crushed tomatoes\nfollows: tomatoes-crushed\n" + more +
                    "ingredients:\n  - 22 lb tomatoes, peeled, cored, crushed\n" + lines +
                    "pack: hot\njars: " + jars +
                    "\nheadspace: 1/2 inch\n"
                    "process: {method: boiling water, time: 45 minutes, altitude: 0-1000 ft}\n");
}

std::string acid_rules(const RecipeReport& report) {
  std::string rules;
  for (const auto& finding : report.findings) {
    if (finding.topic == Topic::acid) rules += (rules.empty() ? "" : " ") + finding.rule;
  }
  return rules;
}

TEST_CASE("each of the three acids in full is enough") {
  for (const char* line :
       {"  - each jar: 2 tablespoons bottled lemon juice\n", "  - each jar: 1/2 tsp citric acid\n",
        "  - each jar: 4 tbsp vinegar (5%)\n", "  - each quart: 2 tbsp bottled lemon juice\n"}) {
    const auto report = tomatoes(line);
    CHECK_MESSAGE(acid_rules(report).empty(), line);
    CHECK_MESSAGE(point_of(report, PointKind::acid) == State::held, line);
    CHECK_MESSAGE(report.verdict == Verdict::tested, line);
  }
}

TEST_CASE("none, or too little, is a danger at its place") {
  const auto none = tomatoes("");
  CHECK(acid_rules(none) == "tomato-acidify-quart-pint");
  CHECK(none.findings.front().severity == Severity::danger);
  CHECK(none.findings.front().message.find("2 tablespoons of bottled lemon juice") != std::string::npos);
  CHECK(none.verdict == Verdict::hazard);
  const auto half = tomatoes("  - each jar: 1 tbsp bottled lemon juice\n");
  CHECK(acid_rules(half) == "tomato-acidify-quart-pint");
  CHECK(half.findings.front().at.line == 5);
  CHECK(acid_rules(tomatoes("  - each jar: 2 tbsp vinegar (5%)\n")) == "tomato-acidify-vinegar");
}

TEST_CASE("a range counts with its low end, and what is optional not at all") {
  CHECK(acid_rules(tomatoes("  - each jar: 1-2 tbsp bottled lemon juice\n")) == "tomato-acidify-quart-pint");
  CHECK(acid_rules(tomatoes("  - each jar: 2 tbsp bottled lemon juice, optional\n")) ==
        "tomato-acidify-quart-pint");
}

TEST_CASE("several sizes: the largest must have enough; a list may give each its own") {
  CHECK(acid_rules(tomatoes("  - each jar: 1 tbsp bottled lemon juice\n", "[pint, quart]")) ==
        "tomato-acidify-quart-pint");
  CHECK(acid_rules(tomatoes("  - each jar: 2 tbsp bottled lemon juice\n", "[pint, quart]")).empty());
  CHECK(
      acid_rules(
          tomatoes("  - each pint: 1 tbsp bottled lemon juice\n  - each quart: 2 tbsp bottled lemon juice\n",
                   "[pint, quart]"))
          .empty());
  // "Per quart" in pints is half of it; "per pint" does not say that a quart gets two.
  CHECK(acid_rules(tomatoes("  - each quart: 2 tbsp bottled lemon juice\n", "pint")).empty());
  CHECK(acid_rules(tomatoes("  - each pint: 1 tbsp bottled lemon juice\n", "quart")) ==
        "tomato-acidify-quart-pint");
}

TEST_CASE("acid for the batch is divided by the jars it makes") {
  const auto enough = tomatoes("  - 1 cup bottled lemon juice\n", "quart", "makes: 7 quart jars\n");
  CHECK(acid_rules(enough) == "acid-per-jar-not-per-batch");
  CHECK(point_of(enough, PointKind::acid) == State::held);
  CHECK(acid_rules(tomatoes("  - 1/2 cup bottled lemon juice\n", "quart", "makes: 7 quart jars\n")) ==
        "tomato-acidify-quart-pint");
  const auto unknown = tomatoes("  - 1/2 cup bottled lemon juice\n");
  CHECK(acid_rules(unknown) == "acid-batch-unknown-jars");
  CHECK(unknown.verdict == Verdict::unproven);
}

TEST_CASE("half a dose of two acids was not tested") {
  const auto report =
      tomatoes("  - each jar: 1 tbsp bottled lemon juice\n  - each jar: 1/4 tsp citric acid\n");
  CHECK(acid_rules(report) == "acid-several-kinds");
  CHECK(report.verdict == Verdict::unproven);
}

TEST_CASE("a jar smaller than the printed doses") {
  CHECK(acid_rules(tomatoes("  - each jar: 1 tbsp bottled lemon juice\n", "half-pint")).empty());
  const auto scaled = tomatoes("  - each jar: 1/2 tbsp bottled lemon juice\n", "half-pint");
  CHECK(acid_rules(scaled) == "acid-smaller-jar");
  CHECK(scaled.verdict == Verdict::unproven);
  CHECK(acid_rules(tomatoes("  - each jar: 1/4 tbsp bottled lemon juice\n", "half-pint")) ==
        "tomato-acidify-quart-pint");
}

TEST_CASE("of alternatives each must be enough") {
  const auto report = tomatoes("  - each jar: 2 tbsp bottled lemon juice or vinegar (5%)\n");
  CHECK(report.verdict == Verdict::hazard);
}

TEST_CASE("metric doses") {
  CHECK(acid_rules(tomatoes("  - each jar: 30 ml bottled lemon juice\n")).empty());
  CHECK(acid_rules(tomatoes("  - each jar: 15 ml bottled lemon juice\n")) == "tomato-acidify-quart-pint");
}

}  // namespace
}  // namespace sealworthy::checks
