// The kitchen beside the cards, plans, suggestions and pages, as a user runs them.

#include <doctest/doctest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <vector>

#include "command/run.hpp"

using sealworthy::test::Folder;
using sealworthy::test::read_all;
using sealworthy::test::run;

namespace {

const std::string lane = SEALWORTHY_SOURCE_DIR "/sample-recipes/thistle-lane";

/// Snap beans as USDA's Complete Guide (2015), Guide 4, prints them.
const std::string snap_beans = R"(recipe: Hollow Farm beans
ingredients:
  - 9 lb green beans, trimmed, cut in 1-inch pieces
  - boiling water
pack: raw
jars: pint
headspace: 1 inch
process: {method: pressure canner, gauge: dial, pressure: 11 psi, time: 20 minutes, altitude: "0-2,000 ft"}
)";

bool has(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

}  // namespace

TEST_CASE("a finding from the kitchen says so, with the file and line") {
  const Folder folder;
  folder.write(
      "kitchen.yaml",
      "altitude: 500 ft\ncanners:\n  - {kind: pressure canner, gauge: dial, gauge-error: 3 psi high}\n");
  folder.write("beans.yaml", snap_beans);
  const auto ran = run("check --today 2026-08-31 " + folder.path());
  CHECK(ran.status == 1);
  CHECK(has(ran.out, "danger  equipment, kitchen"));
  CHECK(has(ran.out, "kitchen.yaml, line 3"));
  const auto json = nlohmann::json::parse(run("check --format json --today 2026-08-31 " + folder.path()).out);
  const auto& finding = json["recipes"][0]["findings"][0];
  CHECK(finding["rule"] == "gauge-reads-too-high");
  CHECK(finding["from"] == "kitchen");
  CHECK(has(json["recipes"][0]["kitchen"], "kitchen.yaml"));
}

TEST_CASE("a kitchen that can't be is an error with its place") {
  const Folder folder;
  folder.write("beans.yaml", snap_beans);
  const std::pair<std::string, std::string> mistakes[] = {
      {"canners: [{kind: frying pan}]", "kitchen.yaml:1:18: `frying pan` is no kind of canner"},
      {"canners: [{kind: oven}]", "kitchen.yaml:1:18: No tested process is for an oven"},
      {"canners: [{kind: boiling water, weights: [5 psi]}]", "kitchen.yaml:1:18"},
      {"canners: [{kind: dial gauge canner, gauge: weighted}]", "contradict each other"},
      {"canners: [{kind: pressure canner, gauge: dial, gauge-tested: 2026-09-01}]", "kitchen.yaml:1:62"},
      {"canners: [{kind: pressure canner, holds: -7 quart}]", "kitchen.yaml:1:42"},
      {"altitude: 500 ft\nstove: {watts: 3}", "kitchen.yaml:2:9"},
  };
  for (const auto& [text, message] : mistakes) {
    folder.write("kitchen.yaml", text + "\n");
    for (const std::string& command : std::vector<std::string>{"check ", "plan ", "suggest "}) {
      const auto ran =
          run(command + (command == "suggest " ? "" : "--today 2026-08-31 ") + folder.path() + "/beans.yaml");
      if (command == "suggest " && has(text, "2026-09-01")) continue;  // judged by the day of the run
      CAPTURE(command);
      const auto kitchen = text;
      CAPTURE(kitchen);
      CHECK(ran.status == 2);
      CHECK_MESSAGE(has(ran.err, message), ran.err);
    }
  }
}

TEST_CASE("the cautions stand once in every report for people") {
  for (const std::string& command : std::vector<std::string>{
           "check --today 2026-08-31 " + lane, "plan --today 2026-08-31 " + lane + "/green-beans.yaml",
           std::string("lookup green beans")}) {
    const auto out = run(command).out;
    CAPTURE(command);
    for (const std::string& words :
         std::vector<std::string>{"compares cards with published processes", "your canner's maker",
                                  "local extension office", "Local law", "Botulism gives no sign"}) {
      CAPTURE(words);
      const auto at = out.find(words);
      REQUIRE(at != std::string::npos);
      CHECK(out.find(words, at + 1) == std::string::npos);
    }
  }
}

TEST_CASE("plan: text, JSON and page of one card; errors with their place") {
  const auto card = lane + "/crushed-tomatoes.yaml";
  const auto text = run("plan --today 2026-08-31 --jars 28 " + card);
  CHECK(text.status == 0);
  CHECK(text.err.empty());
  CHECK(has(text.out, "28 tbsp in all"));
  CHECK(has(text.out, "Load 4 of 4"));
  const auto json = nlohmann::json::parse(run("plan --today 2026-08-31 --format json --jars 28 " + card).out);
  CHECK(json["cards"][0]["jars"] == 28);
  CHECK(json["loads"].size() == 4);
  CHECK(has(run("plan --today 2026-08-31 --format html " + card).out, "<h1 id=\"title-0\">"));

  const auto hazard = run("plan --today 2026-08-31 " + lane + "/chicken-soup.yaml");
  CHECK(hazard.status == 2);
  CHECK(hazard.out.empty());
  CHECK(has(hazard.err, "chicken-soup.yaml:"));
  CHECK(has(hazard.err, "is hazard"));
  CHECK(run("plan --jars 0 " + card).status == 2);
  CHECK(has(run("plan --have '5 lb peaches' " + card).err, "--have: "));
  CHECK(run("plan nowhere.yaml").status == 2);
}

TEST_CASE("suggest writes a new card, never over a file") {
  const Folder folder;
  folder.write("kitchen.yaml", "altitude: 500 ft\n");
  auto text = snap_beans;
  text.replace(text.find("20 minutes"), 10, "10 minutes");
  const auto card = folder.write("beans.yaml", text);
  const auto ran = run("suggest " + card);
  CHECK(ran.status == 0);
  CHECK(has(ran.out, "time: 20 minutes  # the card has: 10 minutes"));
  CHECK(run("check -", ran.out).status == 0);
  CHECK(read_all(card) == text);
  const auto over = run("suggest --output " + card + " " + card);
  CHECK(over.status == 2);
  CHECK(read_all(card) == text);
  CHECK(run("suggest --output " + folder.path() + "/new.yaml " + card).status == 0);
  CHECK(read_all(folder.path() + "/new.yaml") == ran.out);
}

TEST_CASE("the page holds every card and loads nothing") {
  const auto ran = run("check --today 2026-08-31 --format html " + lane);
  CHECK(ran.status == 1);
  CHECK(has(ran.out, "<!DOCTYPE html>"));
  for (const std::string& outside :
       std::vector<std::string>{"src=", "http://", "https://", "@import", "url("}) {
    CAPTURE(outside);
    const auto at = ran.out.find(outside);
    // The name of the SVG namespace is no address that is loaded.
    CHECK((at == std::string::npos || ran.out.compare(at, 26, "http://www.w3.org/2000/svg") == 0));
  }
  CHECK(has(ran.out, "Crushed tomatoes for the winter"));
}
