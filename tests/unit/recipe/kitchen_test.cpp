#include "reading.hpp"

using namespace sealworthy;
using namespace sealworthy::recipe;
using doctest::Approx;

namespace {

Kitchen kitchen(std::string_view text) {
  auto read = read_kitchen(document(text));
  if (const auto* error = std::get_if<yaml::Error>(&read)) FAIL(error->message << " " << error->suggestion);
  return std::get<Kitchen>(std::move(read));
}

}  // namespace

TEST_CASE("a kitchen and its canners") {
  const Kitchen k = kitchen(R"(kitchen: Ridge road
altitude: 5,280 ft
canners:
  - {kind: pressure canner, gauge: dial, gauge-tested: 2026-03-14, holds: 7 quart}
  - {kind: boiling water, holds: 7 quart}
)");
  CHECK(k.name == "Ridge road");
  CHECK(in_feet(k.altitude->value.low) == Approx(5280));
  CHECK(k.altitude->at == Position{2, 11});
  REQUIRE(k.canners.size() == 2);
  CHECK(k.canners[0].kind.value == "pressure canner");
  CHECK(k.canners[0].gauge->value == Gauge::dial);
  CHECK(k.canners[0].gauge_tested->value == Date{2026, 3, 14});
  CHECK(k.canners[0].gauge_tested->at == Position{4, 56});
  CHECK(in_pieces(k.canners[0].holds->value.count.low) == 7);
  CHECK(k.canners[0].holds->value.jar->name == "quart");
  CHECK_FALSE(k.canners[1].gauge.has_value());
  CHECK(kitchen("altitude: 1600 m\ncanners: {kind: boiling water}\n").canners.size() == 1);
}

TEST_CASE("mistakes in a kitchen file") {
  const Mistake mistakes[] = {
      {"altitud: 5 ft\n", {1, 1}, "`altitud` is not a key of a kitchen file", "`altitude:`"},
      {"kitchen: a\ncaners: []\n", {2, 1}, "`caners`", "`canners:`"},
      {"canners: [{kind: a, gage: dial}]\n", {1, 21}, "not a key of a canner", "`gauge:`"},
      {"canners: [{gauge: dial}]\n", {1, 11}, "what kind", ""},
      {"canners: pressure canner\n", {1, 10}, "holds a text", "kind: pressure canner"},
      {"canners: [{kind: a, gauge-tested: 2026-02-30}]\n", {1, 35}, "not a date: `2026-02-30`", "2026-03-14"},
      {"canners: [{kind: a, holds: lots}]\n", {1, 28}, "", ""},
      {"altitude: high\n", {1, 11}, "", ""},
      {"recipe: Beans\ningredients: [beans]\n", {1, 1}, "a recipe card, not a kitchen file", ""},
      {"- kitchen\n", {1, 1}, "not a kitchen file: it holds a list", ""},
      {"{}\n", {1, 1}, "not a kitchen file", ""},
  };
  for (const Mistake& m : mistakes) {
    auto read = read_kitchen(document(m.text));
    CAPTURE(m.text);
    REQUIRE(std::holds_alternative<yaml::Error>(read));
    check(m, std::get<yaml::Error>(read));
  }
}

// Leap years: ISO 8601 takes the rule of the Gregorian calendar; 1900 has none, 2000 has one.
TEST_CASE("dates are real ones") {
  CHECK(read_date("2026-03-14") == Date{2026, 3, 14});
  CHECK(read_date("2024-02-29") == Date{2024, 2, 29});
  CHECK(read_date("2000-02-29") == Date{2000, 2, 29});
  for (const std::string_view wrong :
       {"", "2026", "2026-3-14", "2026-03-14T00", "2026/03/14", "14-03-2026", "2026-13-01", "2026-00-01",
        "2026-01-00", "2026-04-31", "2023-02-29", "1900-02-29", "-026-03-14", "+026-03-14", "2026-03- 4",
        "2026-03-1x"}) {
    CAPTURE(wrong);
    CHECK_FALSE(read_date(wrong).has_value());
  }
}
