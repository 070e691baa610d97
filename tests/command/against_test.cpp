#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <sstream>

#include "command/cards.hpp"
#include "command/run.hpp"

using sealworthy::test::Folder;
using sealworthy::test::replaced;
using sealworthy::test::run;

namespace {

constexpr auto two_pots = R"(recipe: Two pots of salsa
ingredients:
  - 12 cups peeled, cored, seeded, chopped tomatoes
  - 20 cups diced onions and bell peppers
  - 3 cups bottled lime juice
  - 6 tsp canning salt
  - 1 cup corn kernels
pack: hot
jars: pint
headspace: 1/2 inch
process: {method: boiling water, time: 15 minutes, altitude: 0-1000 ft}
)";

}  // namespace

TEST_CASE("check --against puts card and formula side by side within 80 columns") {
  const Folder folder;
  const auto file = folder.write("salsa.yaml", two_pots);
  const auto ran = run("check --against choice-salsa " + file);
  CHECK(ran.status == 1);
  CHECK(ran.out.find("Choice salsa, at 2 times the published batch") != std::string::npos);
  CHECK(ran.out.find("= 12 cups peeled") != std::string::npos);
  CHECK(ran.out.find("> 20 cups diced") != std::string::npos);
  CHECK(ran.out.find("+ 1 cup corn") != std::string::npos);
  std::istringstream lines(ran.out.substr(ran.out.find("side by side")));
  for (std::string line;
       std::getline(lines, line) && line.find("recipe:") == std::string::npos && !line.empty();)
    CHECK(line.size() <= 80);
}

TEST_CASE("check --against in JSON, and an id that no process has") {
  const Folder folder;
  const auto file = folder.write("salsa.yaml", two_pots);
  const auto json = nlohmann::json::parse(run("check --format json --against choice-salsa " + file).out);
  const auto& compared = json.at("recipes").at(0).at("compared");
  CHECK(compared.at("id") == "choice-salsa");
  CHECK(compared.at("batches") == doctest::Approx(2));
  CHECK(compared.at("lines").size() == 5);
  CHECK(compared.at("lines").at(1).at("mark") == "more");
  CHECK(compared.at("lines").at(4).at("mark") == "added");
  const auto wrong = run("check --against choice-salza " + file);
  CHECK(wrong.status == 2);
  CHECK(wrong.err.find("choice-salsa") != std::string::npos);
}

TEST_CASE("a formula of one's own, by --rules, is compared with like any other") {
  // The README's example; the laboratory is invented.
  const auto readme = sealworthy::test::read_all(SEALWORTHY_SOURCE_DIR "/README.md");
  const auto block = [&readme](std::string_view first_line) {
    const auto from = readme.find(std::string(first_line));
    REQUIRE(from != std::string::npos);
    return readme.substr(from, readme.find("```", from) - from);
  };
  const Folder folder;
  std::filesystem::create_directory(folder.path() + "/office");
  folder.write("office/sources.yaml", block("sources:\n  elm-lab"));
  folder.write("office/relish.yaml", block("publication: elm-lab"));
  const std::string card =
      "recipe: Beet relish for the fair\nfollows: elm-beet-relish\ningredients:\n"
      "  - 4 lb beets, cooked, peeled, chopped\n  - 4 cups cider vinegar (5%)\n  - 2 cups sugar\npack: hot\n"
      "jars: pint\nheadspace: 1/2 inch\n"
      "process: {method: boiling water, time: 15 minutes, altitude: 0-1000 ft}\n";
  const auto rules = "check --rules " + folder.path() + "/office --require tested -";
  CHECK(run(rules, card).status == 0);
  const auto less = run(rules, replaced(card, "4 cups cider", "3 cups cider"));
  CHECK(less.status == 1);
  CHECK(less.out.find("3 cups; the tested formula has 4 cups") != std::string::npos);
  CHECK(run("check --require tested -", card).status == 1);  // nothing is known of it without
}
