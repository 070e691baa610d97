#include "reading/altitude.hpp"

#include <doctest/doctest.h>

#include "card.hpp"

namespace sealworthy::reading {
namespace {

ReadCard with_process(const std::string& process, const Settings& settings = {}) {
  return read_card_text("recipe: Pears\ningredients: [10 lb pears]\njars: pint\nprocess: " + process + "\n",
                        settings);
}

std::vector<int> feet_of(const std::vector<Altitude>& heights) {
  std::vector<int> feet;
  for (const Altitude& height : heights) feet.push_back(static_cast<int>(in_feet(height) + 0.5));
  return feet;
}

Settings at(double low, double high) {
  Settings settings;
  settings.altitude = Interval<Altitude>{feet(low), feet(high)};
  return settings;
}

TEST_CASE("nothing known") { CHECK(with_process("{method: boiling water}")->altitude.judged.empty()); }

TEST_CASE("the card's own range is judged at its worse end") {
  auto card = with_process("{method: boiling water, altitude: 0-1000 ft}");
  CHECK(feet_of(card->altitude.judged) == std::vector{1000});
  CHECK(card->altitude.card->text == "0-1000 ft");
  CHECK(feet_of(with_process("{method: boiling water, altitude: above 6000 ft}")->altitude.judged) ==
        std::vector{10000});
}

TEST_CASE("the option goes before the kitchen") {
  recipe::Kitchen kitchen;
  kitchen.altitude =
      recipe::Placed<Interval<Altitude>>{Interval<Altitude>::exactly(feet(5280)), {2, 11}, "5,280 ft"};
  Settings settings;
  settings.kitchen = &kitchen;
  auto own = with_process("{method: boiling water}", settings);
  CHECK(feet_of(own->altitude.judged) == std::vector{5280});
  CHECK_FALSE(own->altitude.from_option);
  settings.altitude = Interval<Altitude>{feet(0), feet(3000)};
  auto option = with_process("{method: boiling water}", settings);
  CHECK(feet_of(option->altitude.judged) == std::vector{3000});
  CHECK(option->altitude.from_option);
}

TEST_CASE("kitchen and card are both judged, the higher first") {
  CHECK(feet_of(
            with_process("{method: boiling water, altitude: 0-1000 ft}", at(5280, 5280))->jars[0].heights) ==
        std::vector{5280, 1000});
  CHECK(feet_of(
            with_process("{method: boiling water, altitude: 1001-3000 ft}", at(500, 500))->jars[0].heights) ==
        std::vector{3000, 500});
  CHECK(feet_of(with_process("{method: boiling water, altitude: 500 ft}", at(500, 500))->jars[0].heights) ==
        std::vector{500});
}

TEST_CASE("of processes for several altitudes only the one meant for the kitchen is judged there") {
  const char* processes =
      "[{method: boiling water, time: 20 min, altitude: 0-1000 ft},"
      " {method: boiling water, time: 30 min, altitude: 1001-6000 ft}]";
  auto card = with_process(processes, at(5280, 5280));
  REQUIRE(card->jars.size() == 2);
  CHECK(feet_of(card->jars[0].heights) == std::vector{1000});
  CHECK(feet_of(card->jars[1].heights) == std::vector{6000, 5280});
  // Above them all, the one that reaches highest is judged at the kitchen's altitude.
  auto above = with_process(processes, at(7000, 7000));
  CHECK(feet_of(above->jars[0].heights) == std::vector{1000});
  CHECK(feet_of(above->jars[1].heights) == std::vector{7000, 6000});
}

}  // namespace
}  // namespace sealworthy::reading
