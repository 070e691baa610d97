#include "quantity/figures.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

using namespace sealworthy;
using namespace sealworthy::quantity;

TEST_CASE("numbers as a kitchen writes them") {
  CHECK(kitchen_number(0) == "0");
  CHECK(kitchen_number(1.5) == "1 1/2");
  CHECK(kitchen_number(0.333) == "1/3");
  CHECK(kitchen_number(0.33) == "1/3");
  CHECK(kitchen_number(2) == "2");
  CHECK(kitchen_number(0.07) == "0.07");
  CHECK(kitchen_number(0.004) == "0.004");
  CHECK(kitchen_number(0.125) == "1/8");
  CHECK(kitchen_number(2.0 / 3) == "2/3");
  CHECK(kitchen_number(3.375) == "3 3/8");
  CHECK(kitchen_number(0.9999) == "1");
  CHECK(kitchen_number(1.1) == "1.1");
  CHECK(kitchen_number(-1.5) == "-1 1/2");
  CHECK(kitchen_number(473.176) == "473");
  CHECK(kitchen_number(1234567) == "1,234,567");
  CHECK(kitchen_number(std::numeric_limits<double>::infinity()) == "infinite");
  CHECK(kitchen_number(std::numeric_limits<double>::quiet_NaN()) == "?");
}

TEST_CASE("a kitchen number is within one percent of the figure") {
  for (int i = 1; i < 20000; ++i) {
    const double value = i / 1000.0;
    const auto text = kitchen_number(value);
    double read = 0;
    const auto space = text.find(' ');
    const auto slash = text.find('/');
    const auto fraction = space == std::string::npos ? std::size_t{0} : space + 1;
    if (slash == std::string::npos) {
      read = std::stod(text);
    } else {
      if (space != std::string::npos) read = std::stod(text.substr(0, space));
      read += std::stod(text.substr(fraction, slash - fraction)) / std::stod(text.substr(slash + 1));
    }
    CAPTURE(text);
    CHECK(std::abs(read - value) <= 0.01 * std::max(read, value) + 1e-12);
  }
}

TEST_CASE("quantities in words") {
  CHECK(grouped(5280) == "5,280");
  CHECK(grouped(999) == "999");
  CHECK(grouped(1000000) == "1,000,000");
  CHECK(grouped(-1500) == "-1,500");
  CHECK(words(headspace_inches(0.5)) == "1/2 inch");
  CHECK(words(headspace_inches(1)) == "1 inch");
  CHECK(words(headspace_inches(1.25)) == "1 1/4 inches");
  CHECK(words(headspace_inches(0)) == "0 inches");
  CHECK(words(minutes(1)) == "1 minute");
  CHECK(words(minutes(25)) == "25 minutes");
  CHECK(words(psi_gauge(11)) == "11 psi");
  CHECK(words(psi_gauge(10.95)) == "10.95 psi");  // not "11 psi", which it falls short of
  CHECK(words(feet(5280)) == "5,280 ft");
  CHECK(words(Interval<Altitude>{feet(1001), feet(3000)}) == "1,001 to 3,000 ft");
  CHECK(words(Interval<Altitude>{feet(6000), Altitude::from_si(std::numeric_limits<double>::infinity())}) ==
        "above 6,000 ft");
  CHECK(words(Interval<Altitude>{feet(-1500), feet(1000)}) == "up to 1,000 ft");
  CHECK(words(Interval<Altitude>{feet(0), feet(0)}) == "0 ft");
  CHECK(words(us_cups(0.125)) == "2 tablespoons");
  CHECK(words(us_cups(1.0 / 16)) == "1 tablespoon");
  CHECK(words(us_cups(1.0 / 192)) == "1/4 teaspoon");
  CHECK(words(us_cups(2.5)) == "2 1/2 cups");
  CHECK(words(us_cups(12)) == "3 quarts");
  CHECK(words(pounds(14)) == "14 lb");
  CHECK(words(pounds(0.5)) == "8 oz");
  CHECK(words_of(Interval<Duration>{minutes(20), minutes(25)}) == "20 minutes to 25 minutes");
  CHECK(words_of(Interval<Duration>::exactly(minutes(20))) == "20 minutes");
}

TEST_CASE("an open band of a table is told as people say it") {
  using namespace sealworthy;
  constexpr double open = std::numeric_limits<double>::infinity();
  CHECK(quantity::words(Interval<Altitude>{feet(1001), Altitude::from_si(open)}) == "above 1,000 ft");
  CHECK(quantity::words(Interval<Altitude>{feet(5280), Altitude::from_si(open)}) == "above 5,280 ft");
}

TEST_CASE("an amount is told in cups and spoons that a kitchen has") {
  CHECK(spoon_words(1.18, "cup") == "1 cup + 3 tbsp");
  CHECK(spoon_words(2.94, "cup") == "2 3/4 cups + 3 tbsp");
  CHECK(spoon_words(0.294, "cup") == "1/4 cup + 2 tsp");
  CHECK(spoon_words(0.585, "tbsp") == "1 3/4 tsp");
  CHECK(spoon_words(0.53, "cup") == "1/2 cup + 1 1/2 tsp");
  CHECK(spoon_words(0.53, "tbsp").empty());
  CHECK(spoon_words(0.53, "tbsp", 0.06) == "1 1/2 tsp");
  CHECK(spoon_words(1.5, "cup").empty());
  CHECK(spoon_words(1.18, "quart").empty());
}
