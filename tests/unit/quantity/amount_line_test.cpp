#include <doctest/doctest.h>

#include <array>
#include <string>

#include "amount_cases.hpp"
#include "quantity/amount.hpp"

using namespace sealworthy;
using namespace sealworthy::quantity;
using test::bytes;
using test::Case;
using test::check_all;

namespace {

double millilitres_of(std::string_view line, Units units) {
  const auto amount = read_amount(line, units);
  REQUIRE(amount);
  const auto* volume = std::get_if<Interval<Volume>>(&amount->measure);
  REQUIRE(volume != nullptr);
  REQUIRE(volume->exact());
  return in_millilitres(volume->low);
}

}  // namespace

TEST_CASE("a unit noun behind the name") {
  struct Behind {
    std::string_view line, unit, noun;
  };
  constexpr std::array cases{
      Behind{"6 garlic cloves, crushed", "clove", "cloves"},
      Behind{"2 large garlic cloves", "clove", "cloves"},
      Behind{"6 parsley sprigs", "sprig", "sprigs"},
      Behind{"3 to 4 fresh thyme sprigs", "sprig", "sprigs"},
      Behind{"2 celery stalks", "stalk", "stalks"},
      Behind{"3 celery sticks", "stick", "sticks"},
      Behind{"2 celery ribs", "rib", "ribs"},
      Behind{"6 lime wedges", "wedge", "wedges"},
      Behind{"4 garlic heads", "head", "heads"},
      Behind{"4 bay leaves", "", ""},
      Behind{"1 cinnamon stick", "", ""},
      Behind{"2 vanilla pods", "", ""},
      Behind{"4 baby gem lettuce heads", "", ""},
      Behind{"3 pork ribs", "", ""},
      Behind{"2 onions and 4 garlic cloves", "", ""},
      Behind{"2 onions in slices", "", ""},
  };
  for (const auto& row : cases) {
    CAPTURE(row.line);
    const auto amount = read_amount(row.line, Units::us);
    REQUIRE(amount);
    CHECK(amount->unit == row.unit);
    CHECK(row.line.substr(amount->noun_begin, amount->noun_end - amount->noun_begin) == row.noun);
  }
}

TEST_CASE("measures without a figure") {
  struct Pinch {
    std::string_view line, unit;
  };
  constexpr std::array cases{Pinch{"pinch of salt", "pinch"},        Pinch{"a pinch of salt", "pinch"},
                             Pinch{"generous pinch salt", "pinch"},  Pinch{"a dash of sauce", "dash"},
                             Pinch{"small handful dill", "handful"}, Pinch{"sprig fresh tarragon", "sprig"},
                             Pinch{"strips of lemon peel", "strip"}, Pinch{"Large Stalk of Celery", "stalk"}};
  for (const auto& row : cases) {
    CAPTURE(row.line);
    const auto amount = read_amount(row.line, Units::us);
    REQUIRE(amount);
    CHECK(amount->unit == row.unit);
    CHECK_FALSE(amount->stated_any());
    CHECK(amount->measure.index() == 0);
  }
  const auto two = read_amount("2 pinches salt", Units::us);
  REQUIRE(two);
  CHECK(two->stated.low == 2);
  CHECK(two->measure.index() == 0);
  CHECK_FALSE(read_amount("stick cinnamon", Units::us));
  CHECK_FALSE(read_amount("leaf lettuce", Units::us));
}

TEST_CASE("amounts further on in a line") {
  check_all(
      std::array{
          Case{"tomatoes, 5 lb", 5, 5, "lb"},
          Case{"Salt (2 tsp)", 2, 2, "tsp"},
          Case{"Bottled Lemon Juice: 2 tbsp per quart", 2, 2, "tbsp"},
          Case{"Salt 3.5 tsp pickling", 3.5, 3.5, "tsp"},
          Case{"Watermelon (medium size), 1,", 1, 1, ""},
          Case{"Vinegar, 1 quart,", 1, 1, "quart"},
          Case{"Granulated sugar | 1 cup | 7 cups |", 1, 1, "cup"},
          Case{"Optional: 2-3 hot peppers", 2, 3, ""},
          Case{"Garlic cloves (4 per jar)", 4, 4, ""},
          Case{"Juice of 2 lemons", 2, 2, ""},
          Case{"5% white vinegar, 2 cups", 2, 2, "cup"},
          Case{"5-spice powder, 1 tsp", 1, 1, "tsp"},
          Case{"Juice of half a lemon", 0.5, 0.5, ""},
          Case{"Water to cover (2 to 3 quarts)", 2, 3, "quart"},
      },
      Units::us, true);
  CHECK(read_amount("Tomatoes (about 3 lbs. per quart)", Units::us, true)->about);
  for (const std::string_view line :
       {"tomatoes, cut in 4 pieces", "beans in 1-inch lengths", "pears (see step 1)",
        "berries, crushed to yield 5 cups", "salt", "carrots, 1/4 inch thick"}) {
    CAPTURE(line);
    CHECK_FALSE(read_amount(line, Units::us, true).has_value());
  }
  CHECK_FALSE(read_amount("tomatoes, 5 lb", Units::us).has_value());
}

TEST_CASE("list bullets are passed, their bytes left out") {
  for (const std::string_view line : {"- 2 cups", "• 2 cups", "•2 cups", "* 2 cups", "▢2 cups", "– 2 cups"}) {
    CAPTURE(line);
    const auto amount = read_amount(line, Units::us);
    REQUIRE(amount);
    CHECK(bytes(line, *amount) == "2 cups");
  }
}

TEST_CASE("the kitchen decides what a bare measure is") {
  CHECK(millilitres_of("1 cup", Units::us) == doctest::Approx(236.5882365));
  CHECK(millilitres_of("1 cup", Units::metric) == doctest::Approx(250));
  CHECK(millilitres_of("1 cup", Units::imperial) == doctest::Approx(284.130625));
  CHECK(millilitres_of("1 pint", Units::imperial) == doctest::Approx(568.26125));
  CHECK(millilitres_of("1 tbsp", Units::metric) == doctest::Approx(15));
  CHECK(millilitres_of("1 tsp", Units::imperial) == doctest::Approx(5));
  CHECK(millilitres_of("1 imperial pint", Units::us) == doctest::Approx(568.26125));
  CHECK(millilitres_of("1 US cup", Units::metric) == doctest::Approx(236.5882365));
  CHECK(millilitres_of("1 metric cup", Units::us) == doctest::Approx(250));
  const auto pint = read_amount("1 pint", Units::metric);
  REQUIRE(pint);
  const auto volume = std::get<Interval<Volume>>(pint->measure);
  CHECK(in_millilitres(volume.low) == doctest::Approx(473.176473));
  CHECK(in_millilitres(volume.high) == doctest::Approx(568.26125));
  CHECK(pint->stated.exact());
}

TEST_CASE("the same amount said again") {
  struct Again {
    std::string_view line;
    double value;
    std::string_view unit, bytes;
  };
  constexpr std::array cases{
      Again{"650g/1 lb 8 oz fish", 1.5, "lb", "/1 lb 8 oz"},
      Again{"1 cup (250 mL) peppers", 250, "ml", "(250 mL)"},
      Again{"8 lbs. (about 25) med. tomatoes", 25, "", "(about 25)"},
      Again{"5 1/2 cups or 3 1/4 lb berries", 3.25, "lb", "or 3 1/4 lb"},
      Again{"24 c. or approximately 12 lb. tomatoes", 12, "lb", "or approximately 12 lb."},
      Again{"1 quart, about 2 lb beans", 2, "lb", ", about 2 lb"},
  };
  for (const auto& row : cases) {
    CAPTURE(row.line);
    const auto first = read_amount(row.line, Units::us);
    REQUIRE(first);
    const auto again = read_equal(row.line, first->end, Units::us);
    REQUIRE(again);
    CHECK(again->stated.low == doctest::Approx(row.value));
    CHECK(again->unit == row.unit);
    CHECK(bytes(row.line, *again) == row.bytes);
  }
  for (const std::string_view line :
       {"1 cup (chopped) onions", "2 cups or 2 shallots", "2 cups sugar", "2 lb, peeled"}) {
    CAPTURE(line);
    CHECK_FALSE(read_equal(line, read_amount(line, Units::us)->end, Units::us));
  }
}

TEST_CASE("amounts that can't be meant") {
  for (const std::string_view line : {"-5 cups vinegar", "−1/2 cup vinegar", "0 cups sugar", "6000 lb beans",
                                      "2000 gallons brine", "200000 onions", "1234567890123456 cups"}) {
    CAPTURE(line);
    const auto error = refuse_amount(line, Units::us);
    REQUIRE(error);
    CHECK(error->message.find('"') == 0);
    CHECK_FALSE(error->suggestion.empty());
  }
  for (const std::string_view line :
       {"5 cups vinegar", "- 5 cups vinegar", "1 bushel apples", "0-1/2 cup sugar", "salt", ""})
    CHECK_FALSE(refuse_amount(line, Units::us));
}
