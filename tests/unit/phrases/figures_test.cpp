#include "phrases/figures.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace sealworthy;
using phrases::Dimension;
using phrases::Figure;

namespace {

std::vector<Figure> figures(std::string_view text) {
  static const phrases::Lexicon lexicon = [] {
    phrases::Lexicon made;
    made.finish();
    return made;
  }();
  const reading::Sentences sentences(text);
  phrases::Line line;
  line.read(lexicon, sentences.words, sentences.all.front());
  std::array<Figure, phrases::most_figures> out;
  const auto count = phrases::read_figures(line.all(), out);
  return {out.begin(), out.begin() + static_cast<std::ptrdiff_t>(count)};
}

void check_one(std::string_view text, Dimension dimension, double low, double high) {
  CAPTURE(text);
  const auto found = figures(text);
  REQUIRE(found.size() == 1);
  CHECK(found[0].dimension == dimension);
  CHECK(found[0].low == doctest::Approx(low));
  CHECK(found[0].high == doctest::Approx(high));
}

}  // namespace

TEST_CASE("times in minutes") {
  check_one("vent for two minutes", Dimension::minutes, 2, 2);
  check_one("vent 7 to 10 minutes", Dimension::minutes, 7, 10);
  check_one("process 20-25 min.", Dimension::minutes, 20, 25);
  check_one("let stand half an hour", Dimension::minutes, 30, 30);
  check_one("boil 3 1/2 hours", Dimension::minutes, 210, 210);
  check_one("ferment three days", Dimension::minutes, 3 * 1440, 3 * 1440);
  check_one("a couple of minutes", Dimension::minutes, 2, 2);
  check_one("a few weeks", Dimension::minutes, 2 * 10080, 5 * 10080);
  check_one("two and a half hours", Dimension::minutes, 150, 150);
}

TEST_CASE("temperatures in Fahrenheit") {
  check_one("at 75 to 85 F", Dimension::fahrenheit, 75, 85);
  check_one("in a 250-degree oven", Dimension::fahrenheit, 250, 250);
  check_one(
      "to 104 \xC2\xB0"
      "C",
      Dimension::fahrenheit, 219.2, 219.2);
  check_one("bake at 350", Dimension::fahrenheit, 350, 350);
  CHECK(figures("at 12").empty());
}

TEST_CASE("lengths, weights, volumes") {
  check_one("1 1/2 inches of space", Dimension::inches, 1.5, 1.5);
  check_one("at ten pounds", Dimension::pounds, 10, 10);
  check_one("2 quarts of water", Dimension::cups, 8, 8);
  check_one("every 1,000 feet", Dimension::feet, 1000, 1000);
}

TEST_CASE("a number without a unit is no figure, and no more than twelve are kept") {
  CHECK(figures("5 jars and a lid").empty());
  std::string many;
  for (int i = 0; i < 40; ++i) many += "5 minutes and ";
  CHECK(figures(many).size() == phrases::most_figures);
}
