#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

#include "command/run.hpp"

using sealworthy::test::Folder;
using sealworthy::test::run;

namespace {

constexpr auto card = R"(recipe: Two pots of salsa
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
  const auto file = folder.write("salsa.yaml", card);
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
  const auto file = folder.write("salsa.yaml", card);
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
