#include <doctest/doctest.h>

#include <algorithm>
#include <sealworthy/plan.hpp>

using namespace sealworthy;
using doctest::Approx;

namespace {

const Checker& checker() {
  static const Checker made = Checker::builtin();
  return made;
}

/// USDA Complete Guide (2015), Guide 3, Tomatoes, crushed: an average of 14 lb is needed per canner load of 9
/// pints; a bushel weighs 53 lb and yields 17 to 20 quarts; 1 tablespoon of bottled lemon juice per pint.
const std::string tomatoes = R"(recipe: Hollow Farm tomatoes
ingredients:
  - 14 lb tomatoes, peeled, cored, crushed
  - each jar: 1 tablespoon bottled lemon juice
pack: hot
jars: pint
headspace: 1/2 inch
process: {method: boiling water, time: 40 minutes, altitude: "1,001-3,000 ft"}
steps:
  - Crush the first sixth of the tomatoes in the pot, add the others and boil gently 5 minutes.
)";

/// USDA Complete Guide (2015), Guide 4, Beans, snap: 9 lb for 9 pints, 14 lb for 7 quarts.
const std::string beans = R"(recipe: Hollow Farm beans
ingredients:
  - 9 lb green beans, trimmed, cut in 1-inch pieces
  - boiling water
pack: raw
jars: pint
headspace: 1 inch
process: {method: pressure canner, gauge: dial, pressure: 12 psi, time: 20 minutes, altitude: "2,001-4,000 ft"}
)";

PlanOptions at_2400(std::string jars, std::string have = {}) {
  PlanOptions options;
  options.check.altitude = Interval<Altitude>::exactly(feet(2400));
  options.jars = std::move(jars);
  options.have = std::move(have);
  return options;
}

std::variant<Plan, std::vector<InputError>> made_of(const std::string& text, const PlanOptions& options) {
  const std::vector<PlanCards> cards{{"card.yaml", text}};
  return make_plan(checker(), cards, options);
}

Plan plan_of(const std::string& text, const PlanOptions& options) {
  auto made = made_of(text, options);
  if (const auto* errors = std::get_if<std::vector<InputError>>(&made)) FAIL(errors->front().message);
  return std::get<Plan>(std::move(made));
}

InputError error_of(const std::string& text, const PlanOptions& options) {
  auto made = made_of(text, options);
  REQUIRE(std::holds_alternative<std::vector<InputError>>(made));
  return std::get<std::vector<InputError>>(made).front();
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

Kitchen kitchen_of(const std::string& text) {
  auto read = checker().read_kitchen("kitchen.yaml", text);
  if (const auto* error = std::get_if<InputError>(&read)) FAIL(error->message);
  return std::get<Kitchen>(std::move(read));
}

}  // namespace

TEST_CASE("the published yield tells how many jars a card makes") {
  const Plan plan = plan_of(tomatoes, at_2400(""));
  REQUIRE(plan.cards.size() == 1);
  CHECK(plan.cards[0].jars == 9);
  CHECK(plan.cards[0].factor == 1);
  CHECK(plan.cards[0].minutes == 40);
  CHECK_FALSE(plan.cards[0].psi);
  CHECK(plan.altitude == "2,400 ft");
}

TEST_CASE("28 pints: amounts, acid in all, loads of nine") {
  const Plan plan = plan_of(tomatoes, at_2400("28"));
  const auto& card = plan.cards[0];
  CHECK(card.jars == 28);
  CHECK(card.factor == Approx(28.0 / 9));
  // 28/9 of 14 lb is 43.56 lb.
  CHECK(card.lines[0].text == "43 1/2 lb tomatoes, peeled, cored, crushed");
  CHECK(card.lines[1].in_all == "28 tbsp");
  CHECK(card.buy.size() == 2);
  CHECK(card.buy[0].find("43 1/2 lb of tomato") != std::string::npos);
  // 28 pints are 14 quarts: 14/20 to 14/17 bushel.
  CHECK(card.buy[1].find("0.7 to 0.8 bushels") == 0);
  REQUIRE(plan.loads.size() == 4);  // 9 pints a load: common practice
  CHECK(plan.loads[0].jars[0].count == 9);
  CHECK(plan.loads[3].jars[0].count == 1);
  CHECK(plan.loads[3].starts_shortest == Approx(plan.loads[0].shortest + 2 * plan.loads[1].shortest));
  CHECK(plan.longest > plan.shortest);
  CHECK(std::any_of(plan.reminders.begin(), plan.reminders.end(),
                    [](const auto& r) { return r.find("1 to 2 inches of water") != std::string::npos; }));
}

TEST_CASE("what is at hand fills so many jars") {
  CHECK(plan_of(tomatoes, at_2400("", "30 lb tomatoes")).cards[0].jars == 19);  // 30 / 14 * 9 = 19.3
  CHECK(plan_of(beans, at_2400("", "5 lb green beans")).cards[0].jars == 5);
  CHECK(error_of(tomatoes, at_2400("", "30 lb peaches")).message.find("no peaches") != std::string::npos);
  CHECK(error_of(tomatoes, at_2400("", "tomatoes")).path == "--have");
  CHECK(error_of(tomatoes, at_2400("", "1 oz tomatoes")).message.find("one jar") != std::string::npos);
  CHECK(error_of(tomatoes, at_2400("9", "9 lb tomatoes")).path == "--have");
}

TEST_CASE("--jars that mean nothing are refused") {
  for (const std::string wrong : {"0", "-3", "many", "0 pints", "2 to 3 pints", "99999"}) {
    CAPTURE(wrong);
    CHECK(error_of(tomatoes, at_2400(wrong)).path == "--jars");
  }
  CHECK(error_of(tomatoes, at_2400("7 quarts")).message.find("not for quart jars") != std::string::npos);
  CHECK(plan_of(tomatoes, at_2400("7 pints")).cards[0].jars == 7);
}

TEST_CASE("only a tested card is planned; the error says why and where") {
  const auto hazard = error_of(replaced(tomatoes, "40 minutes", "10 minutes"), at_2400("9"));
  CHECK(hazard.path == "card.yaml");
  CHECK(hazard.message.find("is hazard") != std::string::npos);
  CHECK(hazard.at.line == 8);
  const auto unproven = error_of(replaced(tomatoes, "headspace: 1/2 inch\n", ""), at_2400("9"));
  CHECK(unproven.message.find("is unproven") != std::string::npos);
  CHECK(error_of("recipe: a\n", at_2400("9")).message.find("unreadable") != std::string::npos);
}

TEST_CASE("the time line of a pressure canner: vent 10 minutes, the process, wait 10 minutes") {
  // USDA Complete Guide (2015), Guide 1, Recommended canners.
  PlanOptions options;
  options.jars = "14";
  options.check.kitchen = kitchen_of(
      "altitude: 2,400 ft\ncanners:\n  - {kind: pressure canner, gauge: dial, gauge-tested: 2026-04-18, "
      "holds: [7 quart, "
      "{jars: 14 pint, layers: 2}]}\njars: [{size: pint, count: 10}]\n");
  const Plan plan = plan_of(beans, options);
  REQUIRE(plan.loads.size() == 1);
  const auto& phases = plan.loads[0].phases;
  const auto process = std::find_if(phases.begin(), phases.end(), [](const auto& p) { return p.process; });
  REQUIRE(process != phases.end());
  CHECK(process->does == "process 20 minutes at 12 psi (dial gauge)");
  const auto vent =
      std::find_if(phases.begin(), process, [](const auto& p) { return p.does.starts_with("vent"); });
  REQUIRE(vent != process);
  CHECK(vent->shortest == 10);
  CHECK(plan.notes.empty());  // the kitchen tells what the canner holds
  CHECK(std::any_of(plan.cards[0].notes.begin(), plan.cards[0].notes.end(),
                    [](const auto& n) { return n.find("4 more are needed") != std::string::npos; }));
}

TEST_CASE("two cards share a load where jar, method and time are the same") {
  const std::vector<PlanCards> cards{{"a.yaml", beans},
                                     {"b.yaml", replaced(beans, "Farm beans", "Farm late beans")}};
  PlanOptions options = at_2400("5");
  auto made = make_plan(checker(), cards, options);
  REQUIRE(std::holds_alternative<Plan>(made));
  const auto& plan = std::get<Plan>(made);
  REQUIRE(plan.loads.size() == 2);  // 9 a load: 5 and 4, then 1
  CHECK(plan.loads[0].jars.size() == 2);
  CHECK(plan.loads[0].jars[1].count == 4);
  CHECK(plan.loads[1].jars[0].count == 1);
  options.jars = "";
  options.have = "9 lb beans";
  CHECK(std::holds_alternative<std::vector<InputError>>(make_plan(checker(), cards, options)));
}

TEST_CASE("jam is made again, never in a larger batch") {
  // USDA Complete Guide (2015), Guide 7: strawberry jam with powdered pectin, 9 to 10 half-pints... the
  // formula's own yield is used.
  const std::string jam = R"(recipe: Strawberry jam
follows: strawberry-jam-powdered-pectin
ingredients:
  - 5 1/2 cups crushed strawberries
  - 1 package powdered pectin
  - 8 cups sugar
pack: hot
jars: half-pint
headspace: 1/4 inch
process: {method: boiling water, time: 10 minutes, altitude: "1,001-6,000 ft"}
makes: 9 half-pint jars
)";
  auto made = made_of(jam, at_2400("18"));
  if (const auto* plan = std::get_if<Plan>(&made)) {
    CHECK(plan->cards[0].batches == 2);
    CHECK(plan->cards[0].factor == 1);
  } else {
    MESSAGE(std::get<std::vector<InputError>>(made).front().message);
  }
}

TEST_CASE("the syrup that a card names, by the published table") {
  // USDA Complete Guide (2015), Guide 2, and the same figures in Michigan State University's sheets
  // (msu-pfs): a light syrup for 9 pints is 5 3/4 cups water and 1 1/2 cups sugar, a medium one for 7 quarts
  // 8 1/4 and 3 3/4.
  const std::string peaches = R"(recipe: Hollow Farm peaches
ingredients: ["11 lb peaches, peeled, pitted, halved", light syrup]
pack: hot
jars: pint
headspace: 1/2 inch
process: {method: boiling water, time: 25 minutes, altitude: "1,001-3,000 ft"}
)";
  const auto notes = [&](const std::string& card, const std::string& jars) {
    std::string all;
    const auto plan = plan_of(card, at_2400(jars));
    for (const auto& note : plan.cards[0].notes) all += note + "\n";
    return all;
  };
  CHECK(notes(peaches, "9").find("Light syrup for 9 pints: about 5 3/4 cups water and 1 1/2 cups sugar (") !=
        std::string::npos);
  CHECK(notes(peaches, "18").find("about 11 1/2 cups water and 3 cups sugar") != std::string::npos);
  auto quarts = replaced(replaced(peaches, "jars: pint", "jars: quart"), "25 minutes", "30 minutes");
  quarts = replaced(replaced(quarts, "light syrup", "medium syrup"), "11 lb", "17 1/2 lb");
  CHECK(notes(quarts, "7").find("Medium syrup for 7 quarts: about 8 1/4 cups water and 3 3/4 cups sugar") !=
        std::string::npos);
  const auto any =
      replaced(peaches, "light syrup]", "water, sugar]") + "steps: [Boil the peaches in syrup.]\n";
  CHECK(
      notes(any, "9").find("very light: about 6 1/2 cups water and 3/4 cup sugar; light: about 5 3/4 cups") !=
      std::string::npos);
  CHECK(notes(replaced(peaches, "light syrup", "water"), "9").find("yrup") == std::string::npos);
}
