#include "quantity/amount.hpp"

#include <doctest/doctest.h>

#include <array>
#include <string>

#include "amount_cases.hpp"

using namespace sealworthy;
using namespace sealworthy::quantity;
using test::bytes;
using test::Case;
using test::check_all;

TEST_CASE("figures") {
  check_all(std::array{
      Case{"1 1/2 cups sugar", 1.5, 1.5, "cup"},
      Case{"1-1/2 cups sugar", 1.5, 1.5, "cup"},
      Case{"1–1/2 cups sugar", 1.5, 1.5, "cup"},
      Case{"1½ cups sugar", 1.5, 1.5, "cup"},
      Case{"1 ½ cups sugar", 1.5, 1.5, "cup"},
      Case{"1-½ cups sugar", 1.5, 1.5, "cup"},
      Case{"1 & 1/2 cups sugar", 1.5, 1.5, "cup"},
      Case{"1 and 1/2 cups sugar", 1.5, 1.5, "cup"},
      Case{"½ cup sugar", 0.5, 0.5, "cup"},
      Case{"⅓ cup sugar", 1.0 / 3, 1.0 / 3, "cup"},
      Case{"⅞ cup sugar", 0.875, 0.875, "cup"},
      Case{"1/3 cup sugar", 1.0 / 3, 1.0 / 3, "cup"},
      Case{"1⁄2 cup sugar", 0.5, 0.5, "cup"},
      Case{"1.5 cups sugar", 1.5, 1.5, "cup"},
      Case{".5 cup sugar", 0.5, 0.5, "cup"},
      Case{"1,5 kg tomatoes", 1.5, 1.5, "kg"},
      Case{"0,500 kg tomatoes", 0.5, 0.5, "kg"},
      Case{"1,25 kg tomatoes", 1.25, 1.25, "kg"},
      Case{"5,280 g tomatoes", 5280, 5280, "g"},
      Case{"1,500 ml water", 1500, 1500, "ml"},
      Case{"12,345,678 g salt", 12345678, 12345678, "g"},
      Case{"1,234.5 g salt", 1234.5, 1234.5, "g"},
      Case{"5 3/4 c. sugar", 5.75, 5.75, "cup"},
      Case{"11/2 cups sugar", 1.5, 1.5, "cup"},  // a lost space
      Case{"3/2 cups sugar", 1.5, 1.5, "cup"},   // a whole would have no digit left
      Case{"1\xC2\xA0½\xC2\xA0"
           "cups sugar",
           1.5, 1.5, "cup"},  // no-break spaces
  });
}

TEST_CASE("figures in words") {
  check_all(std::array{
      Case{"one onion", 1, 1, ""},
      Case{"twelve onions", 12, 12, ""},
      Case{"twenty-four onions", 24, 24, ""},
      Case{"a cup of sugar", 1, 1, "cup"},
      Case{"an onion", 1, 1, ""},
      Case{"half a cup sugar", 0.5, 0.5, "cup"},
      Case{"a half cup sugar", 0.5, 0.5, "cup"},
      Case{"half cup sugar", 0.5, 0.5, "cup"},
      Case{"one-half peck green tomatoes", 0.5, 0.5, "peck"},
      Case{"three-quarters cup", 0.75, 0.75, "cup"},
      Case{"two thirds of a cup", 2.0 / 3, 2.0 / 3, "cup"},
      Case{"1/3 of a bunch of radishes", 1.0 / 3, 1.0 / 3, "bunch"},
      Case{"one and a half cups", 1.5, 1.5, "cup"},
      Case{"2 and a half cups", 2.5, 2.5, "cup"},
      Case{"2 & a half cups", 2.5, 2.5, "cup"},
      Case{"one and one-half cups", 1.5, 1.5, "cup"},
      Case{"a couple of onions", 2, 2, ""},
      Case{"one dozen eggs", 1, 1, "dozen"},
      Case{"2 dozen heads of garlic", 24, 24, "head"},
  });
  const auto dozen = read_amount("one dozen eggs", Units::us);
  REQUIRE(dozen);
  CHECK(std::get<Interval<Count>>(dozen->measure).low == count(12));
  for (const std::string_view line :
       {"a little salt", "a few onions", "salt to taste", "several onions", "5% vinegar", "100 % juice",
        "5 percent vinegar", "5-spice powder", "3-bean salad", "water", ""})
    CHECK_FALSE(read_amount(line, Units::us).has_value());
}

TEST_CASE("ranges") {
  check_all(std::array{
      Case{"2-3 cups", 2, 3, "cup"},
      Case{"2–3 cups", 2, 3, "cup"},
      Case{"2 - 3 cups", 2, 3, "cup"},
      Case{"2 to 3 cups", 2, 3, "cup"},
      Case{"2 or 3 onions", 2, 3, ""},
      Case{"two or three onions", 2, 3, ""},
      Case{"between 2 and 3 cups", 2, 3, "cup"},
      Case{"3-2 cups", 2, 3, "cup"},  // turned
      Case{"1/2 to 3/4 cup", 0.5, 0.75, "cup"},
      Case{"1-1 1/2 cups", 1, 1.5, "cup"},
      Case{"2-1/2 - 4-1/2 lbs.", 2.5, 4.5, "lb"},
      Case{"3 1/2 to 4 qt. tomatoes", 3.5, 4, "quart"},
      Case{"250g-300g sugar", 250, 300, "g"},
      Case{"1 cup to 2 cups sugar", 1, 2, "cup"},
      Case{"2 tablespoons to 1/4 cup", 2, 4, "tbsp"},
      Case{"½ cup up to 1 cup honey", 0.5, 1, "cup"},
      Case{"4 -to... 6 onions", 4, 6, ""},
      Case{"8 oz or 225 g cheese", 8, 8, "oz"},  // one amount said twice
      Case{"1 onion or 2 shallots", 1, 1, ""},
  });
}

TEST_CASE("units as people spell them") {
  check_all(std::array{
      Case{"1 T sugar", 1, 1, "tbsp"},
      Case{"1 t sugar", 1, 1, "tsp"},
      Case{"2 T. sugar", 2, 2, "tbsp"},
      Case{"2 tbs sugar", 2, 2, "tbsp"},
      Case{"2 Tbl sugar", 2, 2, "tbsp"},
      Case{"2 tblsp. sugar", 2, 2, "tbsp"},
      Case{"2 Tb. sugar", 2, 2, "tbsp"},
      Case{"2 tablespoonsful sugar", 2, 2, "tbsp"},
      Case{"2 table spoons sugar", 2, 2, "tbsp"},
      Case{"1 tsp. sugar", 1, 1, "tsp"},
      Case{"one teaspoonful of mace", 1, 1, "tsp"},
      Case{"1 gal vinegar", 1, 1, "gallon"},
      Case{"1 C. sugar", 1, 1, "cup"},
      Case{"2 cup(s) sugar", 2, 2, "cup"},
      Case{"8 oz cheese", 8, 8, "oz"},
      Case{"8 ozs. cheese", 8, 8, "oz"},
      Case{"8 fl oz cream", 8, 8, "fl oz"},
      Case{"8 fl. oz. cream", 8, 8, "fl oz"},
      Case{"8 fluid ounces cream", 8, 8, "fl oz"},
      Case{"10fl oz milk", 10, 10, "fl oz"},
      Case{"1 pt cream", 1, 1, "pint"},
      Case{"3 Qt's water", 3, 3, "quart"},
      Case{"3 qts water", 3, 3, "quart"},
      Case{"2 half-pints raspberries", 2, 2, "half-pint"},
      Case{"1 half-gallon juice", 1, 1, "half-gallon"},
      Case{"2 dl cream", 2, 2, "dl"},
      Case{"5 cl rum", 5, 5, "cl"},
      Case{"1 litre water", 1, 1, "l"},
      Case{"2½ L stock", 2.5, 2.5, "l"},
      Case{"250 gm flour", 250, 250, "g"},
      Case{"2 kilos tomatoes", 2, 2, "kg"},
      Case{"4lbs cucumbers", 4, 4, "lb"},
      Case{"5# tomatoes", 5, 5, "lb"},
      Case{"40#'s chicken", 40, 40, "lb"},
      Case{"5 1/2 pds tomatoes", 5.5, 5.5, "lb"},
      Case{"1 peck of cucumbers", 1, 1, "peck"},
      Case{"1 bushel pears", 1, 1, "bushel"},
      Case{"10cupspickling cucumber", 10, 10, "cup"},
      Case{"30poundsTomatoes", 30, 30, "lb"},
      Case{"½teaspoonbutter", 0.5, 0.5, "tsp"},
      Case{"1small cloveGarlic", 1, 1, "clove", "small"},
      Case{"3-4piecesAlum", 3, 4, "piece"},
      Case{"2canola oil things", 2, 2, ""},  // no can
      Case{"½-cup lemon juice", 0.5, 0.5, "cup"},
      Case{"5 - cups berries", 5, 5, "cup"},
      Case{"1/2 -teaspoon butter", 0.5, 0.5, "tsp"},
      Case{"1 dry cup beans", 1, 1, "cup"},
      Case{"3 sprigs dill", 3, 3, "sprig"},
      Case{"2 bunches celery", 2, 2, "bunch"},
      Case{"2 tins tomatoes", 2, 2, "can"},
      Case{"1 pkg. pectin", 1, 1, "package"},
      Case{"1 envelope gelatin", 1, 1, "envelope"},
      Case{"4 drops sauce", 4, 4, "drop"},
      Case{"2 leaves basil", 2, 2, "leaf"},
      Case{"6 Cubes of bouillon", 6, 6, "cube"},
      Case{"2 ea. onions", 2, 2, ""},
      Case{"2-onions", 2, 2, ""},

  });
}

TEST_CASE("size words and modifiers") {
  check_all(std::array{
      Case{"6 medium onions", 6, 6, "", "medium"},
      Case{"7 med. onions", 7, 7, "", "medium"},
      Case{"3 lg carrots", 3, 3, "", "large"},
      Case{"3 medium-sized onions", 3, 3, "", "medium"},
      Case{"4 extra-large eggs", 4, 4, "", "extra large"},
      Case{"1 small head cabbage", 1, 1, "head", "small"},
      Case{"2 large cloves garlic", 2, 2, "clove", "large"},
      Case{"4 small to medium onions", 4, 4, "", ""},
      Case{"2 heaping tablespoons sugar", 2, 2, "tbsp"},
      Case{"1 level teaspoon salt", 1, 1, "tsp"},
      Case{"4 very thin slices ham", 4, 4, "slice"},
      Case{"2 cups large lima beans", 2, 2, "cup", ""},
      Case{"12 whole cloves", 12, 12, ""},  // the spice
      Case{"2 whole cloves garlic", 2, 2, "clove"},
  });
  for (const std::string_view line : {"about 3 cups", "approx. 3 cups", "~3 cups", "3 scant cups",
                                      "scant 3 cups", "3 heaping cups", "not quite 3 cups", "3 cups or so"}) {
    CAPTURE(line);
    const auto amount = read_amount(line, Units::us);
    REQUIRE(amount);
    CHECK(amount->about);
    CHECK(amount->stated.high == 3);
  }
  CHECK_FALSE(read_amount("3 level cups", Units::us)->about);
}

TEST_CASE("bounds") {
  const auto most = read_amount("up to 3 cups sugar", Units::us);
  REQUIRE(most);
  CHECK(most->at_most);
  CHECK(most->stated == Interval<double>{0, 3});
  CHECK(read_amount("no more than 3 cups sugar", Units::us)->at_most);
  CHECK(read_amount("3 cups or less sugar", Units::us)->stated.low == 0);
  const auto least = read_amount("at least 3 cups vinegar", Units::us);
  REQUIRE(least);
  CHECK(least->at_least);
  CHECK(least->stated == Interval<double>{3, 3});
  CHECK(read_amount("3 cups or more vinegar", Units::us)->at_least);
}

TEST_CASE("packages and their size") {
  check_all(std::array{
      Case{"1 (28-ounce) can tomatoes", 1, 1, "can", "28 oz"},
      Case{"1 28-oz can tomatoes", 1, 1, "can", "28 oz"},
      Case{"2 14.5 oz cans tomatoes", 2, 2, "can", "14.5 oz"},
      Case{"2 14 1/2-ounce cans tomatoes", 2, 2, "can", "14 1/2 oz"},
      Case{"One 28 ounce can tomatoes", 1, 1, "can", "28 oz"},
      Case{"2 x 400g tins tomatoes", 2, 2, "can", "400 g"},
      Case{"½ x 400g/14oz can tomatoes", 0.5, 0.5, "can", "400 g"},
      Case{"1 (15-ounce [426-g]) can beans", 1, 1, "can", "15 oz"},
      Case{"1(1.75oz)box pectin", 1, 1, "box", "1.75 oz"},
      Case{"1 can (7 ounces) chilies", 1, 1, "can", "7 oz"},
      Case{"3 cans (28 oz each) tomatoes", 3, 3, "can", "28 oz"},
      Case{"1 box - 1 3/4 oz. powdered pectin", 1, 1, "box", "1 3/4 oz"},
      Case{"1 - 7.5 oz box (49 - gram) pectin", 1, 1, "box", "7.5 oz"},
      Case{"1-28 oz can tomatoes", 1, 1, "can", "28 oz"},
      Case{"2-3 lb bags carrots", 2, 2, "bag", "3 lb"},
      Case{"4 - 6 oz cans paste", 4, 4, "can", "6 oz"},
      Case{"2-1 lb. boxes sugar", 2, 2, "box", "1 lb"},
      Case{"1-2 lb bag carrots", 1, 2, "lb"},
      Case{"2 to 3 lb bags carrots", 2, 3, "lb"},
      Case{"Four 6-ounce cod fillets", 4, 4, "", "6 oz"},
      Case{"1 #10 can tomatoes", 1, 1, "can", "#10"},
      Case{"1 No. 2 can tomatoes", 1, 1, "can", "No. 2"},
      Case{"2 large containers sauce", 2, 2, "container", "large"},
      Case{"16 Ounce package split peas", 16, 16, "oz"},
      Case{"2 quart jars tomatoes", 2, 2, "quart"},
      Case{"6 (about 2 lb) tomatoes", 6, 6, ""},
      Case{"1/2 (2 mL) teaspoon cumin", 0.5, 0.5, "tsp"},
      Case{"1 2-inch piece ginger", 1, 1, "piece"},
      Case{"2 8-inch-long eggplants", 2, 2, ""},
      Case{"2½-inch piece ginger", 1, 1, "piece"},
      Case{"2\" cinnamon stick", 1, 1, ""},
      Case{"8 \"toes\" of garlic", 8, 8, ""},
  });
  const auto cans = read_amount("2 (28-ounce) cans tomatoes", Units::us);
  REQUIRE(cans);
  CHECK(std::get<Interval<Count>>(cans->measure).low == count(2));
  CHECK(in_pounds(std::get<Interval<Mass>>(cans->each).low) == doctest::Approx(28.0 / 16));
  CHECK(bytes("2 (28-ounce) cans tomatoes", *cans) == "2 (28-ounce) cans");
  CHECK(bytes("16 Ounce package split peas", *read_amount("16 Ounce package split peas", Units::us)) ==
        "16 Ounce package");
  const auto each = read_amount("4 cans tomato paste - (12 oz ea)", Units::us);
  REQUIRE(each);
  CHECK(in_pounds(std::get<Interval<Mass>>(each->each).low) == doctest::Approx(0.75));
  const auto fillets = read_amount("6 catfish fillets (6 to 8 ounces each)", Units::us);
  REQUIRE(fillets);
  CHECK(in_pounds(std::get<Interval<Mass>>(fillets->each).high) == doctest::Approx(0.5));
}

TEST_CASE("sums") {
  check_all(std::array{
      Case{"2 lb. + 4 oz beans", 2.25, 2.25, "lb"},
      Case{"1 lb 4 oz beans", 1.25, 1.25, "lb"},
      Case{"1 lb, 4 oz beans", 1.25, 1.25, "lb"},
      Case{"1 cup plus 2 tablespoons sugar", 1.125, 1.125, "cup"},
      Case{"1/3 cup, plus 3 tablespoons, oil", 1.0 / 3 + 3.0 / 16, 1.0 / 3 + 3.0 / 16, "cup"},
      Case{"1 cup minus 1 tablespoon sugar", 15.0 / 16, 15.0 / 16, "cup"},
      Case{"1 gallon and 1 quart vinegar", 1.25, 1.25, "gallon"},
      Case{"1 kg 500 g tomatoes", 1.5, 1.5, "kg"},
      Case{"1 cup 250 ml milk", 1, 1, "cup"},  // one amount said twice
      Case{"2 cups plus 1 egg", 2, 2, "cup"},
      Case{"4 lb 4lb(1.8 kg) cucumbers", 4, 4, "lb"},  // doubled by a web page
      Case{"2 2oniononions", 2, 2, ""},
  });
}

TEST_CASE("a sum in a unit of unsure size is still an interval") {
  const auto amount =
      sealworthy::quantity::read_amount("600 gal 1 tsp water", sealworthy::quantity::Units::metric);
  REQUIRE(amount.has_value());
  CHECK(amount->stated.low <= amount->stated.high);
}
