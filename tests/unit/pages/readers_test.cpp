#include <doctest/doctest.h>

#include <array>
#include <sealworthy/checker.hpp>
#include <sealworthy/read.hpp>

#include "json/document.hpp"
#include "knowledge/recipes.hpp"

namespace sealworthy {
namespace {

const Checker& checker() {
  static const auto made = Checker::builtin();
  return made;
}

knowledge::FoundRecipes found(std::string_view path, std::string_view text, bool all = false) {
  return knowledge::find_recipes(path, text, checker().knowledge(), {all});
}

const recipe::Recipe& recipe_of(const knowledge::FoundRecipe& one) {
  return std::get<recipe::Recipe>(one.recipe);
}
const yaml::Error& error_of(const knowledge::FoundRecipe& one) { return std::get<yaml::Error>(one.recipe); }

constexpr std::string_view steps =
    R"("recipeInstructions": "Ladle hot into hot pint jars.\nProcess 10 minutes in a boiling-water canner.")";

}  // namespace

TEST_CASE("JSON of RFC 8259: what must be read is, what must not be is told at its place") {
  // Texts of the RFC's grammar and of the usual JSON test suites' basics.
  for (const std::string_view good :
       {"[]", "{}", "null", "\"\"", " [1, -0.5e+3, true, false, null] ", "{\"a\": {\"b\": [\"c\"]}}",
        "[\"\\ud83c\\udf51 \\u00e9 \\/ \\\\\"]", "\xEF\xBB\xBF{}", "\t{\"a\":\t1}\r\n", "[[[[[[]]]]]]"})
    CHECK_MESSAGE(std::holds_alternative<yaml::Document>(json::read_document(good)), good);
  for (const std::string_view bad :
       {"", " ", "[1,]", "{\"a\":1,}", "{\"a\" 1}", "{a: 1}", "['a']", "[1] 2", "[01]", "[.5]", "[\"\n\"]",
        "[\"\\x\"]", "[\"\xFF\"]", "// a\n{}", "[1 /* b */]", "{\"a\":1", "[\"a", "nul", "{\"a\":1,\"a\":2}"})
    CHECK_MESSAGE(std::holds_alternative<yaml::BadDocument>(json::read_document(bad)), bad);
  const auto comma = json::read_document("{\"a\": [1,\n  2,\n]}");
  REQUIRE(std::holds_alternative<yaml::BadDocument>(comma));
  CHECK(std::get<yaml::BadDocument>(comma).error.at == Position{2, 4});
  CHECK(std::get<yaml::BadDocument>(comma).error.message == "A comma stands before the closing bracket.");
  const auto places = json::read_document("{\"é\": \"x\",\n \"b\": [1, \"two\"]}");
  const auto& root = std::get<yaml::Document>(places).root();
  CHECK(root.entries[0].value.at == Position{1, 7});
  CHECK(root.entries[1].value.items[1].at == Position{2, 11});
  CHECK(root.entries[1].value.items[1].text == "two");
  // JSONTestSuite's n_multidigit_number_then_00, and more behind the zero byte.
  const auto zero = json::read_document(std::string_view("[1]\n\0[2]", 8));
  REQUIRE(std::holds_alternative<yaml::BadDocument>(zero));
  CHECK(std::get<yaml::BadDocument>(zero).error.at == Position{2, 1});
  const std::string deep(100000, '[');
  CHECK(std::holds_alternative<yaml::BadDocument>(json::read_document(deep)));
}

TEST_CASE("JSON-LD: one recipe, an array, a graph; types with a prefix and in a list") {
  const std::string one =
      std::string(
          R"({"@type": "Recipe", "name": "Plum jam &amp; more", "recipeIngredient": ["4 lb plums"], )") +
      std::string(steps) + "}";
  for (const std::string& text :
       {one, "[" + one + "]", "{\"@graph\": [{\"@type\": \"WebSite\"}, " + one + "]}",
        "{\"mainEntity\": " + one + "}"}) {
    CAPTURE(text);
    const auto read = found("a.json", text);
    REQUIRE(read.recipes.size() == 1);
    CHECK(recipe_of(read.recipes[0]).title.value == "Plum jam & more");
    CHECK(recipe_of(read.recipes[0]).steps.size() == 2);
    CHECK(recipe_of(read.recipes[0]).processes.size() == 1);
  }
  for (const std::string_view type :
       {R"("http://schema.org/Recipe")", R"(["Recipe", "NewsArticle"])", R"("schema:Recipe")"}) {
    const std::string text = "{\"@type\": " + std::string(type) + one.substr(one.find(", \"name\""));
    CHECK(found("a.jsonld", text).recipes.size() == 1);
  }
  CHECK(found("a.json", "[" + one + "," + one + "]").recipes.size() == 1);  // the same twice
  CHECK(found("package.json", R"({"name": "site", /* no recipe */ })").skipped == 1);
  CHECK(found("a.json", one, false).skipped == 0);
}

TEST_CASE("a page that is not about canning is skipped and counted, unless all are asked for") {
  const std::string_view roast =
      "# Roast chicken\n\n## Ingredients\n\n- 1 chicken\n\n## Directions\n\nRoast 1 hour.\n";
  CHECK(found("a.md", roast).recipes.empty());
  CHECK(found("a.md", roast).skipped == 1);
  CHECK(found("a.md", roast, true).recipes.size() == 1);
  const auto report = checker().check_file("a.md", roast);
  CHECK(report.recipes.empty());
  CHECK(report.skipped == 1);
  CHECK(found("a.html", "<p>Nothing here</p>").skipped == 1);
  CHECK(found("README.md", "# A site\n\nSome words.\n").skipped == 1);
}

TEST_CASE("Markdown: a card in the front matter keeps the site's own keys apart") {
  const std::string card =
      "---\nlayout: post\ntags: [a]\nrecipe: Carrots\ningredients:\n  - 11 lb carrots, peeled, sliced\njars: "
      "pint\n---\n\nTurn the jars upside down.\n";
  const auto read = found("a.md", card);
  REQUIRE(read.recipes.size() == 1);
  const auto& recipe = recipe_of(read.recipes[0]);
  CHECK(recipe.title.at == Position{4, 9});
  REQUIRE(recipe.steps.size() == 1);
  CHECK(recipe.steps[0].at == Position{10, 1});
  const auto under =
      found("a.md", "---\ntitle: x\ncard:\n  recipe: Carrots\n  ingredients: [11 lb carrots]\n---\n");
  REQUIRE(under.recipes.size() == 1);
  CHECK(recipe_of(under.recipes[0]).title.value == "Carrots");
  // A slip in a key of the card is told, as in any card.
  const auto slip =
      found("a.md", "---\nrecipe: Carrots\ningredients: [11 lb carrots]\nheadspce: 1 inch\n---\n");
  REQUIRE(slip.recipes.size() == 1);
  CHECK(error_of(slip.recipes[0]).at == Position{4, 1});
}

TEST_CASE("several recipes in one text, each with its title and place") {
  const auto read = found("a.txt",
                          "Plum jam\n\nIngredients\n4 lb plums\n2 cups sugar\n\nDirections\nFill pint jars. "
                          "Process 10 minutes in a "
                          "boiling-water canner.\n\nPear halves\n\nIngredients\n5 lb "
                          "pears\n\nDirections\nFill jars. Process quarts 25 "
                          "minutes in a boiling-water canner.\n");
  REQUIRE(read.recipes.size() == 2);
  CHECK(recipe_of(read.recipes[0]).ingredients.size() == 2);
  CHECK(recipe_of(read.recipes[0]).steps.size() == 1);
  CHECK(recipe_of(read.recipes[1]).title.value == "Pear halves");
  CHECK(recipe_of(read.recipes[1]).title.at == Position{10, 1});
  CHECK(recipe_of(read.recipes[1]).ingredients[0].at == Position{13, 1});
}

TEST_CASE("HTML: broken markup, bad scripts and strange encodings leave the rest readable") {
  const std::string good =
      std::string(
          R"(<script type="application/ld+json">{"@type": "Recipe", "name": "Jam", "recipeIngredient": ["4 lb plums"], )") +
      std::string(steps) + "}</script>";
  const auto both =
      found("a.html",
            "<html><script type='application/ld+json'>\n{\"@type\": \"Recipe\",}</script>" + good + "<p><b>");
  REQUIRE(both.recipes.size() == 2);
  CHECK(error_of(both.recipes[0]).at == Position{2, 19});
  CHECK(recipe_of(both.recipes[1]).title.value == "Jam");
  CHECK(found("a.html", "<div><p><li></div></ul>" + good).recipes.size() == 1);
  std::string deep;
  for (int i = 0; i < 5000; ++i) deep += "<div>";
  CHECK(found("a.html", deep + good).recipes.size() >= 1);
  std::string wide = "\xFF\xFE";
  for (const char c : good) wide += std::string{c, '\0'};
  CHECK(found("a.html", wide).recipes.size() == 1);
  CHECK(std::holds_alternative<yaml::Error>(found("a.html", good + "\xFF").recipes.at(0).recipe));
  const std::string western =
      "<meta charset=\"iso-8859-1\"><div itemscope itemtype=\"http://schema.org/Recipe\"><h1 "
      "itemprop=\"name\">Gel\xE9"
      "e</h1><li itemprop=recipeIngredient>4 lb plums<li itemprop=recipeInstructions>Process pints "
      "10&nbsp;minutes.</div>";
  const auto read = found("a.html", western);
  REQUIRE(read.recipes.size() == 1);
  CHECK(recipe_of(read.recipes[0]).title.value ==
        "Gel\xC3\xA9"
        "e");
  REQUIRE(recipe_of(read.recipes[0]).processes.size() == 1);
}

TEST_CASE("NDJSON: a bad line leaves the others") {
  const auto read = found("a.ndjson",
                          "{\"recipe\": \"Carrots\", \"ingredients\": [\"11 lb carrots\"]}\n{\"recipe\": "
                          "\n\n{\"recipe\": \"Beets\", "
                          "\"ingredients\": [\"10 lb beets\"]}\n");
  REQUIRE(read.recipes.size() == 3);
  CHECK(recipe_of(read.recipes[0]).title.value == "Carrots");
  CHECK(error_of(read.recipes[1]).at.line == 2);
  CHECK(recipe_of(read.recipes[2]).title.at.line == 4);
}

TEST_CASE("a recipe to be kept cold needs no process; one for the shelf does") {
  const auto rules = [&](std::string_view directions) {
    const auto reports = checker().check_text(
        "a.txt", "Quick pickles\n\nIngredients\n2 lb cucumbers\n1 cup white vinegar (5%)\n\nDirections\n" +
                     std::string(directions) + "\n");
    bool missing = false;
    for (const auto& report : reports)
      for (const auto& finding : report.findings)
        missing = missing || (finding.topic == Topic::method && finding.severity >= Severity::warning);
    REQUIRE(reports.size() == 1);
    return missing;
  };
  CHECK_FALSE(
      rules("Pack into jars, put on the lids. Store in the refrigerator for up to 3 weeks or freeze for up "
            "to a year."));
  CHECK(rules("Pack into jars, put on the lids and store in the pantry."));
  CHECK(rules("Pack into jars, put on the lids and store, or freeze."));
}

TEST_CASE("of a page without a title findings point at its first line all the same") {
  // Found by the fuzz target for pages.
  const auto reports = checker().check_text(
      "a.md",
      "\nIngredients\n\n- 14 lb green beans\n\nDirections\n\nPack raw and process the jars 45 minutes.\n");
  REQUIRE_FALSE(reports.empty());
  for (const auto& report : reports) {
    CHECK(report.at.line >= 1);
    for (const auto& finding : report.findings) CHECK(finding.at.line >= 1);
  }
}

TEST_CASE("the card written of a page is a card with the same verdict") {
  const std::string_view page =
      "Peaches\n\nIngredients\n11 lb peaches, peeled, halved and pitted\n1 1/4 cups sugar\n5 1/2 cups "
      "water\n\nDirections\nLadle hot into hot "
      "pint jars, leaving 1/2 inch headspace. Process 20 minutes in a boiling-water canner at 0-1,000 ft.\n";
  const auto cards = read_recipes(checker(), "a.txt", page, ReadFormat::card);
  REQUIRE(cards.recipes.size() == 1);
  const auto as_page = checker().check_text("a.txt", page);
  const auto as_card = checker().check_text("a.yaml", cards.recipes[0]);
  INFO(cards.recipes[0]);
  CHECK(as_card.at(0).verdict == as_page.at(0).verdict);
  CHECK(as_page.at(0).verdict == Verdict::tested);
}

TEST_CASE("a line that counts jars is the yield, not a food; an amount of a food is a food") {
  const std::string rest =
      "\n- 6 cups blueberries\n- 6 cups sugar\n\nSimmer. Ladle hot into jars. Process 10 minutes in a "
      "boiling-water canner.\n";
  for (const std::string_view line : {"About 9 half pints", "7 quarts", "8 to 9 pints.", "4 pint jars"}) {
    CAPTURE(line);
    for (const std::string_view path : {"a.md", "a.txt"}) {
      const auto read = found(path, "Berry syrup\n\n" + std::string(line) + "\n" + rest);
      REQUIRE(read.recipes.size() == 1);
      CHECK(recipe_of(read.recipes[0]).ingredients.size() == 2);
      CHECK(recipe_of(read.recipes[0]).makes.has_value());
    }
  }
  for (const std::string_view line : {"2 pints strawberries", "4 cups", "1 quart water", "- 4 quarts"}) {
    CAPTURE(line);
    const auto read = found("a.txt", "Berry syrup\n\n" + std::string(line) + rest);
    REQUIRE(read.recipes.size() == 1);
    CHECK(recipe_of(read.recipes[0]).ingredients.size() == 3);
  }
}

TEST_CASE("what a page tells above its list of ingredients is read where nothing stands below it") {
  const auto page = [](std::string_view prose) {
    return "<html><body><article><h1>Bacon</h1><p>" + std::string(prose) +
           "</p><h2>Ingredients</h2><ul><li>12 oz bacon</li></ul></article></body></html>";
  };
  const auto canned =
      found("a.html", page("Stuff one roll in each quart jar. Pressure can at 10 pounds for 90 minutes."));
  REQUIRE(canned.recipes.size() == 1);
  REQUIRE(recipe_of(canned.recipes[0]).processes.size() == 1);
  CHECK(recipe_of(canned.recipes[0]).processes[0].time.has_value());
  CHECK(found("a.html", page("Keep the fat in a jar. Bake the rolls in a water bath for 30 minutes."))
            .recipes.empty());
}

}  // namespace sealworthy
