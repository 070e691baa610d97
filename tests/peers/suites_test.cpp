/// Test data of other parsers through our readers. The data are not ours: tests/tools/suites brings them and
/// names them in the environment (SUITE_JSON, SUITE_HTML).

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <vector>

#include "command/run.hpp"
#include "json/document.hpp"
#include "knowledge/recipes.hpp"
#include "sealworthy/checker.hpp"

namespace sealworthy {
namespace {

std::string place_of(const char* name) {
  const char* value = std::getenv(name);
  REQUIRE_MESSAGE(value != nullptr, name << " names no data; run tests/tools/suites");
  return value;
}

/// True if a line and column stand in the text: a column may be one past the end of its line.
bool within(Position at, std::string_view text) {
  if (at.line < 1 || at.column < 1) return false;
  int line = 1;
  int column = 1;
  for (std::size_t i = 0;; ++i) {
    if (line == at.line && column == at.column) return true;
    if (i >= text.size() || line > at.line) return false;
    const bool line_end =
        text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.size() || text[i + 1] != '\n'));
    if (line_end) {
      ++line;
      column = 1;
    } else if ((static_cast<unsigned char>(text[i]) & 0xC0U) != 0x80U) {
      ++column;
    }
  }
}

/// The inputs of one file of html5lib's tree-construction tests: what stands between "#data" and "#errors".
std::vector<std::string> inputs_of(const std::string& file) {
  std::vector<std::string> inputs;
  const std::string text = test::read_all(file);
  for (std::size_t at = text.starts_with("#data\n") ? 0 : text.find("\n#data\n"); at != std::string::npos;
       at = text.find("\n#data\n", at)) {
    const std::size_t begin = text.find('\n', text.find('#', at)) + 1;
    const std::size_t end = text.find("\n#errors", begin);
    if (end == std::string::npos) break;
    inputs.push_back(text.substr(begin, end - begin));
    at = end;
  }
  return inputs;
}

}  // namespace

TEST_CASE("JSONTestSuite: what must be taken is, what must not be is refused, at a place in the text") {
  // A key that stands twice is JSON by its grammar; a recipe with two yields is nobody's to guess.
  const std::set<std::string> refused_by_us{"y_object_duplicated_key.json",
                                            "y_object_duplicated_key_and_value.json"};
  const auto cases = nlohmann::json::parse(test::read_all(place_of("SUITE_JSON")));
  int taken = 0, refused = 0;
  for (const auto& one : cases) {
    const auto name = one["name"].get<std::string>();
    const auto text = one["input"].get<std::string>();
    const auto read = json::read_document(text);
    const auto* bad = std::get_if<yaml::BadDocument>(&read);
    INFO(name);
    if (name[0] == 'y') CHECK((bad == nullptr) == !refused_by_us.contains(name));
    if (name[0] == 'n') CHECK(bad != nullptr);
    if (bad != nullptr) CHECK(within(bad->error.at, text));
    ++(bad == nullptr ? taken : refused);
  }
  MESSAGE(cases.size() << " texts: " << taken << " taken, " << refused << " refused");
  CHECK(cases.size() > 300);
}

TEST_CASE("html5lib's inputs, alone and in the text of a recipe: places inside the page") {
  const auto checker = Checker::builtin();
  std::size_t pages = 0, recipes = 0;
  CheckOptions options;
  options.all = options.named = true;
  const auto read = [&](const std::string& page) {
    ++pages;
    INFO(page);
    for (const auto& report : checker.check_file("a.html", page, options).recipes) {
      ++recipes;
      CHECK(within(report.at, page));
      for (const auto& finding : report.findings) CHECK(within(finding.at, page));
    }
    for (const auto& found :
         knowledge::find_recipes("a.html", page, checker.knowledge(), {true, true}).recipes) {
      const auto* recipe = std::get_if<recipe::Recipe>(&found.recipe);
      if (recipe == nullptr) continue;
      CHECK(within(recipe->title.at, page));
      for (const auto& line : recipe->ingredients) CHECK(within(line.at, page));
      for (const auto& step : recipe->steps) CHECK(within(step.at, page));
    }
  };
  for (const auto& file : std::filesystem::directory_iterator(place_of("SUITE_HTML"))) {
    if (file.path().extension() != ".dat") continue;
    for (const auto& input : inputs_of(file.path())) {
      read(input);
      read("<h1>Beans</h1>\n<h2>Ingredients</h2><ul><li>9 lb green beans</li>" + input +
           "</ul><h2>Directions</h2>\n<p>Fill pint jars and process them.</p>" + input);
      read("<div itemscope itemtype='https://schema.org/Recipe'><b itemprop=name>Beans</b>" + input +
           "<i itemprop=recipeIngredient>9 lb green beans</i><p itemprop=recipeInstructions>Process " +
           input);
    }
  }
  MESSAGE(pages << " pages, " << recipes << " recipes on them");
  CHECK(pages > 4000);
  CHECK(recipes > 2000);
}

}  // namespace sealworthy
