// Looking up tested processes by words.

#include <algorithm>
#include <sealworthy/lookup.hpp>

#include "at_hand.hpp"

using namespace sealworthy;
using namespace sealworthy::tested;

namespace {

LookupResult look(LookupQuery query) {
  auto found = tested::lookup(rules_at_hand().for_lookup(), query);
  if (const auto* error = std::get_if<InputError>(&found)) FAIL(query.words << ": " << error->message);
  return std::get<LookupResult>(std::move(found));
}

InputError refused(LookupQuery query) {
  auto found = tested::lookup(rules_at_hand().for_lookup(), query);
  REQUIRE_MESSAGE(std::holds_alternative<InputError>(found), query.words);
  return std::get<InputError>(std::move(found));
}

std::string first(std::string words) { return look({.words = std::move(words)}).products.front().id; }

bool has(const LookupResult& result, std::string_view id) {
  return std::any_of(result.products.begin(), result.products.end(),
                     [&](const LookupProduct& product) { return product.id == id; });
}

}  // namespace

TEST_CASE("every product is found by its id, its title and its main food") {
  for (const auto& product : tables().products()) {
    CAPTURE(product.id);
    const auto by_id = look({.words = product.id});
    CHECK(by_id.products.size() == 1);
    CHECK(by_id.products.front().id == product.id);
    CHECK(has(look({.words = product.title}), product.id));
    const auto* food = rules_at_hand().catalogue().find(product.foods.front());
    REQUIRE(food != nullptr);
    CHECK_MESSAGE(has(look({.words = food->name}), product.id), food->name);
  }
}

TEST_CASE("words of cooks") {
  CHECK(first("green beans") == "beans-snap-and-italian-pieces");
  CHECK(first("snap beans pints") == "beans-snap-and-italian-pieces");
  CHECK(first("Tomatoes crushed") == "tomatoes-crushed");
  CHECK(first("crushed tomatoes") == "tomatoes-crushed");
  CHECK(first("strawberry jam") == "strawberry-jam-powdered-pectin");
  CHECK(first("kraut") == "sauerkraut");
  CHECK(first("venison") == "strips-cubes-or-chunks-of-meat");
  CHECK(first("butternut squash") == "squash-winter-cubed");
  CHECK(first("chicken without bones") == "chicken-or-rabbit-without-bones");
  CHECK(first("chicken with bones") == "chicken-or-rabbit-with-bones");
  CHECK(first("dry beans") == "beans-or-peas-shelled-dried");
  CHECK(first("bread and butter pickles") == "bread-and-butter-pickles");
  CHECK(first("14 day pickles") == "14-day-sweet-pickles");
  CHECK(first("collard greens") == "spinach-and-other-greens");
  CHECK(first("apple slices") == "apples-sliced");
  CHECK(first("creamed corn") == "corn-cream-style");
  CHECK(first("chili") == "chile-con-carne");
  CHECK(has(look({.words = "hamburger"}), "ground-or-chopped-meat"));
  CHECK(first("salmon") == "fish-in-pint-jars");
  CHECK(has(look({.words = "salsa"}), "choice-salsa"));
  CHECK(has(look({.words = "salsa"}), "mango-salsa"));
  const auto jam = look({.words = "strawberry jam"});
  CHECK(!has(jam, "peach-jam-powdered-pectin"));
}

TEST_CASE("a slip is put right and said, nonsense is refused") {
  const auto slip = look({.words = "crushd tomatoes"});
  CHECK(slip.corrected == "crushed tomatoes");
  CHECK(slip.products.front().id == "tomatoes-crushed");
  CHECK(look({.words = "green beans"}).corrected.empty());
  // Foods that have no process of their own are not taken for the food that they are a kind of.
  CHECK(refused({.words = "white peaches"}).message.find("white peaches") != std::string::npos);
  CHECK(refused({.words = "spaghetti squash"}).message.find("spaghetti squash") != std::string::npos);
  const auto stew = look({.words = "beef stew"});
  CHECK(stew.corrected == "beef");
  CHECK(stew.not_understood == "stew");
  CHECK(refused({.words = "bicycle"}).message.find("bicycle") != std::string::npos);
  CHECK(refused({.words = ""}).message == "no food is named");
  CHECK(refused({.words = "carrots", .jar = "bucket"}).message.find("bucket") != std::string::npos);
  CHECK(refused({.words = "carrots", .jar = "1 gallon"}).message.find("large") != std::string::npos);
  CHECK(refused({.words = "carrots", .pack = "cold"}).message.find("cold") != std::string::npos);
  CHECK(refused({.words = "carrots", .method = "hairdryer"}).message.find("hairdryer") != std::string::npos);
  CHECK(refused({.words = "carrots", .method = "oven"}).message.find("no table") != std::string::npos);
}

TEST_CASE("an answer is the row for the jar, the pack and the altitude") {
  const auto result = look({.words = "snap beans", .jar = "quart", .pack = "raw", .altitude = feet(5280)});
  REQUIRE(result.altitude.has_value());
  std::vector<LookupAnswer> beans;
  for (const auto& answer : result.answers)
    if (answer.id == "beans-snap-and-italian-pieces") beans.push_back(answer);
  REQUIRE(beans.size() == 2);
  CHECK(beans[0].method == "pressure-dial");
  CHECK(beans[0].pack == "raw");
  CHECK(beans[0].jar == "quart");
  CHECK(beans[0].row_jar == "quart");
  CHECK(beans[0].minutes == 25);
  CHECK(beans[0].psi == 13);
  CHECK(beans[0].headspace_in == Interval<double>::exactly(1));
  CHECK(beans[0].headspace == "1 inch");
  CHECK(beans[0].acid_per_jar.empty());
  CHECK(beans[0].source == "USDA Complete Guide (2015), Guide 4, page 4-9");
  CHECK(!beans[0].steam);
  CHECK(beans[1].method == "pressure-weighted");
  CHECK(beans[1].psi == 15);
}

TEST_CASE("without an altitude every band is an answer") {
  const auto result = look({.words = "beans-snap-and-italian-pieces", .jar = "pint", .pack = "hot"});
  REQUIRE(result.answers.size() == 6);
  CHECK(result.answers[0].band == Interval<Altitude>{feet(0), feet(2000)});
  CHECK(result.answers[3].psi == 14);
  CHECK(!result.altitude);
}

TEST_CASE("a jar without a row of its own takes the next larger one's, and says so") {
  const auto result = look({.words = "carrots-sliced-or-diced", .jar = "half-pint", .altitude = feet(0)});
  REQUIRE(!result.answers.empty());
  CHECK(result.answers[0].jar == "half-pint");
  CHECK(result.answers[0].row_jar == "pint");
  CHECK(result.answers[0].minutes == 25);
  REQUIRE(!result.answers[0].notes.empty());
  CHECK(result.answers[0].notes[0] == "No row of its own: half-pints take the time of pints.");
  const auto larger = look({.words = "carrots-sliced-or-diced", .jar = "half gallon"});
  CHECK(larger.answers.empty());
  CHECK(larger.products[0].left_out[0] == "No row is published for half-gallons.");
}

TEST_CASE("acid for each jar is told for the jar asked for") {
  const auto quart = look({.words = "tomatoes-crushed", .jar = "quart", .altitude = feet(0)});
  CHECK(quart.answers[0].acid_per_jar == std::vector<std::string>{"2 tablespoons bottled lemon juice",
                                                                  "1/2 teaspoon citric acid",
                                                                  "1/4 cup vinegar (5 %)"});
  const auto pint = look({.words = "tomatoes-crushed", .jar = "pint", .altitude = feet(0)});
  CHECK(pint.answers[0].acid_per_jar[0] == "1 tablespoon bottled lemon juice");
  // No amount is published for half-pints: that of pints is told.
  const auto half = look({.words = "tomatoes-crushed", .jar = "half-pint", .altitude = feet(0)});
  CHECK(half.answers[0].acid_per_jar[0] == "1 tablespoon bottled lemon juice");
}

TEST_CASE("what is ruled out or has no row is left out, with the reason") {
  const auto high = look({.words = "tomatoes-crushed", .jar = "pint", .altitude = feet(3000)});
  const auto& left = high.products[0].left_out;
  CHECK(std::find(left.begin(), left.end(),
                  "10 minutes at 15 psi on a weighted gauge is not recommended above 1,000 ft.") !=
        left.end());
  const auto above = look({.words = "carrots-sliced-or-diced", .jar = "pint", .altitude = feet(8500)});
  REQUIRE(!above.products[0].left_out.empty());
  CHECK(above.products[0].left_out[0] ==
        "No row is published above 8,000 ft for a dial gauge. South Dakota State University Extension prints "
        "15 psi.");
  CHECK(std::all_of(above.answers.begin(), above.answers.end(),
                    [](const LookupAnswer& answer) { return answer.method == "pressure-weighted"; }));
  const auto mango = look({.words = "mango sauce"});
  CHECK(mango.answers.empty());
  CHECK(mango.products[0].left_out[0].find("No tested process") == 0);
  const auto cold = look({.words = "pickled-horseradish-sauce"});
  CHECK(cold.answers.empty());
  CHECK(cold.products[0].left_out[0].find("refrigerator") != std::string::npos);
  const auto sky = look({.words = "peaches-halved-or-sliced", .altitude = feet(12000)});
  CHECK(sky.answers.empty());
  CHECK(!sky.products[0].left_out.empty());
}

TEST_CASE("a form that the process does not cover is no answer") {
  for (const auto* words :
       {"pumpkin puree", "mashed pumpkin", "pureed butternut squash", "mashed sweet potatoes"}) {
    CAPTURE(words);
    const auto result = look({.words = words});
    CHECK(result.answers.empty());
    REQUIRE(!result.products.front().left_out.empty());
    CHECK(result.products.front().left_out.front().find("does not cover") != std::string::npos);
  }
  CHECK(!look({.words = "cubed pumpkin"}).answers.empty());
  CHECK(!look({.words = "crushed tomatoes"}).answers.empty());
  CHECK(!look({.words = "peach halves"}).answers.empty());
}

TEST_CASE("steam takes the boiling-water row of an acid product up to 45 minutes") {
  const auto peaches =
      look({.words = "peaches-halved-or-sliced", .jar = "quart", .pack = "raw", .altitude = feet(7000)});
  CHECK(peaches.answers.at(0).minutes == 45);
  CHECK(peaches.answers.at(0).steam);
  const auto figs = look({.words = "figs", .jar = "quart", .altitude = feet(0)});
  CHECK(figs.answers.at(0).minutes == 50);
  CHECK(!figs.answers.at(0).steam);
  const auto steam = look({.words = "figs", .jar = "quart", .method = "steam canner", .altitude = feet(0)});
  CHECK(steam.answers.empty());
  CHECK(steam.products[0].left_out[0].find("45 minutes") != std::string::npos);
  const auto beans = look({.words = "beans-snap-and-italian-pieces", .method = "steam canner"});
  CHECK(beans.answers.empty());
}

TEST_CASE("the kitchen gives the altitude and the canners") {
  auto kitchen =
      Kitchen::read("kitchen.yaml",
                    "kitchen: Ridge road\naltitude: 5,280 ft\ncanners:\n  - {kind: pressure canner, gauge: "
                    "dial, holds: 7 quart}\n");
  REQUIRE(std::holds_alternative<Kitchen>(kitchen));
  const auto result =
      look({.words = "tomatoes-crushed", .jar = "pint", .kitchen = std::get<Kitchen>(kitchen)});
  REQUIRE(result.answers.size() == 2);
  CHECK(result.answers[0].method == "pressure-dial");
  CHECK(result.answers[0].psi == 8);
  CHECK(result.answers[1].psi == 13);
  CHECK(result.altitude == feet(5280));
}

TEST_CASE("a steam canner alone leaves the rows that steam may serve") {
  auto kitchen = Kitchen::read(
      "kitchen.yaml", "kitchen: Ridge road\naltitude: 1,200 ft\ncanners:\n  - {kind: steam canner}\n");
  REQUIRE(std::holds_alternative<Kitchen>(kitchen));
  const auto& road = std::get<Kitchen>(kitchen);
  const auto peaches =
      look({.words = "peaches-halved-or-sliced", .jar = "quart", .pack = "hot", .kitchen = road});
  REQUIRE(peaches.answers.size() == 1);
  CHECK(peaches.answers[0].minutes == 30);
  CHECK(peaches.answers[0].steam);
  CHECK(look({.words = "figs", .jar = "quart", .kitchen = road}).answers.empty());
  CHECK(look({.words = "beans-snap-and-italian-pieces", .kitchen = road}).answers.empty());
  // A method that is asked for counts, whatever the kitchen has.
  CHECK(look({.words = "figs", .jar = "quart", .method = "boiling water", .kitchen = road}).answers.size() ==
        1);
}

TEST_CASE("what rests on memory says so") {
  const auto kraut = look({.words = "sauerkraut", .jar = "pint", .pack = "hot", .altitude = feet(5000)});
  REQUIRE(kraut.answers.size() == 1);
  CHECK(kraut.answers[0].read == Read::memory);
  CHECK(kraut.answers[0].notes[0].find("memory") != std::string::npos);
  const auto low = look({.words = "sauerkraut", .jar = "pint", .pack = "hot", .altitude = feet(500)});
  CHECK(low.answers[0].read == Read::reprint);
}
