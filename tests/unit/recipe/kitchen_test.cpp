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
  REQUIRE(k.canners[0].holds.size() == 1);
  CHECK(in_pieces(k.canners[0].holds[0].value.jars.count.low) == 7);
  CHECK(k.canners[0].holds[0].value.jars.jar->name == "quart");
  CHECK(k.canners[0].holds[0].value.layers == 1);
  CHECK_FALSE(k.canners[1].gauge.has_value());
  CHECK(kitchen("altitude: 1600 m\ncanners: {kind: boiling water}\n").canners.size() == 1);
}

TEST_CASE("a kitchen with all that it may tell") {
  const Kitchen k = kitchen(R"(kitchen: Ridge road
altitude: 1,609 m
canners:
  - kind: pressure canner
    gauge: dial
    gauge-tested: 2026-03-14
    gauge-error: reads 1 psi high
    weights: [5 psi, 10 psi]
    largest-pressure: 15 psi
    holds: [7 quart, 9 pint, {jars: 18 pint, layers: 2}]
    rack: yes
    depth: 12 1/2 inches
    width: 28 cm
jars:
  - quart
  - {size: pint, mouth: wide, count: 24}
lids: {state: new, bought: 2026}
stove: {kind: electric coil, burner: 8 inches}
)");
  REQUIRE(k.canners.size() == 1);
  const Canner& c = k.canners[0];
  CHECK(c.at == Position{4, 5});
  CHECK(in_psi(c.gauge_error->value) == Approx(1));
  REQUIRE(c.weights.size() == 2);
  CHECK(in_psi(c.weights[1].value) == Approx(10));
  CHECK(in_psi(c.largest_pressure->value) == Approx(15));
  REQUIRE(c.holds.size() == 3);
  CHECK(c.holds[2].value.layers == 2);
  CHECK(in_pieces(c.holds[2].value.jars.count.low) == 18);
  CHECK(c.rack->value);
  CHECK(in_inches(c.depth->value) == Approx(12.5));
  CHECK(in_inches(c.width->value) == Approx(28 / 2.54));
  REQUIRE(k.jars.size() == 2);
  CHECK(k.jars[0].jar.value.name == "quart");
  CHECK_FALSE(k.jars[0].count.has_value());
  CHECK(k.jars[1].jar.value.mouth == "wide");
  CHECK(k.jars[1].count == 24);
  CHECK(k.lids->words->value == "new");
  CHECK(k.lids->bought->value == 2026);
  CHECK(k.stove->kind->value == "electric coil");
  CHECK(in_inches(k.stove->burner->value) == Approx(8));
  CHECK(in_psi(kitchen("canners: {kind: pressure canner, gauge: dial, gauge-error: 2 psi low}\n")
                   .canners[0]
                   .gauge_error->value) == Approx(-2));
  CHECK(kitchen("lids: used\nstove: gas\n").lids->words->value == "used");
}

TEST_CASE("a kitchen has no date in the future") {
  const auto error_of = [](std::string_view text) {
    auto read = read_kitchen(document(text), Date{2026, 8, 31});
    return std::holds_alternative<yaml::Error>(read) ? std::get<yaml::Error>(read).at : Position{};
  };
  CHECK(error_of("canners: [{kind: a, gauge: dial, gauge-tested: 2026-09-01}]\n") == Position{1, 48});
  CHECK(error_of("canners: [{kind: a, gauge: dial, gauge-tested: 2026-08-31}]\n") == Position{});
  CHECK(error_of("lids: {bought: 2027}\n") == Position{1, 16});
  CHECK(error_of("lids: {bought: 2026}\n") == Position{});
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
      {"canners: [{kind: a, holds: -7 quart}]\n", {1, 28}, "", ""},
      {"canners: [{kind: a, gauge: weighted, gauge-error: 1 psi high}]\n", {1, 51}, "weighted gauge", "dial"},
      {"canners: [{kind: a, gauge: weighted, gauge-tested: 2026-03-14}]\n", {1, 52}, "no test", "dial"},
      {"canners: [{kind: a, gauge-error: 1 psi high}]\n", {1, 34}, "needs `gauge: dial`", ""},
      {"canners: [{kind: a, gauge: dial, gauge-error: off}]\n", {1, 47}, "how far", "1 psi high"},
      {"canners: [{kind: a, weights: [10 psi, 20 psi], largest-pressure: 15 psi}]\n", {1, 39}, "largest", ""},
      {"canners: [{kind: a, weights: 5-10 psi}]\n", {1, 30}, "not a range", ""},
      {"canners: [{kind: a, holds: [7 quart, 8 quart]}]\n", {1, 38}, "twice", "layers"},
      {"canners: [{kind: a, holds: [9 pint, {jars: 8 pint, layers: 2}]}]\n", {1, 44}, "fewer jars", ""},
      {"canners: [{kind: a, holds: {jars: 8 pint, layers: 0}}]\n", {1, 51}, "`layers:`", ""},
      {"canners: [{kind: a, holds: {layers: 2}}]\n", {1, 28}, "how many jars", ""},
      {"canners: [{kind: a, rack: maybe}]\n", {1, 27}, "`rack:`", ""},
      {"canners: [{kind: a, depth: deep}]\n", {1, 28}, "`depth:`", "inches"},
      {"jars: [{mouth: wide}]\n", {1, 8}, "their size", ""},
      {"jars: [{size: pint, count: -3}]\n", {1, 28}, "`count:`", ""},
      {"jars: [{size: pint, mouth: odd}]\n", {1, 28}, "`mouth:`", ""},
      {"lids: {bought: soon}\n", {1, 16}, "`bought:`", "year"},
      {"stove: {burner: 8 inches, power: 12}\n", {1, 27}, "`power`", ""},
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
