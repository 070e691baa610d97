/// Changes of a tested formula that publications allow or forbid, as worked examples.

#include <doctest/doctest.h>

#include <algorithm>

#include "tested/compare.hpp"
#include "unit/reading/identities.hpp"

using namespace sealworthy;
using State = tested::LineComparison::State;

namespace {

tested::FormulaComparison against(std::string_view id, const std::vector<std::string>& lines) {
  const auto* product = cards::known().tables.find(id);
  REQUIRE_MESSAGE(product != nullptr, id);
  return tested::compare(*product, cards::write("Test", lines, {})->reading);
}

State state_of(const tested::FormulaComparison& compared, std::string_view role_or_food) {
  for (const auto& line : compared.lines)
    if (line.line->role == role_or_food ||
        std::find(line.line->foods.begin(), line.line->foods.end(), role_or_food) != line.line->foods.end())
      return line.state;
  FAIL("no such line");
  return State::unknown;
}

const std::vector<std::string> chile_salsa{"10 cups peeled, cored, chopped tomatoes",
                                           "6 cups seeded, chopped chile peppers",
                                           "4 cups chopped onions",
                                           "1 cup vinegar (5%)",
                                           "3 tsp salt",
                                           "1/2 tsp pepper"};

std::vector<std::string> with_line(std::vector<std::string> lines, std::size_t line,
                                   const std::string& text) {
  lines.at(line) = text;
  return lines;
}

}  // namespace

TEST_CASE("bottled lemon juice may replace vinegar, cup for cup, never the other way round") {
  // USDA Complete Guide (2015), Guide 3, Salsa recipes
  CHECK(against("chile-salsa-ii", chile_salsa).held());
  const auto lemon = against("chile-salsa-ii", with_line(chile_salsa, 3, "1 cup bottled lemon juice"));
  CHECK(lemon.held());
  CHECK(state_of(lemon, "acid") == State::allowed);
  CHECK(against("chile-salsa-ii", with_line(chile_salsa, 3, "1 1/2 cups bottled lemon juice")).held());
  CHECK_FALSE(against("chile-salsa-ii", with_line(chile_salsa, 3, "3/4 cup bottled lemon juice")).held());
  CHECK_FALSE(against("choice-salsa", {"6 cups peeled, cored, seeded, chopped tomatoes",
                                       "9 cups diced onions and bell peppers", "1 1/2 cups vinegar (5%)",
                                       "3 tsp canning salt"})
                  .held());
}

TEST_CASE("part of the vinegar may be lemon juice where the total stays") {
  auto lines = with_line(chile_salsa, 3, "1/2 cup vinegar (5%)");
  lines.emplace_back("1/2 cup bottled lemon juice");
  CHECK(against("chile-salsa-ii", lines).held());
  lines.back() = "1/4 cup bottled lemon juice";
  const auto less = against("chile-salsa-ii", lines);
  CHECK_FALSE(less.held());
  CHECK(state_of(less, "acid") == State::less);
}

TEST_CASE("one pepper may replace another if the total of all peppers stays the same") {
  // USDA Complete Guide (2015), Guide 3, Salsa recipes; University of California Master Food Preservers
  auto lines = with_line(chile_salsa, 1, "3 cups chopped chile peppers");
  lines.emplace_back("3 cups chopped bell peppers");
  CHECK(against("chile-salsa-ii", lines).held());
  lines.back() = "5 cups chopped bell peppers";
  const auto more = against("chile-salsa-ii", lines);
  CHECK_FALSE(more.held());
  const auto line = std::find_if(more.lines.begin(), more.lines.end(),
                                 [](const auto& one) { return one.state == State::more; });
  REQUIRE(line != more.lines.end());
  CHECK(line->found == "8 cups in all");
  CHECK(line->needed == "6 cups in all");
}

TEST_CASE("onions may be reduced where the formula's own list does not rule it out") {
  // University of Wisconsin-Madison Extension, Safe modifications to canning recipes (2013)
  const std::vector<std::string> relish{"6 cups finely chopped onions",
                                        "3 cups finely chopped red peppers",
                                        "3 cups finely chopped green peppers",
                                        "1 1/2 cups sugar",
                                        "6 cups vinegar (5%)",
                                        "2 tbsp canning salt"};
  CHECK(against("pickled-pepper-onion-relish", relish).held());
  CHECK(against("pickled-pepper-onion-relish", with_line(relish, 1, "2 cups finely chopped red peppers"))
            .held());
  // Chile salsa's own list forbids other proportions: not held, but no more than that.
  const auto own = against("chile-salsa-ii", with_line(chile_salsa, 2, "2 cups chopped onions"));
  CHECK_FALSE(own.held());
  CHECK(state_of(own, "onion") == State::less);
}

TEST_CASE("a range is judged at its worse end") {
  CHECK(state_of(against("chile-salsa-ii", with_line(chile_salsa, 3, "1/2 to 1 cup vinegar (5%)")), "acid") ==
        State::less);
  CHECK(state_of(against("chile-salsa-ii", with_line(chile_salsa, 2, "4 to 5 cups chopped onions")),
                 "onion") == State::more);
}

TEST_CASE("water is seen where it thins the acid of a formula") {
  auto lines = chile_salsa;
  lines.emplace_back("2 cups water");
  const auto thinned = against("chile-salsa-ii", lines);
  REQUIRE(thinned.added.size() == 1);
  CHECK(thinned.added.front().water);
  CHECK_FALSE(thinned.held());
  lines.back() = "2 cups water, for soaking";
  CHECK(against("chile-salsa-ii", lines).held());
}

TEST_CASE("a food that a line names beside one of the formula's is seen") {
  const auto corn =
      against("chile-salsa-ii", with_line(chile_salsa, 1, "6 cups chopped chile peppers and corn"));
  CHECK_FALSE(corn.held());
  REQUIRE(corn.added.size() == 1);
  CHECK(corn.added.front().name == "corn");
  CHECK_FALSE(
      against("chile-salsa-ii", with_line(chile_salsa, 2, "4 cups chopped onions and black beans")).held());
  CHECK_FALSE(against("chile-salsa-ii", with_line(chile_salsa, 3, "1 cup vinegar and water")).held());
  CHECK_FALSE(
      against("chile-salsa-ii", with_line(chile_salsa, 3, "1 cup bottled lemon juice and water")).held());
}

TEST_CASE("an alternative that the change does not name rules it out") {
  CHECK_FALSE(
      against("chile-salsa-ii", with_line(chile_salsa, 1, "6 cups chopped chile peppers or corn")).held());
  CHECK_FALSE(
      against("chile-salsa-ii", with_line(chile_salsa, 3, "1 cup bottled lemon juice or water")).held());
}

TEST_CASE("a total of an acid and something else does not tell the acid") {
  const std::vector<std::string> beans{"4 lb fresh tender green beans",
                                       "8 heads fresh dill",
                                       "8 cloves garlic",
                                       "1/2 cup canning salt",
                                       "8 cups vinegar (5%) and water",
                                       "1 tsp hot red pepper flakes"};
  const auto brine = against("pickled-dilled-beans", beans);
  CHECK_FALSE(brine.held());
  CHECK(state_of(brine, "acid") == State::unknown);
}

TEST_CASE("a formula is found by its foods where one was swapped as a publication allows") {
  // USDA Complete Guide (2015), Guide 3, Salsa recipes: lemon juice for vinegar, cup for cup.
  const auto found = [](const std::string& acid) {
    const auto card = cards::write("Hot salsa", with_line(chile_salsa, 3, acid), {});
    const auto& match = card->reading.match;
    return match.product != nullptr && !match.doubtful ? match.product->id : std::string();
  };
  CHECK(found("1 cup vinegar (5%)") == "chile-salsa-ii");
  CHECK(found("1 cup bottled lemon juice") == "chile-salsa-ii");
  CHECK(found("3/4 cup bottled lemon juice") != "chile-salsa-ii");
  CHECK(found("1 cup water").empty());
}
