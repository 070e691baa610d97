#include "report/quote.hpp"

#include <doctest/doctest.h>

#include "report/wrap.hpp"

using sealworthy::report::columns;
using sealworthy::report::quote;

namespace {

/// The column, from 1, at which the words stand.
int column_of(const std::string& line, const std::string& words) {
  const auto at = line.find(words);
  REQUIRE(at != std::string::npos);
  return columns(line.substr(0, at)) + 1;
}

// Invented; a page as site generators write it: all of the recipe in one line.
const std::string page_line =
    R"(<script type="application/ld+json">{"@type": "Recipe", "name": "Dills — \"the\" ones", )"
    R"("recipeIngredient": ["9 lb cucumbers", "1\u00bd cups vinegar"], "recipeInstructions": [{"text": )"
    R"("Pack the jars with dill. Leave room. Process pints for 5 minutes so that they stay crisp.\nTurn the jars)"
    R"( upside down for a quarter of an hour."}]}</script>)";

}  // namespace

TEST_CASE("a line that fits is quoted whole") {
  const auto quoted = quote("  - 1 cup white vinegar (5%)", 5, "1 cup", 60);
  CHECK(quoted.text == "  - 1 cup white vinegar (5%)");
  CHECK_FALSE(quoted.part);
}

TEST_CASE("of a page in one line the words meant are quoted") {
  const auto at = [](const std::string& words, const std::string& found, int room) {
    return quote(page_line, column_of(page_line, words), found, room);
  };
  CHECK(at("\"9 lb", "", 60).text == "9 lb cucumbers");
  CHECK(at("\"9 lb", "", 60).part);
  CHECK(at("\"1\\u00bd", "", 60).text == "1½ cups vinegar");
  CHECK(at("\"Dills", "", 60).text == "Dills — \"the\" ones");
  CHECK(at("\"Pack", "", 60).text == "Pack the jars with dill. Leave room. Process pints for 5 ...");
  CHECK(at("\"Pack", "5 minutes", 60).text == "Process pints for 5 minutes so that they stay crisp.");
  CHECK(at("\"Pack", "upside down", 60).text.find("upside down") != std::string::npos);
  CHECK(at("\"Pack", "nowhere", 60).text.starts_with("Pack the jars"));
}

TEST_CASE("of a long line of text the sentence at the column is quoted") {
  const std::string line =
      "Wash the beans and snap them. Pack them raw into the jars and add salt if you like it, no more than a "
      "teaspoon. Process quarts for 3 hours in a wash tub. Let them cool.";
  CHECK(quote(line, column_of(line, "3 hours"), "", 60).text == "Process quarts for 3 hours in a wash tub.");
  CHECK(quote(line, column_of(line, "3 hours"), "", 60).part);
  const auto first = quote(line, column_of(line, "beans"), "", 60);
  CHECK(first.text == "Wash the beans and snap them.");
  CHECK_FALSE(first.part);
  const auto deep = quote(line, column_of(line, "no more"), "", 60);
  CHECK(deep.text == "... no more than a teaspoon.");
  CHECK(deep.part);
  const std::string list = "<ul><li>" + std::string(70, 'x') + "</li><li>10 lb white peaches</li></ul>";
  CHECK(quote(list, column_of(list, "10 lb"), "", 60).text == "10 lb white peaches");
}

TEST_CASE("whatever the column, the quote fits") {
  for (const int room : {30, 60, 90}) {
    for (int column = 0; column < columns(page_line) + 3; ++column) {
      for (const auto* found : {"", "crisp", "\""}) {
        const auto quoted = quote(page_line, column, found, room);
        CAPTURE(column);
        CAPTURE(quoted.text);
        CHECK(columns(quoted.text) <= room);
      }
    }
  }
  CHECK(quote(page_line, 100000, "", 60).text.starts_with("<script"));
  CHECK(quote(std::string(90, 'a') + "\"", 91, "x", 60).text.empty());
}
