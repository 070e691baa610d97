#include "quantity/amount.hpp"

#include <doctest/doctest.h>

#include <array>

using namespace sealworthy;
using namespace sealworthy::quantity;

namespace {

struct Case {
  const char* line;
  double low, high;
  const char* unit;
  const char* size = "";
};

void check(const Case& row) {
  CAPTURE(row.line);
  const auto amount = read_amount(row.line, Units::us);
  REQUIRE(amount.has_value());
  CHECK(amount->stated.low == doctest::Approx(row.low));
  CHECK(amount->stated.high == doctest::Approx(row.high));
  CHECK(amount->unit == row.unit);
  CHECK(amount->size == row.size);
}

}  // namespace

TEST_CASE("figures as people write them") {
  constexpr std::array cases{
      Case{"1 1/2 cups sugar", 1.5, 1.5, "cup"},
      Case{"1-1/2 cups sugar", 1.5, 1.5, "cup"},
      Case{"1½ cups sugar", 1.5, 1.5, "cup"},
      Case{"1 ½ cups sugar", 1.5, 1.5, "cup"},
      Case{"½ cup sugar", 0.5, 0.5, "cup"},
      Case{"1⁄2 cup sugar", 0.5, 0.5, "cup"},
      Case{"1.5 cups sugar", 1.5, 1.5, "cup"},
      Case{".5 cup sugar", 0.5, 0.5, "cup"},
      Case{"1,5 kg tomatoes", 1.5, 1.5, "kg"},
      Case{"5,280 g tomatoes", 5280, 5280, "g"},
      Case{"0,500 kg tomatoes", 0.5, 0.5, "kg"},
      Case{"2-3 cups", 2, 3, "cup"},
      Case{"2–3 cups", 2, 3, "cup"},
      Case{"2 to 3 cups", 2, 3, "cup"},
      Case{"2 or 3 onions", 2, 3, ""},
      Case{"between 2 and 3 cups", 2, 3, "cup"},
      Case{"3-2 cups", 2, 3, "cup"},
      Case{"one dozen ears corn", 12, 12, "ear"},
      Case{"half a cup sugar", 0.5, 0.5, "cup"},
      Case{"one and a half cups", 1.5, 1.5, "cup"},
      Case{"1 and 1/2 cups", 1.5, 1.5, "cup"},
      Case{"5 3/4 c. sugar", 5.75, 5.75, "cup"},
      Case{"11/2 cups sugar", 1.5, 1.5, "cup"},
      Case{"three-quarters cup", 0.75, 0.75, "cup"},
      Case{"250g-300g sugar", 250, 300, "g"},
      Case{"1 cup to 2 cups sugar", 1, 2, "cup"},
      Case{"4lbs cucumbers", 4, 4, "lb"},
      Case{"10cupspickling cucumber", 10, 10, "cup"},
  };
  for (const auto& row : cases) check(row);
}
