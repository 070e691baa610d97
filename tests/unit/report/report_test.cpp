#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <sealworthy/report.hpp>
#include <sstream>

#include "report/wrap.hpp"

using namespace sealworthy;

namespace {

RecipeReport hazard() {
  RecipeReport report;
  report.path = "ridge-road/salsa.yaml";
  report.title = "Ridge road salsa";
  report.verdict = Verdict::hazard;
  report.matched = {"choice-salsa", "Choice salsa", "NCHFP", "follows", "", false};
  Finding finding;
  finding.rule = "acid-less";
  finding.severity = Severity::danger;
  finding.topic = Topic::acid;
  finding.at = {9, 5};
  finding.message = "1 cup of vinegar; the tested formula has 2 1/2 cups for this much tomato (60 % less)";
  finding.why = "With less acid the jar may stay above pH 4.6, where botulism can grow without any sign.";
  finding.instead = "2 1/2 cups of 5 % vinegar.";
  finding.sources = {"USDA Complete Guide (2015), Guide 3"};
  report.findings.push_back(finding);
  report.source_lines = {"  - 1 cup white vinegar (5%)"};
  report.source_line_numbers = {9};
  return report;
}

int widest(const std::string& text) {
  std::istringstream in(text);
  int most = 0;
  for (std::string line; std::getline(in, line);) most = std::max(most, report::columns(line));
  return most;
}

}  // namespace

TEST_CASE("text fits any terminal from 40 to 100 columns and shows the card's own line") {
  Summary summary;
  summary.add(hazard());
  for (const int width : {20, 40, 60, 72, 80, 100, 200}) {
    TextWriter writer({width, false});
    std::string text = writer.begin();
    text += writer.recipe(hazard());
    text += writer.end(summary);
    CAPTURE(width);
    CAPTURE(text);
    CHECK(widest(text) <= std::clamp(width, 40, 100));
    CHECK(text.find("- 1 cup white vinegar") != std::string::npos);
    CHECK(text.find("HAZARD") != std::string::npos);
    CHECK(text.find('\033') == std::string::npos);
  }
}

TEST_CASE("colour changes nothing but escape sequences") {
  TextWriter plain({80, false});
  TextWriter colored({80, true});
  const auto expected = plain.recipe(hazard());
  auto text = colored.recipe(hazard());
  CHECK(text != expected);
  for (auto at = text.find('\033'); at != std::string::npos; at = text.find('\033'))
    text.erase(at, text.find('m', at) - at + 1);
  CHECK(text == expected);
}

TEST_CASE("JSON has the agreed keys and stays valid with odd bytes") {
  auto report = hazard();
  report.path = "bad\xff.yaml";
  Summary summary;
  summary.add(report);
  JsonWriter writer;
  std::string text = writer.begin();
  text += writer.recipe(report);
  text += writer.recipe(report);
  text += writer.end(summary);
  const auto json = nlohmann::json::parse(text);
  CHECK(json["recipes"].size() == 2);
  const auto& recipe = json["recipes"][0];
  CHECK(recipe["verdict"] == "hazard");
  CHECK(recipe["matched"]["by"] == "follows");
  for (const auto* key :
       {"rule", "severity", "topic", "line", "column", "message", "why", "instead", "sources"})
    CHECK(recipe["findings"][0].contains(key));
  CHECK(json["summary"]["danger"] == 1);
  CHECK(json["summary"]["unreadable"] == 0);
}

TEST_CASE("a run without recipes is still valid JSON") {
  JsonWriter writer;
  std::string text = writer.begin();
  text += writer.end({});
  const auto json = nlohmann::json::parse(text);
  CHECK(json["recipes"].empty());
}
