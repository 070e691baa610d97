/// Whole cards: what several checks and the verdict make of them together.
#include <doctest/doctest.h>

#include "whole.hpp"

namespace sealworthy::checks {
namespace {

CheckOptions at(double low, double high) {
  CheckOptions options;
  options.altitude = Interval<Altitude>{feet(low), feet(high)};
  return options;
}

std::string beans(const std::string& process,
                  const std::string& rest = "pack: raw\njars: pint\nheadspace: 1 inch\n") {
  return "recipe: Bean jars\nfollows: beans-snap-and-italian-pieces\n"
         "ingredients:\n  - 9 lb green beans, trimmed, cut in 1-inch pieces\n  - water\n" +
         rest + "process: {" + process + "}\nsteps:\n  - Fill the jars and cover with boiling water.\n";
}

TEST_CASE("a card that follows its table line by line is tested") {
  const auto report = check_card(
      beans("method: pressure canner, gauge: dial, pressure: 11 psi, time: 20 minutes, altitude: 0-2000 ft"));
  CHECK(report.verdict == Verdict::tested);
  CHECK(report.matched.id == "beans-snap-and-italian-pieces");
  CHECK(report.matched.by == "follows");
  CHECK(report.matched.holds_for == "0 to 2,000 ft");
  CHECK(report.matched.source.find("Guide 4") != std::string::npos);
  CHECK(report.title == "Bean jars");
  CHECK(report.points.size() == 10);
}

TEST_CASE("one food in place of another is told once, as grave as the worse half of it") {
  const auto card = [](const std::string& acid) {
    return check_card(
        "recipe: Beans\nfollows: pickled-dilled-beans\ningredients: [4 lb green beans, 8 heads fresh dill, "
        "1/2 cup canning salt, " +
        acid +
        ", 4 cups water]\npack: raw\njars: pint\nheadspace: 1/2 inch\n"
        "process: {method: boiling water, time: 5 minutes, altitude: 500 ft}\n");
  };
  const auto report = card("4 cups bottled lime juice");
  CHECK(report.verdict == Verdict::hazard);
  const auto* finding = finding_of(report, "acid-never-reduced");
  REQUIRE(finding != nullptr);
  CHECK(finding->message ==
        "4 cups bottled lime juice stands in place of 4 cups white vinegar, which the tested formula has.");
  CHECK(finding->instead.find("4 cups white vinegar") != std::string::npos);
  CHECK(finding_of(report, "ingredient-added") == nullptr);
  CHECK(finding_of(card("4 cups white vinegar (5%)"), "acid-never-reduced") == nullptr);
}

TEST_CASE("no advice stands beside a finding that rules it out") {
  const auto report = check_card(
      "recipe: Garlic jars\ningredients: [4 heads of garlic, 2 cups olive oil]\njars: half-pint\n"
      "process: {method: boiling water, time: 20 minutes, altitude: 500 ft}\n");
  REQUIRE(finding_of(report, "garlic-in-oil") != nullptr);
  const auto* method = finding_of(report, "low-acid-needs-pressure");
  REQUIRE(method != nullptr);
  CHECK(method->instead.find("pressure canner") == std::string::npos);
  const auto beans = check_card(
      "recipe: Bean jars\ningredients: [9 lb green beans, water]\njars: pint\n"
      "process: {method: boiling water, time: 20 minutes, altitude: 500 ft}\n");
  REQUIRE(finding_of(beans, "low-acid-needs-pressure") != nullptr);
  CHECK(finding_of(beans, "low-acid-needs-pressure")->instead.find("pressure canner") != std::string::npos);
  const auto eggs = check_card(
      "recipe: Eggs\ningredients: [2 dozen hard-boiled eggs, 4 cups white vinegar, 1 cup water]\njars: "
      "quart\n"
      "process: {method: boiling water, time: 20 minutes, altitude: 500 ft}\n");
  CHECK(finding_of(eggs, "no-eggs-shelf") != nullptr);
  CHECK(finding_of(eggs, "mixture-acid-untested") == nullptr);
}

TEST_CASE("fish in quarts is judged by the quart process, whatever else stands in the way of a match") {
  // USDA Complete Guide (2015), Guide 5, page 5-11: 160 minutes at 11 psi on a dial gauge.
  const auto report = check_card(
      "recipe: Lake trout\ningredients: [20 lb lake trout, each quart: 1 tbsp ketchup]\njars: quart\npack: "
      "raw\n"
      "headspace: 1 inch\nprocess: {method: pressure canner, gauge: dial, pressure: 10 psi, time: 100 "
      "minutes, "
      "altitude: 500 ft}\n");
  CHECK(report.verdict == Verdict::hazard);
  REQUIRE(finding_of(report, "never-shorten-time") != nullptr);
  CHECK(finding_of(report, "never-shorten-time")->message.find("160 minutes") != std::string::npos);
  CHECK(finding_of(report, "jar-not-larger-than-tested") == nullptr);
}

TEST_CASE("a food that the formula lists is no danger in a card that keeps to the formula") {
  const std::string lines =
      "ingredients: [6 cups sliced carrots, 6 cups cut corn, 6 cups cut green beans, 6 cups lima beans, "
      "4 cups crushed tomatoes, 4 cups diced zucchini";
  const std::string process =
      "]\njars: quart\npack: hot\nheadspace: 1 inch\nprocess: {method: pressure canner, gauge: dial, "
      "pressure: 11 psi, time: 90 minutes, altitude: 500 ft}\n";
  const std::string title = "recipe: Soup-pot mixed vegetables\n";
  CHECK(finding_of(check_card(title + lines + process), "summer-squash-no-process") == nullptr);
  CHECK(finding_of(check_card(title + lines + ", 2 cups cauliflower" + process),
                   "summer-squash-no-process") != nullptr);
}

TEST_CASE("the kitchen's altitude is judged beside the card's own") {
  const auto card =
      beans("method: pressure canner, gauge: dial, pressure: 11 psi, time: 20 minutes, altitude: 0-2000 ft");
  const auto report = check_card(card, at(5280, 5280));
  CHECK(report.verdict == Verdict::hazard);
  REQUIRE(finding_of(report, "altitude-dial-gauge") != nullptr);
  CHECK(finding_of(report, "altitude-dial-gauge")->needed == "13 psi");
  CHECK(finding_of(report, "altitude-outside-card") != nullptr);
}

TEST_CASE("nothing of the altitude known: unproven, and up to where it holds") {
  const auto report =
      check_card(beans("method: pressure canner, gauge: weighted, pressure: 10 psi, time: 20 minutes"));
  CHECK(report.verdict == Verdict::unproven);
  REQUIRE(finding_of(report, "altitude-must-be-known") != nullptr);
  CHECK(finding_of(report, "altitude-must-be-known")->message.find("1,000 ft") != std::string::npos);
  CHECK(finding_of(report, "altitude-must-be-known")->message.find("15 psi") != std::string::npos);
}

TEST_CASE("low-acid food in boiling water is one danger, not many") {
  const auto report = check_card(beans("method: boiling water, time: 3 hours, altitude: 0-1000 ft"));
  CHECK(report.verdict == Verdict::hazard);
  CHECK(report.findings.size() == 1);
  CHECK(report.findings.front().rule == "low-acid-needs-pressure");
  CHECK(report.findings.front().at.line == 9);
}

TEST_CASE("a mixture of acid and low-acid food") {
  const auto card = [](const std::string& acid) {
    return check_card(
        "recipe: Own relish\ningredients:\n  - 6 cups chopped tomatoes\n  - 3 cups cooked black beans\n" +
        acid + "jars: pint\nprocess: {method: boiling water, time: 40 minutes, altitude: 0-1000 ft}\n");
  };
  const auto none = card("");
  CHECK(finding_of(none, "mixture-acid-and-low-acid") != nullptr);
  CHECK(none.verdict == Verdict::hazard);
  CHECK(finding_of(card("  - 1 tbsp vinegar (5%)\n"), "mixture-acid-and-low-acid") != nullptr);
  const auto enough = card("  - 3 cups vinegar (5%)\n");
  CHECK(finding_of(enough, "mixture-acid-and-low-acid") == nullptr);
  CHECK(enough.verdict != Verdict::tested);
}

TEST_CASE("a little low-acid food in much fruit is untested, not a danger") {
  const auto report = check_card(
      "recipe: Peaches with ginger\ningredients:\n  - 11 lb peaches, peeled, pitted, halved\n  - 2 tbsp "
      "fresh ginger\n"
      "jars: pint\npack: hot\nheadspace: 1/2 inch\n"
      "process: {method: boiling water, time: 20 minutes, altitude: 0-1000 ft}\n");
  CHECK(finding_of(report, "mixture-acid-and-low-acid") == nullptr);
  CHECK(report.verdict == Verdict::unproven);
}

TEST_CASE("two sizes with a process each: the worst verdict is the card's") {
  const auto both = [](const char* quart_minutes) {
    return check_card(
        "recipe: Bean jars\nfollows: beans-snap-and-italian-pieces\ningredients:\n"
        "  - 9 lb green beans, trimmed, cut in 1-inch pieces\n  - water\npack: raw\njars: [pint, quart]\n"
        "headspace: 1 inch\nprocess:\n"
        "  - {jars: pint, method: pressure canner, gauge: dial, pressure: 11 psi, time: 20 minutes, "
        "altitude: 500 ft}\n"
        "  - {jars: quart, method: pressure canner, gauge: dial, pressure: 11 psi, time: " +
        std::string(quart_minutes) + " minutes, altitude: 500 ft}\n");
  };
  CHECK(both("25").verdict == Verdict::tested);
  const auto report = both("20");
  CHECK(report.verdict == Verdict::hazard);
  CHECK(report.findings.front().at.line == 11);
}

TEST_CASE("accepting a danger does nothing; accepting less marks it") {
  const std::string process =
      "method: pressure canner, gauge: dial, pressure: 11 psi, time: 10 minutes, altitude: 500 ft";
  const auto danger =
      check_card(beans(process) + "accept:\n  - {rule: never-shorten-time, because: always did}\n");
  REQUIRE(finding_of(danger, "never-shorten-time") != nullptr);
  CHECK(finding_of(danger, "never-shorten-time")->accepted_because.empty());
  const auto lesser = check_card(
      beans("method: pressure canner, gauge: dial, pressure: 11 psi, time: 20 minutes, altitude: 500 ft",
            "pack: raw\njars: pint\nheadspace: 1/2 inch\n") +
      "accept:\n  - {rule: headspace-too-little, because: our jars are tall}\n");
  REQUIRE(finding_of(lesser, "headspace-too-little") != nullptr);
  CHECK(finding_of(lesser, "headspace-too-little")->accepted_because == "our jars are tall");
  CHECK(lesser.verdict == Verdict::unproven);
}

TEST_CASE("kept cold: no process is asked, and nothing is proved") {
  const auto report = check_card(
      "recipe: Refrigerator pickles\ningredients: [2 lb cucumbers, 2 cups vinegar (5%), 2 cups water]\njars: "
      "pint\n"
      "steps: [Keep the jars in the refrigerator.]\n");
  CHECK(report.verdict == Verdict::unproven);
  CHECK(finding_of(report, "kept-cold") != nullptr);
}

TEST_CASE("findings quote their lines, worst first") {
  const auto report = check_card(
      beans("method: pressure canner, gauge: dial, pressure: 11 psi, time: 10 minutes, altitude: 500 ft",
            "pack: raw\njars: pint\nheadspace: 1/2 inch\n"));
  REQUIRE(report.findings.size() >= 2);
  for (std::size_t i = 1; i < report.findings.size(); ++i)
    CHECK(report.findings[i - 1].severity >= report.findings[i].severity);
  REQUIRE(report.source_lines.size() == report.source_line_numbers.size());
  CHECK(report.source_line_numbers == std::vector{8, 9});
  CHECK(report.source_lines[0] == "headspace: 1/2 inch");
}

TEST_CASE("a bad document does not stop those after it; an empty text is unreadable") {
  static const Checker checker = Checker::builtin();
  const auto reports =
      checker.check_text("two.yaml", "recipe: [\n---\nrecipe: Pears\ningredients: [pears]\n");
  REQUIRE(reports.size() == 2);
  CHECK(reports[0].verdict == Verdict::unreadable);
  CHECK(reports[0].document == 1);
  CHECK(reports[0].findings.front().rule == "unreadable");
  CHECK(reports[1].verdict == Verdict::hazard);  // no process at all
  CHECK(reports[1].document == 2);
  const auto nothing = checker.check_text("none.yaml", "");
  REQUIRE(nothing.size() == 1);
  CHECK(nothing[0].verdict == Verdict::unreadable);
  const auto wrong = checker.check_text("key.yaml", "recipe: Pears\ningredient: [pears]\n");
  CHECK(wrong[0].verdict == Verdict::unreadable);
  CHECK(wrong[0].title == "Pears");
  CHECK(wrong[0].findings.front().at == Position{2, 1});
}

TEST_CASE("a kitchen file") {
  const auto kitchen = Kitchen::read("kitchen.yaml", "kitchen: Ridge road\naltitude: 5,280 ft\n");
  REQUIRE(std::holds_alternative<Kitchen>(kitchen));
  CheckOptions options;
  options.kitchen = std::get<Kitchen>(kitchen);
  const auto report =
      check_card(beans("method: pressure canner, gauge: dial, pressure: 13 psi, time: 20 minutes"), options);
  CHECK(report.verdict == Verdict::tested);
  CHECK(std::holds_alternative<InputError>(Kitchen::read("kitchen.yaml", "")));
  CHECK(std::holds_alternative<InputError>(Kitchen::read("kitchen.yaml", "altitud: 5,280 ft\n")));
}

TEST_CASE("further rules, and errors in them with their place") {
  const auto wrong = Checker::with_rules({{"house.yaml", "rules:\n  - id: our-rule\n    severity: dire\n"}});
  REQUIRE(std::holds_alternative<std::vector<InputError>>(wrong));
  const auto& errors = std::get<std::vector<InputError>>(wrong);
  REQUIRE_FALSE(errors.empty());
  CHECK(errors.front().path == "house.yaml");
  CHECK(errors.front().at.line > 0);
}

}  // namespace
}  // namespace sealworthy::checks
