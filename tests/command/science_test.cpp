#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "command/run.hpp"

using sealworthy::test::Folder;
using sealworthy::test::run;

namespace {

constexpr const char* bean_card = R"(
recipe: Beans in boiling water
follows: beans-snap-and-italian-pieces
ingredients:
  - 9 lb green beans, trimmed, cut in 1-inch pieces
  - water
pack: raw
jars: pint
headspace: 1 inch
process: {method: boiling water, time: 180 minutes, altitude: 5280 ft}
)";

std::string sample(const char* name) { return SEALWORTHY_SOURCE_DIR "/sample-recipes/" + std::string(name); }

}  // namespace

TEST_CASE("check --explain tells what the minutes do; without it the report is as before") {
  const Folder folder;
  const auto card = folder.write("beans.yaml", bean_card);
  const auto plain = run("check " + card);
  CHECK(plain.out.find("means") == std::string::npos);
  const auto told = run("check --explain " + card);
  CHECK(told.status == plain.status);
  CHECK(told.out.find("At 5,280 ft water boils at 202.3 F.") != std::string::npos);
  const auto report = nlohmann::json::parse(run("check --explain --format json " + card).out)["recipes"][0];
  CHECK(report["science"]["altitude"]["boiling_point_f"] == 202.3);
  const auto& heat = report["science"]["heat"][0];
  // Three hours at 202.3 F count as 180 x 10 ^ ((202.3 - 250) / 18) = 0.40 minutes at 250 F.
  CHECK(heat["card"]["f_at_most_minutes"].get<double>() == doctest::Approx(0.40).epsilon(0.03));
  CHECK(heat["least_minutes"] == 2.5);
  CHECK(heat["tested"]["f_at_most_minutes"].get<double>() > 2.5);
  CHECK(nlohmann::json::parse(run("check --format json " + card).out)["recipes"][0].contains("science") ==
        false);
}

TEST_CASE("study tells the science of a card, headed by the caution") {
  const auto text = run("study --altitude 5280ft " + sample("thistle-lane/crushed-tomatoes.yaml"));
  CHECK(text.status == 0);
  CHECK(text.out.find("This explains; it is no process") == 0);
  CHECK(text.out.find("202.3 F") != std::string::npos);
  CHECK(text.out.find("Acidity") != std::string::npos);
  const auto read =
      nlohmann::json::parse(run("study --format json " + sample("thistle-lane/crushed-tomatoes.yaml")).out);
  const auto& acidity = read["recipes"][0]["science"]["acidity"];
  CHECK(acidity["ph"].get<double>() < 4.6);
  CHECK(acidity["ph_bound"].get<double>() >= acidity["ph"].get<double>());
}

TEST_CASE("study says what it can't read, with exit 2") {
  const Folder folder;
  const auto slipped = folder.write("slipped.yaml", "recipe: Slip\ningredeints: [1 lb beans]\n");
  const auto ran = run("study " + slipped);
  CHECK(ran.status == 2);
  CHECK(ran.err.find("slipped.yaml:2:1") != std::string::npos);
  CHECK(run("study nowhere.yaml").status == 2);
}

TEST_CASE("explain tells the science topics") {
  for (const auto* topic : {"altitude", "heat", "acidity"}) {
    CAPTURE(topic);
    const auto ran = run(std::string("explain ") + topic);
    CHECK(ran.status == 0);
    CHECK(ran.out.size() > 500);
  }
  CHECK(run("explain").out.find("acidity") != std::string::npos);
}
