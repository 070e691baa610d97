/// A card that tells its process in the steps instead of under a key: read as the directions of a page are.
/// The figures: USDA Complete Guide (2015), Guide 2, peaches, page 2-19; Guide 4, green beans, page 4-7.

#include <doctest/doctest.h>

#include <algorithm>
#include <sealworthy/checker.hpp>
#include <string>

namespace sealworthy {
namespace {

RecipeReport checked(const std::string& card) {
  static const auto checker = Checker::builtin();
  const auto reports = checker.check_text("card.yaml", card);
  REQUIRE(reports.size() == 1);
  return reports[0];
}

bool found(const RecipeReport& report, std::string_view rule) {
  return std::any_of(report.findings.begin(), report.findings.end(),
                     [&](const Finding& finding) { return finding.rule == rule; });
}

const std::string peaches =
    "recipe: Peaches of the river shed\n"
    "ingredients: [\"17 1/2 lb peaches, peeled, pitted, halved\", water]\n";

}  // namespace

TEST_CASE("process, jars, headspace and pack are taken from the steps where no key tells them") {
  const auto whole = checked(peaches +
                             "steps:\n"
                             "  - Bring the peaches to a boil in water.\n"
                             "  - Ladle the hot peaches into hot quart jars, leaving 1/2 inch headspace.\n"
                             "  - Process 25 minutes in a boiling water canner at 0-1,000 ft.\n");
  CHECK(whole.verdict == Verdict::tested);
  CHECK(whole.findings.empty());

  const auto short_time =
      checked(peaches +
              "steps:\n"
              "  - Ladle the hot peaches into hot quart jars, leaving 1/2 inch headspace.\n"
              "  - Process 15 minutes in a boiling water canner at 0-1,000 ft.\n");
  CHECK(short_time.verdict == Verdict::hazard);
  REQUIRE(found(short_time, "never-shorten-time-acid"));
  for (const auto& finding : short_time.findings)
    if (finding.rule == "never-shorten-time-acid") CHECK(finding.at.line == 5);

  const auto beans = checked(
      "recipe: Beans of the river shed\n"
      "ingredients: [\"9 lb green beans, trimmed, cut in 1-inch pieces\", boiling water]\n"
      "steps: Pack the raw beans tightly into pint jars, leaving 1 inch headspace, and boil the jars 3 hours "
      "in "
      "a water bath canner.\n");
  CHECK(beans.verdict == Verdict::hazard);
}

TEST_CASE("a card's own keys go before its steps") {
  const std::string steps =
      "steps:\n"
      "  - Ladle the hot peaches into jars, leaving 1/2 inch headspace.\n"
      "  - Process pints 20 minutes, quarts 25 minutes in a boiling water canner at 0-1,000 ft.\n";
  CHECK(checked(peaches + "jars: pint\n" + steps).verdict == Verdict::tested);
  CHECK(checked(peaches + "jars: quart\npack: hot\nheadspace: 1/2 inch\n" + steps).verdict ==
        Verdict::tested);
  CHECK(found(checked(peaches + "headspace: 2 inches\n" + steps), "headspace-too-much"));
  // The steps tell of raw pack, but no key and no process says so: 25 minutes are for a hot one.
  CHECK(checked(peaches + "pack: raw\n" + steps).verdict != Verdict::tested);
}

TEST_CASE("steps without a process make none") {
  CHECK(found(checked(peaches + "steps: Boil the syrup 5 minutes and fill the jars.\n"), "process-missing"));
  const auto chilled = checked(
      "recipe: Refrigerator peaches\n"
      "ingredients: [\"2 lb peaches, peeled, pitted, halved\", water]\n"
      "steps: Boil 5 minutes, fill the jars and keep them in the refrigerator.\n");
  CHECK(!found(chilled, "process-missing"));
}

TEST_CASE("what the steps leave open never makes a card tested") {
  const auto with = [](const std::string& steps) { return checked(peaches + "steps:\n" + steps).verdict; };
  const std::string filled =
      "  - Ladle the hot peaches into hot quart jars, leaving 1/2 inch headspace, and put on the lids.\n";
  const std::string process = "  - Process 25 minutes in a boiling water canner at 0-1,000 ft.\n";
  CHECK(with(filled + process) == Verdict::tested);
  // Water that does not boil.
  CHECK(with(filled +
             "  - Set the jars in a kettle, cover with water and simmer 25 minutes at 0-1,000 ft.\n") !=
        Verdict::tested);
  CHECK(with(filled + "  - Simmer the jars 25 minutes in a boiling-water canner at 0-1,000 ft.\n") !=
        Verdict::tested);
  CHECK(with(filled +
             "  - Set the jars in a kettle of hot water and keep them there 25 minutes at 0-1,000 ft.\n") !=
        Verdict::tested);
  // Something else was heated than what is filled.
  for (const std::string first :
       {"Cook the spices 5 minutes.", "Heat the sauce 5 minutes.", "Simmer the onions 5 minutes."})
    for (const std::string fill : {"peaches and juice", "peaches and the sauce", "peaches"}) {
      CAPTURE(first);
      CAPTURE(fill);
      CHECK(with("  - " + first + "\n  - Fill quart jars with " + fill + ", leaving 1/2 inch headspace.\n" +
                 process) != Verdict::tested);
    }
  // Jars that no process is told for.
  CHECK(checked(peaches +
                "jars: quart\npack: hot\nheadspace: 1/2 inch\nsteps: Process pints 20 minutes in a boiling "
                "water canner at 0-1,000 ft.\n")
            .verdict != Verdict::tested);
}

TEST_CASE("a method told with words that may change it is none of the tested ones") {
  const auto by = [](const std::string& method) {
    return checked(peaches + "jars: quart\npack: hot\nheadspace: 1/2 inch\nprocess: {method: \"" + method +
                   "\", time: 25 minutes, altitude: 0-1000 ft}\n")
        .verdict;
  };
  CHECK(by("boiling water") == Verdict::tested);
  CHECK(by("boiling water, 212 F") == Verdict::tested);
  CHECK(by("boiling water, 2 inches deep") != Verdict::tested);
  CHECK(by("hot water bath at 172 F") != Verdict::tested);
  CHECK(by("boiling water, halfway up the jars") != Verdict::tested);
}

}  // namespace sealworthy
