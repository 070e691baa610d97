#include <chrono>

#include "reading.hpp"

using namespace sealworthy;
using namespace sealworthy::recipe;
using doctest::Approx;

TEST_CASE("a whole card is read with its places") {
  const Recipe r = card(R"(recipe: Ridge road bean jars
follows: beans-snap-and-italian-pieces
units: us
makes: 7 quart jars
ingredients:
  - 14 lb green beans, trimmed, cut in 1-inch pieces
  - water
  - each jar: 1 teaspoon canning salt
  - each quart: 2 tbsp bottled lemon juice
  - {food: onion, amount: 2 cups, state: [chopped, peeled]}
  - food: dill
    state: fresh, chopped
  - {each jar: {food: salt, amount: 1/2 tsp}, jar: pint}
  - "each pint: 1/2 tsp salt"
pack: raw
jars: quart
headspace: 1 inch
process:
  method: pressure canner
  gauge: dial
  pressure: 11 psi
  time: 25 minutes
  altitude: 0-2000 ft
steps:
  - Boil five minutes, fill the jars, remove bubbles.
  - |
    Wipe the rims.
lids: new
accept:
  - {rule: sugar-changed, because: tried with the county office}
)");
  CHECK(r.title.value == "Ridge road bean jars");
  CHECK(r.title.at == Position{1, 9});
  CHECK(r.follows->value == "beans-snap-and-italian-pieces");
  CHECK(r.units == quantity::Units::us);
  CHECK(in_pieces(r.makes->value.count.low) == 7);
  CHECK(r.makes->value.jar->name == "quart");
  CHECK(r.makes->at == Position{4, 8});

  REQUIRE(r.ingredients.size() == 8);
  CHECK(r.ingredients[0].text == "14 lb green beans, trimmed, cut in 1-inch pieces");
  CHECK(r.ingredients[0].at == Position{6, 5});
  CHECK_FALSE(r.ingredients[0].per_jar);
  CHECK(r.ingredients[2].per_jar);
  CHECK(r.ingredients[2].text == "1 teaspoon canning salt");
  CHECK(r.ingredients[2].at == Position{8, 5});
  CHECK_FALSE(r.ingredients[2].per_jar_of.has_value());
  CHECK(r.ingredients[3].per_jar);
  CHECK(r.ingredients[3].per_jar_of->value.name == "quart");
  CHECK(r.ingredients[3].text == "2 tbsp bottled lemon juice");
  CHECK(r.ingredients[4].text == "2 cups onion, chopped, peeled");
  CHECK(r.ingredients[4].food == "onion");
  CHECK(r.ingredients[4].amount == "2 cups");
  CHECK(r.ingredients[4].states == std::vector<std::string_view>{"chopped", "peeled"});
  CHECK(r.ingredients[5].text == "dill, fresh, chopped");
  CHECK(r.ingredients[5].amount.empty());
  CHECK(r.ingredients[5].states.size() == 2);
  CHECK(r.ingredients[6].per_jar);
  CHECK(r.ingredients[6].per_jar_of->value.name == "pint");
  CHECK(r.ingredients[6].per_jar_of->at == Position{13, 52});
  CHECK(r.ingredients[6].text == "1/2 tsp salt");
  CHECK(r.ingredients[6].food == "salt");
  CHECK(r.ingredients[7].per_jar_of->value.name == "pint");
  CHECK(r.ingredients[7].text == "1/2 tsp salt");

  CHECK(r.pack->value == Pack::raw);
  REQUIRE(r.jars.size() == 1);
  CHECK(r.jars[0].value.name == "quart");
  CHECK(r.jars[0].text == "quart");
  CHECK(in_inches(r.headspace->value.low) == Approx(1));
  CHECK(r.process_at == Position{18, 1});
  REQUIRE(r.processes.size() == 1);
  const Process& p = r.processes[0];
  CHECK(p.at == Position{19, 3});
  CHECK(p.method->value == "pressure canner");
  CHECK(p.gauge->value == Gauge::dial);
  CHECK(in_psi(p.pressure->value.low) == Approx(11));
  CHECK(p.pressure->at == Position{21, 13});
  CHECK(in_minutes(p.time->value.high) == Approx(25));
  CHECK(in_feet(p.altitude->value.high) == Approx(2000));
  REQUIRE(r.steps.size() == 2);
  CHECK(r.steps[1].value == "Wipe the rims.");
  CHECK(r.steps[1].at == Position{26, 5});
  CHECK(r.lids->value == "new");
  REQUIRE(r.accept.size() == 1);
  CHECK(r.accept[0].rule.value == "sugar-changed");
  CHECK(r.accept[0].because == "tried with the county office");
  CHECK(r.process_or_title() == Position{18, 1});
}

TEST_CASE("the least card, and nulls that count as not given") {
  const Recipe r = card(
      "recipe: Beans\ningredients: [beans]\nfollows:\nmakes: ~\npack: "
      "null\njars:\nheadspace:\nprocess:\nsteps:\n"
      "lids:\naccept:\nunits:\n");
  CHECK(r.ingredients.size() == 1);
  CHECK_FALSE(r.follows.has_value());
  CHECK_FALSE(r.pack.has_value());
  CHECK(r.jars.empty());
  CHECK_FALSE(r.process_at.has_value());
  CHECK(r.processes.empty());
  CHECK(r.process_or_title() == Position{1, 9});
  CHECK(card("recipe: B\ningredients: [b]\nsteps: Boil it.\n").steps.size() == 1);
}

TEST_CASE("each jar, however its letters are written") {
  const Recipe r =
      card("recipe: B\ningredients:\n  - Each Jar: 1 tsp salt\n  - 'Each pint jar: 2 tbsp vinegar'\n");
  CHECK(r.ingredients[0].per_jar);
  CHECK_FALSE(r.ingredients[0].per_jar_of.has_value());
  CHECK(r.ingredients[1].per_jar_of->value.name == "pint");
  CHECK(r.ingredients[1].text == "2 tbsp vinegar");
}

TEST_CASE("several jars and several processes") {
  const Recipe r = card(
      "recipe: Beans\ningredients: [beans]\njars: [pint, {size: quart, mouth: wide}]\nprocess:\n"
      "  - {method: pressure canner, jars: pint, time: 20 min, headspace: 1/2 inch}\n"
      "  - {method: pressure canner, jars: [quart], time: 25 min}\n");
  REQUIRE(r.jars.size() == 2);
  CHECK(r.jars[1].value.name == "quart");
  CHECK(r.jars[1].value.mouth == "wide");
  CHECK(r.jars[1].at == Position{3, 21});
  REQUIRE(r.processes.size() == 2);
  CHECK(r.processes[0].jars[0].value.name == "pint");
  CHECK(in_inches(r.processes[0].headspace->value.low) == Approx(0.5));
  CHECK(r.processes[1].at == Position{6, 5});
  CHECK(card("recipe: B\ningredients: [b]\njars: {size: pint}\n").jars.size() == 1);
}

TEST_CASE("units: decides what a pint is, wherever it stands") {
  const Recipe us = card("recipe: B\nmakes: 4 pints\njars: pint\ningredients: [b]\n");
  const Recipe imperial = card("recipe: B\nmakes: 4 pints\njars: pint\ningredients: [b]\nunits: imperial\n");
  CHECK(imperial.units == quantity::Units::imperial);
  CHECK(imperial.jars[0].value.volume > us.jars[0].value.volume);
  CHECK(imperial.makes->value.jar->volume > us.makes->value.jar->volume);
  CHECK(card("recipe: B\ningredients: [b]\nunits: metric\nprocess: {altitude: 300}\n")
            .processes[0]
            .altitude->value.low == metres(300));
}

TEST_CASE("the views of a recipe outlive its document") {
  std::optional<Recipe> r;
  {
    const yaml::Document d = document("recipe: Beans\ningredients:\n  - {food: beans, amount: 2 lb}\n");
    r = std::get<Recipe>(read_card(d));
  }
  const Recipe copy = *r;
  r.reset();
  CHECK(copy.title.value == "Beans");
  CHECK(copy.ingredients[0].text == "2 lb beans");
}

TEST_CASE("ten thousand ingredients are read in a moment") {
  std::string text = "recipe: Long\ningredients:\n";
  for (int i = 0; i < 10'000; ++i)
    text += i % 2 == 0 ? "  - 2 cups beans\n" : "  - {food: onion, amount: 2 cups, state: [chopped]}\n";
  const auto begin = std::chrono::steady_clock::now();
  const Recipe r = card(text);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
  CHECK(r.ingredients.size() == 10'000);
  CHECK(r.ingredients.back().text == "2 cups onion, chopped");
  CHECK(took.count() < 5);
}

TEST_CASE("jars told by number are what the card makes, unless `makes:` says so") {
  const Recipe seven = card("recipe: R\ningredients: [beans]\njars: 7 quarts\n");
  REQUIRE(seven.jars.size() == 1);
  CHECK(seven.jars[0].value.name == "quart");
  REQUIRE(seven.makes);
  CHECK(in_pieces(seven.makes->value.count.low) == 7);
  for (const char* text : {"recipe: R\nmakes: 6 quarts\ningredients: [beans]\njars: 7 quarts\n",
                           "recipe: R\ningredients: [beans]\njars: 7 quarts\nmakes: 6 quarts\n"}) {
    const Recipe told = card(text);
    REQUIRE(told.makes);
    CHECK(in_pieces(told.makes->value.count.low) == 6);
  }
  const Recipe two = card("recipe: R\ningredients: [beans]\njars: [3 quarts, 2 pints]\n");
  CHECK(two.jars.size() == 2);
  CHECK_FALSE(two.makes);
}
