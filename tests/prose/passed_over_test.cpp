/// A tested recipe with something beside it that nobody tested, said in ways that a reader might pass over:
/// it must never come out tested. And the near misses that must. Invented pages about green beans as USDA
/// Complete Guide (2015), Guide 4, page 4-9, prints them.

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <sealworthy/checker.hpp>
#include <string>
#include <vector>

namespace sealworthy {
namespace {

using Lines = std::vector<std::string>;
using nlohmann::json;

const Lines ingredients{"9 lb green beans, trimmed, cut in 1-inch pieces", "boiling water"};
const std::string filling =
    "Pack the raw beans into hot pint jars. Cover with boiling water, leaving 1 inch headspace.";
const std::string process =
    "Process pints 20 minutes at 11 psi in a dial-gauge pressure canner at 0 to 2,000 ft.";

bool is_tested(const std::string& path, const std::string& text) {
  static const auto checker = Checker::builtin();
  const auto reports = checker.check_text(path, text);
  REQUIRE(reports.size() == 1);
  REQUIRE(reports[0].verdict != Verdict::unreadable);
  return reports[0].verdict == Verdict::tested;
}

Lines with(Lines lines, const Lines& more) {
  lines.insert(lines.end(), more.begin(), more.end());
  return lines;
}

std::string list(const Lines& lines) {
  std::string out;
  for (const auto& line : lines) out += "- " + line + "\n";
  return out;
}

std::string text_page(const Lines& foods, const Lines& steps) {
  return "Beans\n\nIngredients\n" + list(foods) + "\nDirections\n" + list(steps);
}

std::string markdown(const std::string& foods, const std::string& steps) {
  return "# Beans\n\n## Ingredients\n\n" + list(ingredients) + foods + "\n\n## Directions\n\n" +
         list({filling, process}) + steps;
}

std::string linked(json foods, const std::vector<json>& more_steps, const json& more = json::object()) {
  json steps =
      json::array({{{"@type", "HowToStep"}, {"text", filling}}, {{"@type", "HowToStep"}, {"text", process}}});
  for (const auto& step : more_steps) steps.push_back(step);
  json page{{"@context", "https://schema.org"},
            {"@type", "Recipe"},
            {"name", "Beans"},
            {"recipeIngredient", std::move(foods)},
            {"recipeInstructions", std::move(steps)}};
  page.update(more);
  return page.dump(1);
}

std::string card(const std::string& more) {
  return "recipe: Beans\ningredients:\n  - 9 lb green beans, trimmed, cut in 1-inch pieces\n  - boiling "
         "water\npack: raw\n"
         "jars: pint\nheadspace: 1 inch\n"
         "process: {method: pressure canner, gauge: dial, pressure: 11 psi, time: 20 minutes, altitude: "
         "0-2000 ft}\n" +
         more;
}

}  // namespace

TEST_CASE("a tested recipe, and what may stand beside it, in each form") {
  CHECK(is_tested("a.txt", text_page(ingredients, {filling, process})));
  CHECK(is_tested("a.md", markdown("", "")));
  CHECK(is_tested("a.json", linked(ingredients, {})));
  CHECK(is_tested("a.yaml", card("")));
  for (const char* step :
       {"Processing beans in a water bath canner is not safe.", "Add the beans and the boiling water.",
        "Do not add corn.", "Serve them with corn.", "Wipe the rims with vinegar."}) {
    CAPTURE(step);
    CHECK(is_tested("a.txt", text_page(ingredients, {filling, process, step})));
    CHECK(is_tested("a.yaml", card(std::string("steps: [") + step + "]\n")));
  }
  CHECK(is_tested("a.yaml", card("steps: [Process the jars 20 minutes at 11 psi.]\n")));
}

TEST_CASE("a second way to process it is never passed over") {
  for (const char* step :
       {"Grandma's way works too: process 3 hours in a water bath canner.",
        "Some say it is a mistake, but I process mine 10 minutes in a boiling-water canner.",
        "If you are used to it, process 45 minutes in a boiling-water canner.",
        "Process no longer than 10 minutes at 5 psi.",
        "You no longer need the pressure; process 20 minutes in a water bath canner instead.",
        "Or process 10 minutes in a boiling-water canner.",
        "My sister processes hers for 3 hours in a water bath.", "Water bath: 3 hours.",
        "No pressure canner? Process 3 hours in a boiling-water canner.",
        "You may cut the time by 5 minutes.", "I take 5 minutes less."}) {
    CAPTURE(step);
    CHECK_FALSE(is_tested("a.txt", text_page(ingredients, {filling, process, step})));
    CHECK_FALSE(is_tested("a.md", markdown("", "\n<p>" + std::string(step) + "</p>\n")));
    CHECK_FALSE(is_tested("a.json", linked(ingredients, {{{"@type", "HowToStep"}, {"text", step}}})));
  }
  CHECK_FALSE(is_tested(
      "a.md",
      markdown(
          "", "\n## Equipment\n\n- canner\n\n## My way\n\nProcess 10 minutes in a boiling-water canner.\n")));
  const std::string other = "Process 10 minutes in a boiling-water canner";
  CHECK_FALSE(is_tested("a.json",
                        linked(ingredients, {{{"@type", "HowToStep"}, {"name", other}, {"text", "Cool."}}})));
  CHECK_FALSE(is_tested("a.json", linked(ingredients, {{{"@type", "HowToStep"}, {"description", other}}})));
  CHECK_FALSE(is_tested("a.yaml", card("steps: [" + other + ".]\n")));
  CHECK_FALSE(is_tested("a.yaml", card("steps: [Process for 5 minutes only.]\n")));
  const auto quarts =
      "Pack the raw beans into hot quart jars. Cover with boiling water, leaving 1 inch headspace.";
  CHECK_FALSE(is_tested("a.txt", text_page(ingredients, {quarts, process})));
}

TEST_CASE("where the writer cans it is never passed over, and where others might is left to them") {
  for (const char* step :
       {"At our place (6,200 ft) we use the same pressure.", "Up here at 5,500 feet we do it just the same.",
        "We live at 5,000 feet.", "Our cabin sits at 5,000 feet.",
        "We're at 7,000 feet and never had a bad jar.", "We live above 5,000 feet."}) {
    CAPTURE(step);
    CHECK_FALSE(is_tested("a.txt", text_page(ingredients, {filling, process, step})));
    CHECK_FALSE(is_tested("a.yaml", card("steps: [\"" + std::string(step) + "\"]\n")));
    CHECK_FALSE(is_tested("a.md", "# Beans\n\n" + std::string(step) + "\n\n## Ingredients\n\n" +
                                      list(ingredients) + "\n## Directions\n\n" + list({filling, process})));
  }
  for (const char* step :
       {"We live at 1,500 feet.", "If you live above 2,000 feet, ask your extension office.",
        "When you live at 5,000 feet, ask your extension office.", "We do not live at 5,000 feet."}) {
    CAPTURE(step);
    CHECK(is_tested("a.txt", text_page(ingredients, {filling, process, step})));
    CHECK(is_tested("a.yaml", card("steps: [\"" + std::string(step) + "\"]\n")));
  }
}

TEST_CASE("a pressure told for another gauge or another height is never passed over") {
  for (const char* step :
       {"If you have a weighted-gauge canner use 5 pounds.", "Weighted gauge: 10 lbs to 8,000 ft.",
        "Above 2,000 feet use 10 pounds pressure."}) {
    CAPTURE(step);
    CHECK_FALSE(is_tested("a.txt", text_page(ingredients, {filling, process, step})));
  }
  CHECK(is_tested("a.txt", text_page(ingredients, {filling, process,
                                                   "Weighted gauge: 10 lbs to 1,000 ft, 15 lbs above."})));
}

TEST_CASE("a tip in the recipe's own aside is never passed over, the site's own parts are") {
  const auto page = [](const std::string& within, const std::string& after) {
    std::string html = "<html><body><nav>Corn salsa</nav><article><h1>Beans</h1><h2>Ingredients</h2><ul>";
    for (const auto& line : ingredients) html += "<li>" + line + "</li>";
    html += "</ul><h2>Directions</h2><p>" + std::string(filling) + "</p><p>" + process + "</p>" + within +
            "</article>" + after + "</body></html>";
    return html;
  };
  const std::string tip = "<aside>Tip: swap half of the beans for corn.</aside>";
  CHECK(is_tested("a.html", page("", "")));
  CHECK_FALSE(is_tested("a.html", page(tip, "")));
  CHECK_FALSE(
      is_tested("a.html", page("<footer>Or process 10 minutes in a boiling-water canner.</footer>", "")));
  CHECK_FALSE(is_tested("a.html", page("Cool the jars.<aside>Use half corn if you like.</aside>", "")));
  CHECK_FALSE(is_tested("a.html", page("<div class=\"widget\">Swap half of the beans for corn.</div>", "")));
  CHECK(is_tested("a.html", page("", tip)));
  CHECK(is_tested("a.html", page("<aside class=\"related\">Corn salsa: add the corn.</aside>", "")));
}

TEST_CASE("a food beside the list, or half hidden in it, is never passed over") {
  for (const char* step :
       {"Stir in 2 cups of corn.", "Add 1 small onion to each jar.", "Swap half of the beans for corn.",
        "Use half corn if you like.", "Put a slice of bacon in each jar."}) {
    CAPTURE(step);
    CHECK_FALSE(is_tested("a.txt", text_page(ingredients, {filling, step, process})));
    CHECK_FALSE(is_tested("a.yaml", card(std::string("steps: [") + step + "]\n")));
  }
  for (const char* food :
       {"2 cups corn:", "9 lb green beans with corn, cut in 1-inch pieces",
        "1 lb green beans (and 2 cups corn), cut in 1-inch pieces", "1 cup corn (optional)"}) {
    CAPTURE(food);
    CHECK_FALSE(is_tested("a.txt", text_page(with(ingredients, {food}), {filling, process})));
  }
  for (const char* line : {"<li>2 cups corn</li>", "{{ corn 2 cups }}", "| 2 cups | corn |",
                           "~~~\n2 cups corn\n~~~", "```\n2 cups corn\n```"}) {
    CAPTURE(line);
    CHECK_FALSE(is_tested("a.md", markdown(line, "")));
  }
  json foods(ingredients);
  foods.push_back({{"food", "corn"}, {"quantity", "2 cups"}});
  CHECK_FALSE(is_tested("a.json", linked(foods, {})));
  CHECK_FALSE(is_tested("a.json", linked(ingredients, {}, {{"ingredients", {"2 cups corn"}}})));
}

TEST_CASE("an amount for each jar gives way to no other line of the list") {
  // As USDA Complete Guide (2015), Guide 3, page 3-7, prints crushed tomatoes.
  const Lines steps{"Boil the tomatoes 5 minutes.", "Add 1 tablespoon lemon juice to each pint jar.",
                    "Fill hot tomatoes into jars, leaving 1/2 inch headspace.",
                    "Process pints 35 minutes in a boiling-water canner at 0-1,000 ft."};
  const Lines foods{"21 lb tomatoes, peeled, cored, crushed", "bottled lemon juice"};
  CHECK(is_tested("a.txt", text_page(foods, steps)));
  CHECK_FALSE(is_tested("a.txt", text_page(with(foods, {"carrot juice"}), steps)));
}

}  // namespace sealworthy
