// Reading the tables: bands, jars, packs.

#include "tested/tables.hpp"

#include <algorithm>
#include <cmath>

#include "at_hand.hpp"

using namespace sealworthy;
using namespace sealworthy::tested;
using recipe::Pack;

namespace {

/// The time in minutes that a table asks for; 0: no row, -1: too high.
int time(const Product& product, TableMethod method, std::optional<Pack> pack, JarIndex jar,
         Altitude altitude, std::string_view part = {}) {
  const auto choices = tables().needed(product, method, pack, jar, altitude, part);
  if (choices.empty()) return 0;
  return choices.front().step == nullptr
             ? -1
             : static_cast<int>(std::lround(in_minutes(choices.front().step->time)));
}

}  // namespace

TEST_CASE("the upper figure belongs to the band") {
  const auto& peaches = product("peaches-halved-or-sliced");
  const auto at = [&](double ft) {
    return time(peaches, TableMethod::boiling_water, Pack::hot, jar("pint"), feet(ft));
  };
  CHECK(at(-50) == 20);
  CHECK(at(0) == 20);
  CHECK(at(1000) == 20);
  CHECK(at(1000.5) == 25);
  CHECK(at(1001) == 25);
  CHECK(at(3000) == 25);
  CHECK(at(3001) == 30);
  CHECK(at(6000) == 30);
  CHECK(at(6001) == 35);
  CHECK(at(10000) == 35);
  CHECK(at(10001) == -1);
  CHECK(time(peaches, TableMethod::boiling_water, Pack::hot, jar("pint"), metres(304.8)) == 20);
}

TEST_CASE("a dial gauge has no row above its highest band, a weighted gauge has") {
  const auto& beans = product("beans-snap-and-italian-pieces");
  const auto psi = [&](TableMethod method, double ft) {
    const auto choices = tables().needed(beans, method, Pack::raw, jar("quart"), feet(ft));
    REQUIRE(choices.size() == 1);
    return choices[0].step == nullptr ? 0 : std::lround(in_psi(*choices[0].step->pressure));
  };
  CHECK(psi(TableMethod::pressure_dial, 2000) == 11);
  CHECK(psi(TableMethod::pressure_dial, 2001) == 12);
  CHECK(psi(TableMethod::pressure_dial, 8000) == 14);
  CHECK(psi(TableMethod::pressure_dial, 8001) == 0);
  CHECK(psi(TableMethod::pressure_weighted, 1000) == 10);
  CHECK(psi(TableMethod::pressure_weighted, 1001) == 15);
  CHECK(psi(TableMethod::pressure_weighted, 9000) == 15);
}

TEST_CASE("what extension bodies print above the tables is at hand") {
  const auto& beans = product("beans-snap-and-italian-pieces");
  const auto choices =
      tables().needed(beans, TableMethod::pressure_dial, Pack::raw, jar("quart"), feet(9000));
  REQUIRE(choices.size() == 1);
  const auto* advice = tables().advice(*choices[0].option, TableMethod::pressure_dial, feet(9000));
  REQUIRE(advice != nullptr);
  CHECK(advice->pressure == psi_gauge(15));
  CHECK(tables().advice(*choices[0].option, TableMethod::pressure_dial, feet(8000)) == nullptr);
  CHECK(tables().advice(*choices[0].option, TableMethod::pressure_dial, feet(10001)) == nullptr);
  // 15 psi goes with tables that begin at 11, not with those that begin at 6.
  const auto& apples = product("apples-sliced");
  const auto low = tables().needed(apples, TableMethod::pressure_dial, Pack::hot, jar("pint"), feet(9000));
  REQUIRE(low.size() == 1);
  CHECK(tables().advice(*low[0].option, TableMethod::pressure_dial, feet(9000)) == nullptr);
  const auto boiling =
      tables().needed(apples, TableMethod::boiling_water, Pack::hot, jar("pint"), feet(9000));
  const auto* longer = tables().advice(*boiling.at(0).option, TableMethod::boiling_water, feet(9000));
  REQUIRE(longer != nullptr);
  CHECK(longer->added == minutes(5));
}

TEST_CASE("jars count as sizes") {
  const auto id = [](std::string_view words) {
    return tables().jars()[static_cast<std::size_t>(jar(words))].id;
  };
  CHECK(id("pint") == "pint");
  CHECK(id("16 oz") == "pint");
  CHECK(id("quarts") == "quart");
  CHECK(id("32-oz") == "quart");
  CHECK(id("4 oz") == "quarter-pint");
  CHECK(id("8 oz jelly jars") == "half-pint");
  CHECK(id("12-oz") == "12-oz");
  CHECK(id("24 oz") == "pint-and-half");
  CHECK(id("28-oz") == "28-oz");
  CHECK(id("half gallon") == "half-gallon");
  CHECK(id("250 ml") == "half-pint");
  CHECK(id("500 ml") == "pint");
  CHECK(id("1-litre") == "quart");
  CHECK(id("375 ml") == "pint");  // a little over 12 oz
  CHECK(id("10 oz") == "12-oz");
  CHECK(id("imperial pint") == "pint-and-half");  // 568 mL is 19.2 US fluid ounces
  CHECK(id("imperial quart") == "half-gallon");
  const auto gallon = quantity::read_jar("1 gallon");
  REQUIRE(std::holds_alternative<quantity::JarText>(gallon));
  CHECK(!tables().jar_size(std::get<quantity::JarText>(gallon)));
}

TEST_CASE("a jar takes its own row, else the next larger, never a smaller one") {
  const auto& beans = product("beans-snap-and-italian-pieces");
  const auto dial = [&](std::string_view words) {
    return time(beans, TableMethod::pressure_dial, Pack::raw, jar(words), feet(0));
  };
  CHECK(dial("4 oz") == 20);
  CHECK(dial("half-pint") == 20);
  CHECK(dial("12-oz") == 20);
  CHECK(dial("pint") == 20);
  CHECK(dial("24 oz") == 25);
  CHECK(dial("28 oz") == 25);
  CHECK(dial("quart") == 25);
  CHECK(dial("half gallon") == 0);
  const auto needed = [&](std::string_view words) {
    return tables()
        .needed(beans, TableMethod::pressure_dial, Pack::raw, jar(words), feet(0))
        .at(0)
        .next_larger;
  };
  CHECK(needed("half-pint"));
  CHECK(!needed("pint"));
  CHECK(needed("24 oz"));

  // A row of its own wins: clams have one for half-pints.
  const auto& clams = product("clams-whole");
  CHECK(time(clams, TableMethod::pressure_dial, Pack::hot, jar("half-pint"), feet(0)) == 60);
  CHECK(time(clams, TableMethod::pressure_dial, Pack::hot, jar("pint"), feet(0)) == 70);
  CHECK(time(clams, TableMethod::pressure_dial, Pack::hot, jar("quart"), feet(0)) == 0);
  // Half-gallons are for two juices.
  CHECK(time(product("apple-juice"), TableMethod::boiling_water, Pack::hot, jar("half gallon"), feet(0)) ==
        10);
  // A tabled 12-oz row counts for 12-oz jars, not for smaller ones only.
  CHECK(time(product("pickled-asparagus"), TableMethod::boiling_water, Pack::raw, jar("12 oz"), feet(0)) ==
        10);
}

TEST_CASE("packs and parts choose among the rows") {
  const auto& peaches = product("peaches-halved-or-sliced");
  CHECK(time(peaches, TableMethod::boiling_water, Pack::hot, jar("quart"), feet(0)) == 25);
  CHECK(time(peaches, TableMethod::boiling_water, Pack::raw, jar("quart"), feet(0)) == 30);
  CHECK(tables().needed(peaches, TableMethod::boiling_water, std::nullopt, jar("quart"), feet(0)).size() ==
        2);
  const auto& beets = product("beets-whole-cubed-or-sliced");
  CHECK(time(beets, TableMethod::pressure_dial, Pack::raw, jar("quart"), feet(0)) == 0);
  CHECK(time(beets, TableMethod::boiling_water, Pack::hot, jar("quart"), feet(0)) == 0);
  // Oysters: the source names no pack, so the row holds for either.
  CHECK(time(product("oysters"), TableMethod::pressure_dial, Pack::raw, jar("pint"), feet(0)) == 75);
  const auto& soups = product("soups");
  CHECK(time(soups, TableMethod::pressure_dial, Pack::hot, jar("pint"), feet(0), "soup without seafood") ==
        60);
  CHECK(time(soups, TableMethod::pressure_dial, Pack::hot, jar("pint"), feet(0), "soup with any seafood") ==
        100);
}

TEST_CASE("several pairs of time and pressure, one of them ruled out above a height") {
  const auto& tomatoes = product("tomatoes-whole-or-halved-in-water");
  const auto low =
      tables().needed(tomatoes, TableMethod::pressure_weighted, Pack::hot, jar("quart"), feet(500));
  REQUIRE(low.size() == 3);
  CHECK(low[0].step->time == minutes(15));
  CHECK(low[2].step->time == minutes(1));
  CHECK(low[2].step->pressure == psi_gauge(15));
  const auto high =
      tables().needed(tomatoes, TableMethod::pressure_weighted, Pack::hot, jar("quart"), feet(5000));
  REQUIRE(high.size() == 3);
  CHECK(!high[1].step->not_recommended);
  CHECK(high[2].step->not_recommended);
  CHECK(!high[2].step->pressure);
}

TEST_CASE("products are found by id and by food") {
  CHECK(tables().find("no-such-product") == nullptr);
  CHECK(tables().nearest_id("apple-buter") == "apple-butter");
  const auto with = tables().with_food("green-bean");
  CHECK(std::find(with.begin(), with.end(), tables().find("beans-snap-and-italian-pieces")) != with.end());
  CHECK(std::find(with.begin(), with.end(), tables().find("mixed-vegetables")) != with.end());
  CHECK(std::find(with.begin(), with.end(), tables().find("apple-butter")) == with.end());
  CHECK(tables().with_food("no-such-food").empty());
}
