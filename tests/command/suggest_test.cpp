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

namespace {

// USDA Complete Guide (2015), Guide 3, page 3-7 (tomatoes crushed); the recipe is invented.
const std::string tomato_page = R"(Winter tomatoes

Ingredients
22 pounds ripe tomatoes
14 tablespoons bottled lemon juice (2 tablespoons per quart)
7 teaspoons canning salt, optional (1 teaspoon per quart)

Directions
Wash the tomatoes, dip them in boiling water for 30 to 60 seconds until the skins split, slip off the skins and remove the cores. Quarter them.
Heat one-sixth of the quarters quickly, crushing them. Add the others.
Boil gently 5 minutes.
Put 2 tablespoons of bottled lemon juice in each quart jar, and 1 teaspoon salt if you like.
Fill the jars at once with hot tomatoes, leaving 1/2-inch headspace.
Process quarts in a boiling-water canner: 45 minutes at 0-1,000 ft; 50 minutes at 1,001-3,000 ft; 55 minutes at 3,001-6,000 ft; 60 minutes above 6,000 ft.

Yield: about 7 quarts
)";

}  // namespace

TEST_CASE("a step of several lines stays a comment, and plan takes the page") {
  const Folder folder;
  folder.write("page.txt", tomato_page);
  REQUIRE(run("check --require tested " + folder.path()).status == 0);
  const auto card = run("suggest " + folder.path() + "/page.txt");
  CAPTURE(card.out);
  CAPTURE(card.err);
  CHECK(card.status == 0);
  CHECK(card.err.empty());
  CHECK(card.out.find("22 pounds ripe tomatoes") != std::string::npos);
  CHECK(card.out.find("altitude: 0 to 1,000 ft\n") != std::string::npos);
  folder.write("card.yaml", card.out);
  CHECK(run("check --require tested " + folder.path() + "/card.yaml").status == 0);
  const auto plan = run("plan --jars 7 " + folder.path() + "/page.txt");
  CAPTURE(plan.err);
  CHECK(plan.status == 0);
  CHECK(plan.out.find("Winter tomatoes: 7 quarts") != std::string::npos);
}

TEST_CASE("a suggestion is for the page's jars and its lowest altitude, and says which steps are at fault") {
  const Folder folder;
  // USDA Complete Guide (2015), Guide 2, page 2-19: hot pack pints 20, quarts 25 minutes at 0-1,000 ft.
  const auto peaches = folder.write("peaches.txt", R"(Canned peaches in syrup

Ingredients
17 1/2 pounds ripe yellow peaches
9 cups water
2 1/4 cups sugar

Directions
1. Peel the peaches, cut them in half and remove the pits.
2. Heat water and sugar, add the drained peaches and bring to a boil.
3. Hot pack: fill jars with hot fruit and syrup, leaving 1/2 inch headspace.
4. Process in a boiling-water canner: pints 20 minutes, quarts 25 minutes at 0-1,000 ft; pints 25 minutes, quarts 30 minutes at 1,001-3,000 ft.
5. Turn the jars upside down to seal them.
)");
  const auto card = run("suggest " + peaches);
  CAPTURE(card.out);
  CAPTURE(card.err);
  CHECK(card.status == 0);
  const auto has = [&](const std::string& words) { return card.out.find(words) != std::string::npos; };
  CHECK(has("\npack: hot\njars: [pint, quart]\n"));
  CHECK(has("    time: 20 minutes\n    altitude: 0 to 1,000 ft\n    jars: pint\n"));
  CHECK(has("    time: 25 minutes\n    altitude: 0 to 1,000 ft\n    jars: quart\n"));
  CHECK(has("with the hot food"));
  CHECK(has("# the card's own: Hot pack: fill jars"));
  CHECK(has("# not to be followed, the check found fault with it: Turn the jars upside down"));
  CHECK_FALSE(has("the card's own: Turn"));
  folder.write("card.yaml", card.out);
  CHECK(run("check --require tested " + folder.path() + "/card.yaml").status == 0);
  // The kitchen's altitude goes before the page's.
  const auto high = run("suggest --altitude '2,500 ft' " + peaches);
  CHECK(high.status == 0);
  CHECK(high.out.find("    time: 25 minutes\n    altitude: 2,500 ft") != std::string::npos);
  CHECK(high.out.find("    time: 30 minutes\n    altitude: 2,500 ft") != std::string::npos);
}

TEST_CASE("a suggestion tells the acid of each jar size, and no altitude of 0 ft where none is known") {
  // USDA Complete Guide (2015), Guide 3, Acidification: 1 tablespoon of lemon juice per pint, 2 per quart.
  const auto card =
      run("suggest -",
          "recipe: Crushed tomatoes\ningredients: [22 lb tomatoes peeled cored crushed, each jar: 1 "
          "tsp bottled lemon juice]\npack: hot\njars: [pint, quart]\nheadspace: 1/2 inch\n"
          "process: {method: boiling water, time: 20 minutes}\n");
  CAPTURE(card.out);
  CAPTURE(card.err);
  CHECK(card.status == 0);
  const auto has = [&](const std::string& words) { return card.out.find(words) != std::string::npos; };
  CHECK(has("  - each pint: \"1 tbsp bottled lemon juice\""));
  CHECK(has("  - each quart: \"2 tbsp bottled lemon juice\""));
  CHECK(has("altitude: 0 to 1,000 ft  # no altitude is known"));
  CHECK_FALSE(has("altitude: 0 ft"));
}
