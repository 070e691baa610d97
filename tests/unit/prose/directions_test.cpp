#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>

#include "prose/understand.hpp"
#include "quantity/figures.hpp"
#include "rules_at_hand.hpp"
#include "yaml/document.hpp"

namespace sealworthy {
namespace {

const knowledge::Knowledge& rules() { return knowledge::Knowledge::builtin(); }

recipe::Recipe understood(std::string_view directions, std::string_view title = "A jar of something") {
  recipe::Page page;
  page.title = {title, {1, 1}, false};
  page.ingredients = {{"4 lb fruit", {2, 1}, false}};
  page.directions = {{directions, {3, 1}, true}};
  auto read = prose::understand(page, rules().directions);
  REQUIRE(std::holds_alternative<prose::Understood>(read));
  return std::get<prose::Understood>(std::move(read)).recipe;
}

std::string_view kind_word(reading::MethodKind kind) {
  switch (kind) {
    case reading::MethodKind::boiling_water:
      return "boiling-water ";
    case reading::MethodKind::steam:
      return "steam ";
    case reading::MethodKind::pressure:
      return "pressure ";
    case reading::MethodKind::low_temperature:
      return "low-temperature ";
    case reading::MethodKind::not_accepted:
      return "not-accepted ";
    default:
      return "";
  }
}

std::string number(double value) {
  const double rounded = std::round(value * 100) / 100;
  return std::isinf(value) ? "inf" : fmt::format("{}", rounded);
}

std::string shown(const recipe::Process& process) {
  std::string out;
  if (process.method) {
    const auto* method = rules().methods.find(process.method->value);
    out += method == nullptr ? "? " : kind_word(method->kind);
  }
  if (process.gauge) out += process.gauge->value == recipe::Gauge::dial ? "dial " : "weighted ";
  if (process.pressure) out += number(in_psi(process.pressure->value.low)) + " psi ";
  if (process.time) out += number(in_minutes(process.time->value.low)) + " min ";
  if (process.altitude)
    out += number(std::round(in_feet(process.altitude->value.low))) + "-" +
           number(std::round(in_feet(process.altitude->value.high))) + " ft ";
  for (const auto& jar : process.jars) out += jar.value.name + " ";
  if (!out.empty()) out.pop_back();
  return out;
}

std::string shown(const recipe::IngredientLine& line) {
  return (line.per_jar_of ? line.per_jar_of->value.name : "jar") + " " + std::string(line.text);
}

std::string joined(const std::vector<std::string>& texts) {
  return fmt::format("{}", fmt::join(texts, "; "));
}

std::string texts(const yaml::Node& node) {
  std::vector<std::string> out;
  for (const auto& item : node.items) out.emplace_back(item.text);
  return joined(out);
}

const yaml::Document& corpus() {
  static const auto document = [] {
    std::ifstream file(SEALWORTHY_SOURCE_DIR "/tests/data/directions.yaml");
    std::stringstream text;
    text << file.rdbuf();
    return std::get<yaml::Document>(yaml::read_documents(text.str()).at(0));
  }();
  return document;
}

}  // namespace

TEST_CASE("each sentence is understood, and its negation tells nothing") {
  const auto& sentences = *corpus().root().find("sentences");
  for (const auto& one : sentences.items) {
    const auto say = one.find("say")->text;
    CAPTURE(say);
    const auto* title = one.find("title");
    const auto recipe = title == nullptr ? understood(say) : understood(say, title->text);
    if (const auto* wanted = one.find("process")) {
      std::vector<std::string> found;
      for (const auto& process : recipe.processes) found.push_back(shown(process));
      CHECK(joined(found) == texts(*wanted));
    }
    if (const auto* wanted = one.find("headspace")) {
      const std::string found =
          recipe.headspace ? quantity::kitchen_number(in_inches(recipe.headspace->value.low)) : "none";
      CHECK(found == wanted->text);
    }
    if (const auto* wanted = one.find("pack")) {
      const std::string found = !recipe.pack                              ? "none"
                                : recipe.pack->value == recipe::Pack::hot ? "hot"
                                                                          : "raw";
      CHECK(found == wanted->text);
    }
    if (const auto* wanted = one.find("home")) {
      const std::string found = recipe.homes.empty() ? "none" : number(in_feet(recipe.homes[0].value));
      CHECK(found == wanted->text);
    }
    if (const auto* wanted = one.find("jars")) {
      std::vector<std::string> found;
      for (const auto& jar : recipe.jars) found.push_back(jar.value.name);
      CHECK(joined(found) == texts(*wanted));
    }
    if (const auto* wanted = one.find("each")) {
      std::vector<std::string> found;
      for (const auto& line : recipe.ingredients)
        if (line.per_jar) found.push_back(shown(line));
      CHECK(joined(found) == texts(*wanted));
    }
    CHECK(recipe.doubts.empty() == (one.find("unclear") == nullptr));
  }
  MESSAGE(sentences.items.size() << " sentences");
}

TEST_CASE("every word is found where it stands") {
  const auto recipe = understood(
      "Fill the jars.\nLeave 1/2 inch of headspace.\n  Process pints 15 minutes in a\nboiling-water canner.");
  REQUIRE(recipe.headspace);
  CHECK(recipe.headspace->at == Position{4, 7});
  CHECK(recipe.headspace->text == "1/2 inch");
  REQUIRE(recipe.processes.size() == 1);
  CHECK(recipe.processes[0].time->at == Position{5, 17});
  CHECK(recipe.processes[0].time->text == "15 minutes");
  CHECK(recipe.processes[0].method->at == Position{6, 1});
}

TEST_CASE("acid in the list of ingredients is not counted again from the directions") {
  recipe::Page page;
  page.title = {"Crushed tomatoes", {1, 1}, false};
  page.ingredients = {{"22 lb tomatoes, peeled", {2, 1}, false},
                      {"2 tbsp bottled lemon juice per quart", {3, 1}, false}};
  page.directions = {{"Add 2 tablespoons bottled lemon juice to each quart jar.", {4, 1}, false}};
  auto read = prose::understand(page, rules().directions);
  CHECK(std::get<prose::Understood>(read).recipe.ingredients.size() == 2);
  page.ingredients[1].text = "bottled lemon juice";
  read = prose::understand(page, rules().directions);
  const auto& lines = std::get<prose::Understood>(read).recipe.ingredients;
  REQUIRE(lines.size() == 2);
  CHECK(lines[1].per_jar);
  CHECK(lines[1].text == "2 tablespoons bottled lemon juice");
}

TEST_CASE("a page is about canning if it says so") {
  const auto canning = [&](std::string_view title, std::string_view directions) {
    recipe::Page page;
    page.title = {title, {1, 1}, false};
    page.ingredients = {{"4 lb fruit", {2, 1}, false}};
    page.directions = {{directions, {3, 1}, false}};
    auto read = prose::understand(page, rules().directions);
    return std::get<prose::Understood>(read).canning;
  };
  CHECK(canning("Plum jam", "Ladle into hot jars and process 10 minutes."));
  CHECK(canning("Plum jam", "Pour into jars, put on the lids and turn upside down."));
  CHECK(canning("Peach pie filling", "Ladle into quarts, leave an inch and a half, and water-bath 30 min."));
  CHECK(canning("Relish", "Pack in pints, 1/2 inch, 10 minutes in a boiling-water bath at sea level."));
  CHECK(canning("Chicken and rice", "Put a handful in each pint, top with broth. 75 minutes at 10 pounds."));
  CHECK(canning("Grape jelly", "Pour in jelly glasses. Pour melted paraffin on top."));
  CHECK(canning("Grape jelly", "Pour into jars. When cold store in the cellar."));
  CHECK_FALSE(canning("Punch", "Pour into glasses. Store the rest in the cellar."));
  CHECK_FALSE(canning("Candy", "Melt the chocolate with paraffin and dip the balls."));
  CHECK_FALSE(canning("Custard", "Pour into ramekins, 40 minutes in a water bath at 325 F."));
  CHECK_FALSE(canning("Granola", "Pour into jars and keep for 2 weeks."));
  CHECK_FALSE(
      canning("Turkey", "Roast a bird of 12 pounds. 75 minutes at 10 pounds, longer if it is larger."));
  CHECK_FALSE(canning("Roast chicken", "Roast at 400 F for 1 hour. Serve with plum jam."));
  CHECK_FALSE(canning("Cheesecake", "Bake in a water bath for 60 minutes."));
  CHECK_FALSE(canning("Salad dressing", "Pour into a jar, cover and shake."));
}

}  // namespace sealworthy
