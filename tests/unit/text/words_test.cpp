#include "text/words.hpp"

#include <doctest/doctest.h>

#include "text/nearest.hpp"

using namespace sealworthy::text;

TEST_CASE("words are folded, numbers stay whole, hyphens split") {
  CHECK(fold("Black-Eyed  Peas, jalapeño") == "black eyed peas jalapeno");
  const Words words("1 1/2 cups (5,280 ft) 4lbs 2–3\" don't ½");
  REQUIRE(words.size() == 12);
  CHECK(words[1].text == "1/2");
  CHECK(words[1].number);
  CHECK(words[3].text == "5,280");
  CHECK(words[3].depth == 1);
  CHECK(words[5].text == "4");
  CHECK(words[6].text == "lbs");
  CHECK(words[8].hyphened);
  CHECK(words[9].text == "\"");
  CHECK(words[10].text == "don't");
  CHECK(words[11].number);
}

TEST_CASE("a sentence end is stronger than a comma") {
  const Words words("boil, then fill. Cool");
  CHECK(words[1].before == ',');
  CHECK(words[3].before == '.');
}

TEST_CASE("singulars of kitchen nouns") {
  CHECK(singular("tomatoes") == "tomato");
  CHECK(singular("berries") == "berry");
  CHECK(singular("leaves") == "leaf");
  CHECK(singular("peaches") == "peach");
  CHECK(singular("asparagus") == "asparagus");
  CHECK(singular("peas") == "pea");
  CHECK(singular("gas") == "gas");
}

TEST_CASE("a slip is found, a stranger is not") {
  const std::string_view keys[] = {"recipe", "headspace", "process"};
  CHECK(nearest("headspce", keys) == "headspace");
  CHECK(nearest("proces", keys) == "process");
  CHECK_FALSE(nearest("zucchini", keys).has_value());
  CHECK(edit_distance("abcd", "acbd", 3) == 1);
}
