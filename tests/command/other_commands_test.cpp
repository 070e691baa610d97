#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "command/run.hpp"

using sealworthy::test::run;

TEST_CASE("lookup gives the published figures for an altitude, a jar and a pack") {
  // USDA Complete Guide (2015), Guide 4, snap beans: quarts 25 minutes; dial gauge 13 psi from 4,001 to 6,000
  // ft.
  const auto ran = run("lookup --format json --jar quart --pack raw --altitude 5280ft snap beans");
  CHECK(ran.status == 0);
  const auto json = nlohmann::json::parse(ran.out);
  CHECK(json["altitude_ft"] == 5280);
  bool dial = false;
  for (const auto& process : json["processes"]) {
    if (process["id"] != "beans-snap-and-italian-pieces" || process["method"] != "pressure-dial") continue;
    dial = true;
    CHECK(process["minutes"] == 25);
    CHECK(process["psi"] == 13);
    CHECK(process["headspace_in"] == nlohmann::json::array({1.0, 1.0}));
    CHECK(process["jar"] == "quart");
  }
  CHECK(dial);
}

TEST_CASE("lookup says what it does not know, with exit 2") {
  for (const auto* words :
       {"qwzzl", "--jar bathtub beans", "--altitude 50000ft beans", "--method wishing beans"}) {
    CAPTURE(words);
    const auto ran = run(std::string("lookup ") + words);
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
    CHECK_FALSE(ran.err.empty());
  }
}

TEST_CASE("a long answer shows the best matches whole and names the rest") {
  const auto ran = run("lookup tomatoes");
  CHECK(ran.status == 0);
  CHECK(ran.out.find("Also named by these words") != std::string::npos);
  CHECK(ran.out.find("above 1,001") == std::string::npos);
}

TEST_CASE("explain tells why, the source and examples; an unknown rule is exit 2 with a suggestion") {
  const auto ran = run("explain inversion low-acid-needs-pressure");
  CHECK(ran.status == 0);
  for (const auto* part : {"why", "instead", "source", "speaks up at", "stays silent at"})
    CHECK(ran.out.find(part) != std::string::npos);
  const auto slip = run("explain inversoin");
  CHECK(slip.status == 2);
  CHECK(slip.err.find("inversion") != std::string::npos);
  CHECK(run("explain").out.find("low-acid-needs-pressure") != std::string::npos);
}

TEST_CASE("read shows each line as it was understood") {
  const auto ran = run(
      "read --format json -",
      "recipe: Hollow Farm relish\ningredients:\n  - 1 1/2 cups onions, chopped\n  - each jar: 1 tsp salt\n"
      "  - 3 cups vinegar (5%)\n  - 2 cups grobnik\n");
  CHECK(ran.status == 0);
  const auto lines = nlohmann::json::parse(ran.out)["recipes"][0]["ingredients"];
  REQUIRE(lines.size() == 4);
  CHECK(lines[0]["low"] == 1.5);
  CHECK(lines[0]["unit"] == "cup");
  CHECK(lines[0]["food"] == "onion");
  CHECK(lines[0]["state"] == nlohmann::json::array({"chopped"}));
  CHECK(lines[0]["grams"].is_array());
  CHECK(lines[1]["per_jar"] == true);
  CHECK(lines[2]["strength_percent"] == 5);
  CHECK(lines[3]["food"].is_null());
  CHECK(lines[3]["name"] == "grobnik");
}

TEST_CASE("read tells where a card can't be read, with exit 2") {
  const auto ran = run("read -", "recipe: x\ningredients: [1 cup beans]\nhedspace: 1 inch\n");
  CHECK(ran.status == 2);
  CHECK(ran.out.find("3:1") != std::string::npos);
  CHECK(ran.out.find("headspace") != std::string::npos);
}
