#include <doctest/doctest.h>

#include "command/cards.hpp"
#include "command/run.hpp"

using sealworthy::test::Folder;
using sealworthy::test::run;

namespace {

// Invented, after USDA Complete Guide (2015), Guide 4, page 4-9.
const std::string bean_page = R"(Hollow Farm beans

Ingredients
- 9 lb green beans, trimmed, cut in 1-inch pieces

Directions
1. Pack the raw beans into hot pint jars. Cover with boiling water, leaving 1 inch headspace.
2. Process pints 20 minutes at 11 psi in a dial-gauge pressure canner at 0 to 2,000 ft.
)";

}  // namespace

TEST_CASE("plan and suggest take a recipe written as a page, as check does") {
  const Folder folder;
  folder.write("page.txt", bean_page);
  REQUIRE(run("check --require tested " + folder.path()).status == 0);
  const auto plan = run("plan --jars 7 " + folder.path() + "/page.txt");
  CHECK(plan.status == 0);
  CHECK(plan.out.find("Hollow Farm beans: 7 pints") != std::string::npos);
  const auto card = run("suggest " + folder.path() + "/page.txt");
  CHECK(card.status == 0);
  CHECK(card.out.find("follows: beans-snap-and-italian-pieces") != std::string::npos);
  folder.write("card.yaml", card.out);
  CHECK(run("check --require tested " + folder.path() + "/card.yaml").status == 0);
}

TEST_CASE("a page without a canning recipe is told, not planned and not suggested for") {
  const Folder folder;
  folder.write("note.txt", "Buy jars.\n");
  for (const auto* command : {"plan --jars 7 ", "suggest "}) {
    CAPTURE(command);
    const auto ran = run(command + folder.path() + "/note.txt");
    CHECK(ran.status == 2);
    CHECK(ran.err.find("no canning recipe was found") != std::string::npos);
  }
}

TEST_CASE("sugar beside a single food stays in a suggestion, a thickener does not") {
  // USDA Complete Guide (2015), Guide 2, page 2-19: peaches in water, juice or syrup.
  const auto card = [](const std::string& more) {
    return "recipe: Peaches\ningredients: [11 lb peaches peeled halved pitted, 5 cups water, " + more +
           "]\npack: hot\njars: quart\nheadspace: 1/2 inch\n"
           "process: {method: boiling water, time: 15 minutes, altitude: 0-1000 ft}\n";
  };
  const auto sweet = run("suggest -", card("1 cup sugar"));
  CHECK(sweet.status == 0);
  CHECK(sweet.out.find("\n  - 1 cup sugar\n") != std::string::npos);
  const auto thick = run("suggest -", card("1 cup cornstarch"));
  CHECK(thick.status == 0);
  CHECK(thick.out.find("# left out, the tested process does not name it: 1 cup cornstarch") !=
        std::string::npos);
}
