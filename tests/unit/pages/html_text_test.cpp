/// Pages that say nothing in schema.org's words: their text is read like plain text. Invented pages; the
/// process of the beans is USDA Complete Guide (2015), Guide 4, page 4-9.

#include <doctest/doctest.h>

#include <sealworthy/checker.hpp>
#include <string>

#include "knowledge/recipes.hpp"

namespace sealworthy {
namespace {

const Checker& page_checker() {
  static const auto made = Checker::builtin();
  return made;
}

knowledge::FoundRecipes found_on(std::string_view text, const knowledge::Asked& asked = {}) {
  return knowledge::find_recipes("a.html", text, page_checker().knowledge(), asked);
}

const recipe::Recipe& only(const knowledge::FoundRecipes& found) {
  REQUIRE(found.recipes.size() == 1);
  return std::get<recipe::Recipe>(found.recipes[0].recipe);
}

const std::string page_beans = R"(<html><head><title>Beans of the ridge - Larder</title></head><body>
<header><h1>The larder</h1></header>
<nav><ul><li>3 cups of links</li></ul></nav>
<main>
<h1>Beans of&nbsp;the <em>ridge</em></h1>
<ul><li>Jump to recipe<li>Print</ul>
<p>Written in spring.</p>
<h2>Ingredients</h2>
<ul>
<li>9 lb green beans, trimmed,
    cut in 1-inch pieces
<li>boiling water</li>
</ul>
<h2>Directions</h2>
<ol><li><p>Pack the raw beans into hot pint jars. Cover with boiling water, leaving 1 inch headspace.</p>
<li>Process pints 20 minutes at 11 psi<br>in a dial-gauge pressure canner at 0 to 2,000 ft.</ol>
</main>
<aside>Bake your jars in the oven.</aside>
<div class="post-comments comments">I use an open kettle.</div>
<footer>2 jars for 5</footer></body></html>
)";

std::string page_with(const std::string& from, const std::string& to) {
  auto text = page_beans;
  const auto at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("the text of a page gives the recipe, each line where it stands") {
  const auto found = found_on(page_beans);
  const auto& recipe = only(found);
  CHECK(recipe.title.value == "Beans of the ridge");
  CHECK(recipe.title.at == Position{5, 5});
  REQUIRE(recipe.ingredients.size() == 2);
  CHECK(recipe.ingredients[0].text == "9 lb green beans, trimmed, cut in 1-inch pieces");
  CHECK(recipe.ingredients[0].at == Position{10, 5});
  CHECK(recipe.ingredients[1].at == Position{12, 5});
  REQUIRE(recipe.steps.size() == 2);
  CHECK(recipe.steps[0].at == Position{15, 12});
  CHECK(recipe.steps[1].at == Position{16, 5});
  REQUIRE(recipe.processes.size() == 1);
  const auto reports = page_checker().check_text("a.html", page_beans);
  REQUIRE(reports.size() == 1);
  CHECK(reports[0].verdict == Verdict::tested);
}

TEST_CASE("what stands in the text beside a tested recipe is not passed over") {
  const auto tested = [](const std::string& text) {
    const auto reports = page_checker().check_text("a.html", text);
    REQUIRE(reports.size() == 1);
    return reports[0].verdict == Verdict::tested;
  };
  CHECK(tested(page_beans));
  CHECK_FALSE(tested(page_with("<li>boiling water</li>", "<li>boiling water</li>\n<li>1 cup butter")));
  CHECK_FALSE(tested(page_with("<li>boiling water</li>", "<li>boiling water</li><p>2 cups corn</p>")));
  CHECK_FALSE(tested(page_with("</ol>", "</ol><p>Or process 5 minutes in boiling water.</p>")));
  CHECK_FALSE(tested(page_with("</ol>", "</ol><h3>Tip</h3><div>Stir a cup of flour into each jar.</div>")));
  CHECK_FALSE(tested(page_with("20 minutes", "<s>20</s> 15 minutes")));
  CHECK_FALSE(tested(page_with("</main>", "<section hidden>x</section>Process the jars 10 minutes.</main>")));
}

TEST_CASE("article and main go before the rest of the body; without them all of it is read") {
  auto bare = page_with("<main>", "<div>");
  bare.replace(bare.find("</main>"), 7, "</div>");
  CHECK(only(found_on(bare)).title.value == "Beans of the ridge");
  CHECK(only(found_on(bare)).steps.size() == 2);
  // Teasers are articles too.
  const auto teasers = bare + "<article><h2>Pears</h2><p>Read more about jars</article>";
  CHECK(only(found_on(teasers)).ingredients.size() == 2);
  CHECK(only(found_on("<pre>Beans\n\nIngredients\n9 lb green beans\n\nDirections\nFill the jars.\nProcess "
                      "pints 20 minutes.</pre>"))
            .ingredients[0]
            .at == Position{4, 1});
  const auto table = found_on(
      "<table><tr><th>Ingredients</th></tr><tr><td>9 lb</td><td>green beans</td></tr></table>"
      "<h2>Directions</h2>Fill pint jars and process them 20 minutes.");
  CHECK(only(table).ingredients[0].text == "9 lb green beans");
}

TEST_CASE("pages of other things are passed over, and counted") {
  for (const std::string_view text :
       {"<p>Nothing here</p>", "<h1>Jars</h1><p>We sell canning jars and lids.</p>",
        "<h1>Roast</h1><h2>Ingredients</h2><ul><li>1 chicken</ul><h2>Directions</h2><p>Roast 1 hour.</p>"}) {
    CHECK(found_on(text).recipes.empty());
    CHECK(found_on(text).skipped == 1);
  }
  const std::string_view roast =
      "<h1>Roast</h1><h2>Ingredients</h2><ul><li>1 chicken</ul><h2>Directions</h2><p>Roast 1 hour.</p>";
  CHECK(found_on(roast, {true}).recipes.size() == 1);
  // Near misses: the words of canning in a recipe that is none.
  const std::string_view jam_cake =
      "<h1>Jam cake</h1><h2>Ingredients</h2><ul><li>1 jar jam<li>2 cups flour</ul><h2>Directions</h2><p>Mix "
      "and bake 40 minutes.</p>";
  CHECK(found_on(jam_cake).recipes.empty());
  CHECK(found_on(jam_cake).skipped == 1);
}

TEST_CASE("scripts that can't be read: told where the page speaks of canning or was asked for") {
  const std::string roast =
      "<html>\n<script type='application/ld+json'>\n{\"@type\": \"Recipe\", // the roast\n}</script>";
  CHECK(found_on(roast).recipes.empty());
  CHECK(found_on(roast).skipped == 1);
  const auto named = found_on(roast, {false, true});
  REQUIRE(named.recipes.size() == 1);
  const auto& error = std::get<yaml::Error>(named.recipes[0].recipe);
  CHECK(error.message == "JSON has no comments.");
  CHECK(error.at == Position{3, 21});
  CHECK(found_on(roast + "<p>Fill the jars").recipes.size() == 1);
  // The same script twice is one recipe; a broken one beside a good one leaves it.
  const std::string good =
      R"(<script type="application/ld+json">{"@type": "Recipe", "name": "Jam", "recipeIngredient": ["4 lb plums"],
"recipeInstructions": "Ladle into jars. Process 10 minutes in a boiling-water canner."}</script>)";
  CHECK(found_on(good + good).recipes.size() == 1);
  CHECK(found_on(roast + good).recipes.size() == 2);
}

TEST_CASE("a page of 10 MB and one that is nested without end are read or refused in good time") {
  std::string large = page_with("<p>Written", "<p>" + std::string(10'000'000, 'x') + " Written");
  CHECK(only(found_on(large)).steps.size() == 2);
  std::string deep;
  for (int i = 0; i < 5000; ++i) deep += "<div>";
  const auto found = found_on(deep + page_beans);
  REQUIRE(found.recipes.size() == 1);
  CHECK(std::holds_alternative<yaml::Error>(found.recipes[0].recipe));
  std::string larger = page_with("<p>Written", "<p>" + std::string(17'000'000, 'x'));
  REQUIRE(found_on(larger).recipes.size() == 1);
  CHECK(std::holds_alternative<yaml::Error>(found_on(larger).recipes[0].recipe));
}

TEST_CASE("JSON that can't be read: told where it speaks of canning or was asked for, else counted") {
  const auto& knowledge = page_checker().knowledge();
  const std::string_view settings = "{\"strict\": true, // as the editor writes it\n}";
  CHECK(knowledge::find_recipes("a.json", settings, knowledge, {}).skipped == 1);
  CHECK(knowledge::find_recipes("a.json", settings, knowledge, {true}).skipped == 1);
  const auto named = knowledge::find_recipes("a.json", settings, knowledge, {false, true});
  REQUIRE(named.recipes.size() == 1);
  CHECK(std::get<yaml::Error>(named.recipes[0].recipe).at == Position{1, 18});
  const std::string_view recipe = "{\"title\": \"Beans\", \"how\": \"Fill the jars\",}";
  CHECK(knowledge::find_recipes("a.json", recipe, knowledge, {}).recipes.size() == 1);
  // What can be read and holds no recipe is no error, named or not.
  CHECK(knowledge::find_recipes("a.json", "{\"jars\": 7}", knowledge, {false, true}).skipped == 1);
}

TEST_CASE("every phrase that tells of canning passes the byte test") {
  const auto& words = page_checker().knowledge().directions;
  for (const std::string_view text :
       {"Mason jars", "home-canned", "two-piece lids", "the lids seal", "lids pop", "headspace",
        "half-pint jars", "waterbath", "boiling-water bath", "pressure can", "Pressure-Canner",
        "put up in jars"})
    CHECK_MESSAGE(words.may_speak_of_canning(text), text);
  for (const std::string_view text : {"ajar", "canny", "a pan of water", "can of beans", "process.env"})
    CHECK_MESSAGE(!words.may_speak_of_canning(text), text);
}

}  // namespace sealworthy
