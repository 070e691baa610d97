#include <doctest/doctest.h>

#include "loaded.hpp"

using namespace foods_test;

namespace {
struct Case {
  const char* line;
  const char* foods;
};
void check_all(std::initializer_list<Case> cases) {
  for (const auto& test : cases) {
    const auto* line = test.line;
    const auto* foods = test.foods;
    CAPTURE(line);
    const auto reading = read(line);
    CHECK(ids(reading) == foods);
    CHECK(joined(reading.unknown) == "");
  }
}
}  // namespace

TEST_CASE("the longest and most specific name wins") {
  check_all({{"3 lb green tomatoes", "green-tomato"},
             {"6 oz tomato paste", "tomato-paste"},
             {"2 cups tomato sauce", "tomato-puree"},
             {"2 tbsp bottled lemon juice", "lemon-juice-bottled"},
             {"1 tsp cream of tartar", "cream-of-tartar"},
             {"4 cups butter beans", "lima-bean-fresh"},
             {"2 cups apple cider vinegar", "vinegar-cider"},
             {"1 can coconut milk", "coconut-milk"},
             {"1 eggplant", "eggplant"},
             {"2 cups cream-style corn", "sweet-corn"},
             {"1 cup peanut butter", "peanut-butter"},
             {"1 vanilla bean", "vanilla"},
             {"1 tbsp mustard seed", "mustard-seed"},
             {"1 tsp celery salt", "celery-salt"},
             {"1 tbsp dried onion", "onion-powder"},
             {"1 cup half-and-half", "cream"},
             {"1 pint bread and butter pickles", "pickle"},
             {"4 cups ground green peppers", "green-bell-pepper"}});
}

TEST_CASE("amount, unit, state and remark decide between foods of one name") {
  check_all({{"1 tsp pepper", "black-pepper"},
             {"black pepper", "black-pepper"},
             {"pepper to taste", "black-pepper"},
             {"2 cups peppers", "pepper"},
             {"1 pepper, chopped", "pepper"},
             {"4 cups pepper, diced", "pepper"},
             {"1 red pepper, diced", "red-bell-pepper"},
             {"1/4 tsp red pepper", "cayenne"},
             {"1 tsp red pepper flakes", "red-pepper-flakes"},
             {"6 cloves garlic", "garlic"},
             {"6 garlic cloves", "garlic"},
             {"6 cloves", "clove"},
             {"6 cloves, minced", "garlic"},
             {"1 tsp whole cloves", "clove"},
             {"2 cups lime", "pickling-lime"},
             {"1 lime, sliced", "lime"},
             {"2 cans tomatoes", "tomato-canned"},
             {"8 cups chopped tomatoes", "tomato"},
             {"28 oz canned diced tomatoes", "tomato-canned"},
             {"1/4 cup lemon juice (bottled)", "lemon-juice-bottled"},
             {"1/4 cup lemon juice", "lemon-juice-fresh"},
             {"1 lb beans, dried", "dry-bean-unspecified"},
             {"1 tsp thyme", "thyme-dried"},
             {"3 sprigs thyme", "thyme-fresh"},
             {"1 tsp ginger", "ginger-ground"},
             {"1 tbsp grated ginger", "ginger"},
             {"4 cups red peppers, ground", "red-bell-pepper"}});
}

TEST_CASE("names told the other way round") {
  check_all({{"peppers, jalapeno, 1 lb", "jalapeno"},
             {"Beans (lima) 3 lb", "lima-bean-fresh"},
             {"Salt 3.5 tsp pickling", "canning-salt"},
             {"1 lemon, zest", "lemon-peel"},
             {"juice of 3 lemons", "lemon-juice-fresh"},
             {"Juice from 1/2 lime", "lime-juice-fresh"},
             {"zest of 1 orange", "orange-peel"},
             {"1/4 teaspoon oil of cloves", "extracts"},
             {"rind of 1 watermelon", "watermelon-rind"},
             {"1 bunch of dill", "dill-fresh"},
             {"vinegar, white, 1 quart", "vinegar-white"}});
}

TEST_CASE("alternatives") {
  check_all({{"1/2 cup lime or orange juice", "lime-juice-fresh | orange-juice"},
             {"4 cups white or cider vinegar", "vinegar-white | vinegar-cider"},
             {"lemon or lime juice", "lemon-juice-fresh | lime-juice-fresh"},
             {"2 cups green or red bell peppers", "green-bell-pepper | red-bell-pepper"},
             {"1/2 tsp butter or margarine", "butter | margarine"},
             {"1 cup tomato or molasses sauce", "tomato-puree | molasses-sauce"},
             {"2 tbsp lemon juice, fresh or bottled", "lemon-juice-fresh | lemon-juice-bottled"},
             {"2 tbsp pickling salt (or 4 tbsp kosher salt)", "canning-salt | kosher-salt"},
             {"1 head of dill or 1 teaspoon dill seed", "dill-fresh | dill-seed"},
             {"3 sprigs parsley or 1 tbsp dried flakes", "parsley-fresh | parsley-dried"},
             {"1 large green, red, or yellow bell pepper",
              "green-bell-pepper | red-bell-pepper | yellow-bell-pepper"},
             {"honey/sugar syrup", "honey | simple-syrup"},
             {"2 quarts tomatoes or 12 large tomatoes, peeled", "tomato"}});
  CHECK(read("1 tbsp corn, peanut or vegetable oil").name == "corn, peanut or vegetable oil");
  CHECK(read("1/2 cup lime or orange juice").name == "lime or orange juice");
}

TEST_CASE("a second food of a line is not lost") {
  check_all({{"3 eggs, 1 egg yolk", "egg + egg-yolk"},
             {"water and vinegar", "water + vinegar"},
             {"salt and pepper", "table-salt + black-pepper"},
             {"salt, pepper, sugar", "table-salt + black-pepper + sugar"},
             {"2 cups red and green bell peppers", "red-bell-pepper + green-bell-pepper"},
             {"2 pounds peaches 1/2 teaspoon allspice", "peach + allspice"},
             {"1 Qt. Vinegar. 3 Qt's water. 1 C Salt.", "vinegar + water + table-salt"},
             {"four ounces of stick cinnamon and two ounces of cloves", "cinnamon + clove"},
             {"Juice and grated rind of one orange", "orange-juice + orange-peel"},
             {"2 cups sugar to 1 quart water", "sugar + water"}});
  const auto eggs = read("3 eggs, 1 egg yolk");
  CHECK_FALSE(eggs.foods[0].amount.has_value());
  REQUIRE(eggs.foods[1].amount.has_value());
  CHECK(eggs.foods[1].amount->stated.high == 1);
}

TEST_CASE("words of the remarks are no foods") {
  check_all({{"3 lb carrots, peeled and cut in strips the length of the jar", "carrot"},
             {"4 lb cucumbers, 1/16 inch cut off the blossom end", "cucumber"},
             {"1/4 cup apple cider (not vinegar)", "apple-juice"},
             {"1/2 cup canning salt for soaking cucumbers", "canning-salt"},
             {"2 lb onions, the size of walnuts", "onion"},
             {"1 tbsp fresh herbs, such as thyme or basil", "herbs-unspecified"},
             {"6 lb tomatoes (like Roma)", "tomato"}});
}

TEST_CASE("an unknown food is never ignored") {
  CHECK(joined(read("2 lb zebra meat").unknown) == "zebra meat");
  CHECK(joined(read("1 cup kiviak").unknown) == "kiviak");
  CHECK(joined(read("1 pint tomato leather").unknown) == "tomato leather");
  CHECK(joined(read("1 cup strawberry vinegar").unknown) == "strawberry vinegar");
  CHECK(joined(read("2 cups zorp or honey").unknown) == "zorp");
  CHECK(joined(read("4 lb Blenheim apricots").unknown) == "");  // a variety
  CHECK(ids(read("1 cup kiviak")) == "?");
}

TEST_CASE("the name as cooks write it") {
  CHECK(read("1 cup chopped fresh basil").name == "fresh basil");
  CHECK(read("10 apples, peeled, cored, and chopped").name == "apples");
  CHECK(read("6 cloves garlic, peeled").name == "garlic");
  CHECK(read("2 cups apple-cider vinegar").name == "apple-cider vinegar");
  CHECK(read("1 red, ripe tomato, cored").name == "red ripe tomato");
  CHECK(read("1 1/2 cups lightly packed light brown sugar").name == "light brown sugar");
  CHECK(read("1 shoebox of dreams").name == "shoebox of dreams");
}

TEST_CASE("a line run together or doubled by a web page") {
  check_all({{"10cupspickling cucumbertrimmed and sliced", "pickling-cucumber"},
             {"3cupswhite vinegar", "vinegar-white"},
             {"1/2cuppickling or canning saltfor soaking cucumbers", "canning-salt"},
             {"2 2oniononions, thinly sliced", "onion"},
             {"4 lb 4lb(1.8 kg) (1.8 kg) sliced small cucumbers", "cucumber"}});
}

TEST_CASE("odd input is read without harm") {
  for (const auto* line : {"", " ", "1", "1 cup", ",,,", "(((", "or", "and or", "of of of", "1/2", "%", "\"",
                           "x", "\xff\xfe", "- - -", "1 (28 oz", "cup cup cup", "or or tomato or"}) {
    CAPTURE(line);
    CHECK(read(line).foods.size() <= 1);
  }
  std::string deep(3000, '(');
  deep += "tomato";
  CHECK(read(deep).foods.size() <= 1);
  std::string many;
  for (int i = 0; i < 2000; ++i) many += "tomato or ";
  CHECK(read(many).foods.size() == 1);
}

TEST_CASE("a food that a run-together line names twice is one food") {
  const auto reading = read("10cupspickling cucumbertrimmed and sliced in 1/4 inch slices");
  CHECK(reading.foods.size() == 1);
  CHECK_FALSE(reading.all_of);
}
