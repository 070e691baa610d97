// Jar sizes and yields.

#include <doctest/doctest.h>

#include <array>
#include <vector>

#include "quantity/amount.hpp"

using namespace sealworthy;
using namespace sealworthy::quantity;

namespace {

struct Good {
  std::string_view text;
  double ounces;  ///< US fluid ounces
  std::string_view name;
  std::string_view mouth = "";
};

constexpr double litre = 33.8140227018;  // US fluid ounces, GNU units

}  // namespace

TEST_CASE("jars as cooks and tables name them") {
  constexpr std::array rows{
      Good{"quart", 32, "quart"},
      Good{"quarts", 32, "quart"},
      Good{"qt", 32, "quart"},
      Good{"qt.", 32, "quart"},
      Good{"one quart", 32, "quart"},
      Good{"quart jars", 32, "quart"},
      Good{"pint", 16, "pint"},
      Good{"pt", 16, "pint"},
      Good{"1 pint", 16, "pint"},
      Good{"half-pint", 8, "half-pint"},
      Good{"half pints", 8, "half-pint"},
      Good{"half a pint", 8, "half-pint"},
      Good{"1/2 pint", 8, "half-pint"},
      Good{"½-pint jars", 8, "half-pint"},
      Good{"quarter-pint", 4, "quarter-pint"},
      Good{"pint and a half", 24, "pint-and-a-half"},
      Good{"pint-and-a-half", 24, "pint-and-a-half"},
      Good{"1.5 pint", 24, "pint-and-a-half"},
      Good{"1 1/2 pint jars", 24, "pint-and-a-half"},
      Good{"half gallon", 64, "half-gallon"},
      Good{"1/2 gallon", 64, "half-gallon"},
      Good{"4 oz", 4, "4-oz"},
      Good{"8-oz", 8, "8-oz"},
      Good{"8 oz. jelly jars", 8, "8-oz"},
      Good{"12 oz jelly jars", 12, "12-oz"},
      Good{"12-ounce", 12, "12-oz"},
      Good{"24-oz", 24, "24-oz"},
      Good{"28 oz", 28, "28-oz"},
      Good{"64 oz", 64, "64-oz"},
      Good{"16 fl oz", 16, "16-oz"},
      Good{"1-litre", litre, "1 l"},
      Good{"1 l", litre, "1 l"},
      Good{"1000 ml", litre, "1 l"},
      Good{"3-litre", 3 * litre, "3 l"},
      Good{"1.5 l", 1.5 * litre, "1500 ml"},
      Good{"500 ml", litre / 2, "500 ml"},
      Good{"500ml", litre / 2, "500 ml"},
      Good{"half litre", litre / 2, "500 ml"},
      Good{"wide-mouth pint", 16, "pint", "wide"},
      Good{"pint jars, wide mouth", 16, "pint", "wide"},
      Good{"wide mouth pints", 16, "pint", "wide"},
      Good{"regular-mouth quart jars", 32, "quart", "regular"},
      Good{"imperial pint", 19.2151988081, "imperial pint"},
  };
  for (const auto& row : rows) {
    CAPTURE(row.text);
    const auto figure = read_jar(row.text);
    if (const auto* error = std::get_if<FigureError>(&figure)) {
      FAIL_CHECK(error->message);
      continue;
    }
    const auto& jar = std::get<JarText>(figure);
    CHECK(in_us_fluid_ounces(jar.volume) == doctest::Approx(row.ounces));
    CHECK(jar.name == row.name);
    CHECK(jar.mouth == row.mouth);
    CHECK(jar.metric == (row.name.ends_with(" ml") || row.name.ends_with(" l")));
    CHECK(jar.imperial == row.name.starts_with("imperial"));
  }
}

TEST_CASE("the kitchen decides a bare jar's pint") {
  const auto imperial = read_jar("pint", Units::imperial);
  REQUIRE(std::holds_alternative<JarText>(imperial));
  CHECK(in_millilitres(std::get<JarText>(imperial).volume) == doctest::Approx(568.26125));
  CHECK(std::get<JarText>(imperial).name == "imperial pint");
  const auto metric = read_jar("pint", Units::metric);
  REQUIRE(std::holds_alternative<JarText>(metric));
  CHECK(in_millilitres(std::get<JarText>(metric).volume) == doctest::Approx(473.176473));
}

TEST_CASE("what is no jar") {
  for (const std::string_view text :
       {"", " ", "jar", "big", "6", "5 lb", "pints and quarts", "pint of pickles", "1 tsp", "10 gallons",
        "-1 pint", "0 pint", "12 inch"}) {
    CAPTURE(text);
    const auto figure = read_jar(text);
    const auto* error = std::get_if<FigureError>(&figure);
    REQUIRE(error != nullptr);
    CHECK_FALSE(error->message.empty());
    CHECK(error->suggestion.find("\"pint\"") != std::string::npos);
  }
}

TEST_CASE("yields") {
  struct Made {
    std::string_view text;
    double low, high;
    std::string_view jar;
  };
  constexpr std::array rows{
      Made{"7 quart jars", 7, 7, "quart"},
      Made{"7 quart", 7, 7, "quart"},
      Made{"7 quarts", 7, 7, "quart"},
      Made{"about 9 pints", 9, 9, "pint"},
      Made{"makes about 9 pints", 9, 9, "pint"},
      Made{"five pints", 5, 5, "pint"},
      Made{"5 to 6 half-pints", 5, 6, "half-pint"},
      Made{"5-6 8-ounce jars", 5, 6, "8-oz"},
      Made{"4 jars", 4, 4, ""},
      Made{"6 8-oz jars", 6, 6, "8-oz"},
      Made{"6 (8-ounce) jars", 6, 6, "8-oz"},
      Made{"4 500 ml jars", 4, 4, "500 ml"},
      Made{"4 jars of 500 ml", 4, 4, "500 ml"},
      Made{"6 x 500 ml", 6, 6, "500 ml"},
      Made{"2 dozen half-pints", 24, 24, "half-pint"},
      Made{"4 1/2-pint jars", 4, 4, "half-pint"},
      Made{"4 1/2 pints", 4.5, 4.5, "pint"},
      Made{"7 pint-and-a-half jars", 7, 7, "pint-and-a-half"},
  };
  for (const auto& row : rows) {
    CAPTURE(row.text);
    const auto figure = read_yield(row.text);
    if (const auto* error = std::get_if<FigureError>(&figure)) {
      FAIL_CHECK(error->message);
      continue;
    }
    const auto& yield = std::get<Yield>(figure);
    CHECK(in_pieces(yield.count.low) == doctest::Approx(row.low));
    CHECK(in_pieces(yield.count.high) == doctest::Approx(row.high));
    CHECK((yield.jar ? yield.jar->name : "") == row.jar);
  }
  for (const std::string_view text :
       {"", "quarts", "plenty", "0 quarts", "20,000 pints", "6-5 pints", "3 quarts or 6 pints", "7 loaves"}) {
    CAPTURE(text);
    CHECK(std::holds_alternative<FigureError>(read_yield(text)));
  }
}

TEST_CASE("a card's jars: sizes, how many, several") {
  struct Said {
    std::string_view name;
    double low = 0, high = 0;  ///< 0: not told
  };
  struct Row {
    std::string_view text;
    std::vector<Said> jars;
  };
  const std::vector<Row> rows{
      {"quart", {{"quart"}}},
      {"7 quarts", {{"quart", 7, 7}}},
      {"7 quart", {{"quart", 7, 7}}},
      {"7 quart jars", {{"quart", 7, 7}}},
      {"2 quarts", {{"quart", 2, 2}}},
      {"2 quart jars", {{"quart", 2, 2}}},
      {"2-quart", {{"2 quart"}}},
      {"2 quart", {{"2 quart"}}},
      {"1 pint", {{"pint"}}},
      {"1.5 pint", {{"pint-and-a-half"}}},
      {"1 1/2-pint", {{"pint-and-a-half"}}},
      {"6-7 pints", {{"pint", 6, 7}}},
      {"about 6 half-pints", {{"half-pint", 6, 6}}},
      {"12 half pint", {{"half-pint", 12, 12}}},
      {"4 1/2-pint jars", {{"half-pint", 4, 4}}},
      {"a dozen pints", {{"pint", 12, 12}}},
      {"14 pts", {{"pint", 14, 14}}},
      {"4 12-oz jars", {{"12-oz", 4, 4}}},
      {"8 (8 oz) jars", {{"8-oz", 8, 8}}},
      {"6 x 500 ml", {{"500 ml", 6, 6}}},
      {"7 x quart", {{"quart", 7, 7}}},
      {"12 oz", {{"12-oz"}}},
      {"500 ml", {{"500 ml"}}},
      {"pints or quarts", {{"pint"}, {"quart"}}},
      {"pints, quarts", {{"pint"}, {"quart"}}},
      {"half-pint / pint", {{"half-pint"}, {"pint"}}},
      {"pint/quart", {{"pint"}, {"quart"}}},
      {"3 quarts and 2 pints", {{"quart", 3, 3}, {"pint", 2, 2}}},
      {"8-oz, 12-oz or pint jars", {{"8-oz"}, {"12-oz"}, {"pint"}}},
  };
  for (const auto& row : rows) {
    CAPTURE(row.text);
    const auto figure = read_jars(row.text);
    if (const auto* error = std::get_if<FigureError>(&figure)) {
      FAIL_CHECK(error->message);
      continue;
    }
    const auto& jars = std::get<0>(figure);
    REQUIRE(jars.size() == row.jars.size());
    for (std::size_t i = 0; i < jars.size(); ++i) {
      CHECK(jars[i].jar.name == row.jars[i].name);
      CHECK((jars[i].count ? in_pieces(jars[i].count->low) : 0) == row.jars[i].low);
      CHECK((jars[i].count ? in_pieces(jars[i].count->high) : 0) == row.jars[i].high);
    }
  }
  for (const std::string_view text : {"", "jars", "7", "6 jars", "7-6 pints", "pints or", "pints of pickles",
                                      "-1 pint", "0 quarts", "pints with lids", "1 gallon or 9-gallon"}) {
    CAPTURE(text);
    const auto figure = read_jars(text);
    const auto* error = std::get_if<FigureError>(&figure);
    REQUIRE(error != nullptr);
    CHECK(error->suggestion.find("[pint, quart]") != std::string::npos);
  }
}
