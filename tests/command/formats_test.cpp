#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <regex>
#include <sstream>
#include <vector>

#include "command/cards.hpp"
#include "command/run.hpp"

using sealworthy::test::beans;
using sealworthy::test::Folder;
using sealworthy::test::read_all;
using sealworthy::test::replaced;
using sealworthy::test::run;
using sealworthy::test::shell;
using sealworthy::test::wash_boiler;

namespace {

const std::string samples = SEALWORTHY_SOURCE_DIR "/sample-recipes";

/// Inside the folder of the samples, as a build runs it.
std::string in_samples(const std::string& arguments) {
  return shell("cd " + samples + " && sealworthy check --today 2026-08-31 " + arguments).out;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

}  // namespace

TEST_CASE("SARIF of all samples fits the published JSON Schema of SARIF 2.1.0") {
  // OASIS Standard SARIF 2.1.0 (2020); the schema's origin stands in the file.
  const Folder folder;
  const auto file = folder.write("report.sarif", in_samples("--format sarif ."));
  const auto ran = shell(
      "/usr/bin/python3 -c 'import json, sys, jsonschema\n"
      "schema = json.load(open(sys.argv[1]))\n"
      "jsonschema.Draft202012Validator(schema).validate(json.load(open(sys.argv[2])))' " SEALWORTHY_SOURCE_DIR
      "/tests/schema/sarif-2.1.0.schema.json " +
      file);
  CAPTURE(ran.err);
  CHECK(ran.status == 0);
}

TEST_CASE("SARIF tells what JSON tells: one result a finding, with rule, level, place and relative path") {
  const auto sarif = nlohmann::json::parse(in_samples("--format sarif ."));
  const auto plain = nlohmann::json::parse(in_samples("--format json ."));
  const auto& run = sarif["runs"][0];
  std::size_t at = 0;
  for (const auto& recipe : plain["recipes"]) {
    for (const auto& finding : recipe["findings"]) {
      REQUIRE(at < run["results"].size());
      const auto& result = run["results"][at++];
      CHECK(result["ruleId"] == finding["rule"]);
      CHECK(run["tool"]["driver"]["rules"][result["ruleIndex"].get<std::size_t>()]["id"] == finding["rule"]);
      const auto severity = finding["severity"].get<std::string>();
      CHECK(result["level"] == (severity == "notice" ? "note" : severity == "caution" ? "warning" : "error"));
      const auto& place = result["locations"][0]["physicalLocation"];
      const auto uri = place["artifactLocation"]["uri"].get<std::string>();
      CHECK("./" + uri == recipe["path"]);
      CHECK(place["region"]["startLine"] == finding["line"]);
      CHECK(place["region"]["startColumn"] == finding["column"]);
      CHECK(result["partialFingerprints"]["sealworthy/v1"].get<std::string>().size() == 16);
    }
  }
  CHECK(at == run["results"].size());
  CHECK(at > 10);
  for (const auto& rule : run["tool"]["driver"]["rules"]) {
    CHECK_FALSE(rule["help"]["text"].get<std::string>().empty());
    CHECK_FALSE(rule["shortDescription"]["text"].get<std::string>().empty());
  }
}

TEST_CASE("SARIF: the region spans the line, counted in code points") {
  const auto card =
      replaced(wash_boiler(), "  method: boiling water", "  method: boiling water  # fa\xC3\xA7on");
  const auto sarif = nlohmann::json::parse(run("check --format sarif -", card).out);
  bool seen = false;
  for (const auto& result : sarif["runs"][0]["results"]) {
    const auto& region = result["locations"][0]["physicalLocation"]["region"];
    if (region.value("snippet", nlohmann::json::object()).value("text", "").find("fa\xC3\xA7on") ==
        std::string::npos)
      continue;
    seen = true;
    CHECK(region["endColumn"] == std::string("  method: boiling water  # facon").size() + 1);
  }
  CHECK(seen);
}

TEST_CASE("SARIF: an accepted finding carries the card's reason as a suppression, a danger never") {
  const auto card = replaced(wash_boiler(), "headspace: 1 inch\n",
                             "headspace: 1/2 inch\naccept:\n"
                             "  - {rule: headspace-too-little, because: tried with the county office}\n"
                             "  - {rule: low-acid-needs-pressure, because: always did}\n");
  const auto sarif = nlohmann::json::parse(run("check --format sarif -", card).out);
  int accepted = 0;
  for (const auto& result : sarif["runs"][0]["results"]) {
    if (!result.contains("suppressions")) continue;
    ++accepted;
    CHECK(result["ruleId"] == "headspace-too-little");
    CHECK(result["properties"]["severity"] != "danger");
    CHECK(result["suppressions"][0]["kind"] == "inSource");
    CHECK(result["suppressions"][0]["justification"] == "tried with the county office");
  }
  CHECK(accepted == 1);
}

TEST_CASE("SARIF: paths are percent-encoded and relative even where absolute ones were given") {
  const Folder folder;
  folder.write("my cards/b\xC3\xB6hnen #1.yaml", wash_boiler());
  const auto ran = shell("cd " + folder.path() + " && sealworthy check --format sarif \"$PWD/my cards\"");
  const auto sarif = nlohmann::json::parse(ran.out);
  for (const auto& result : sarif["runs"][0]["results"])
    CHECK(result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] ==
          "my%20cards/b%C3%B6hnen%20%231.yaml");
}

TEST_CASE("JUnit XML as Debian's junitparser reads it: the same counts as JSON") {
  const Folder folder;
  const auto file = folder.write("report.xml", in_samples("--format junit ."));
  const auto plain = nlohmann::json::parse(in_samples("--format json ."));
  const auto ran = shell(
      "/usr/bin/python3 -c 'import sys, json, junitparser\n"
      "xml = junitparser.JUnitXml.fromfile(sys.argv[1])\n"
      "cases = [c for suite in xml for c in suite]\n"
      "kinds = [type(r).__name__ for c in cases for r in c.result]\n"
      "xml.update_statistics()\n"
      "print(json.dumps({\"files\": len(list(xml)), \"tests\": len(cases), \"failures\": xml.failures, "
      "\"errors\": xml.errors, \"names\": [c.name for c in cases]}))' " +
      file);
  CAPTURE(ran.err);
  REQUIRE(ran.status == 0);
  const auto read = nlohmann::json::parse(ran.out);
  std::vector<std::string> names;
  int failing = 0;
  for (const auto& recipe : plain["recipes"]) {
    const auto title = recipe["title"].get<std::string>();
    names.push_back(title.empty() ? "recipe " + recipe["document"].dump() + " of the file" : title);
    bool fails = false;
    for (const auto& finding : recipe["findings"])
      fails = fails || finding["severity"] == "danger" || finding["severity"] == "warning";
    failing += fails && recipe["verdict"] != "unreadable" ? 1 : 0;
  }
  CHECK(read["names"] == names);
  CHECK(read["failures"] == failing);
  CHECK(read["errors"] == plain["summary"]["unreadable"]);
}

TEST_CASE("JUnit XML: what XML can't hold is escaped or replaced") {
  const Folder folder;
  folder.write("a<&\">\x01.yaml",
               replaced(wash_boiler(), "Hollow Farm beans", "\"Beans <b> & \\\"co\\\" \\x07\""));
  const auto file = folder.path() + "/report.xml";
  const auto ran =
      shell("cd " + folder.path() + " && sealworthy check --fail-on never --output junit:" + file +
            " *.yaml && /usr/bin/python3 -c 'import sys, xml.etree.ElementTree as tree\n"
            "print(tree.parse(sys.argv[1]).getroot()[0][0].get(\"name\"))' " +
            file);
  CAPTURE(ran.err);
  CHECK(ran.status == 0);
  CHECK(ran.out.find("Beans <b> & \"co\"") == 0);
}

TEST_CASE("annotations: one workflow command a finding, on the line it is at") {
  const auto plain = nlohmann::json::parse(in_samples("--format json thistle-lane"));
  const auto lines = lines_of(in_samples("--format annotations thistle-lane"));
  const std::regex form("::(error|warning|notice) file=([^,:]+),line=([0-9]+),col=([0-9]+),title=[^,:]+::.+");
  std::size_t at = 0;
  for (const auto& recipe : plain["recipes"]) {
    for (const auto& finding : recipe["findings"]) {
      REQUIRE(at < lines.size());
      std::smatch parts;
      CAPTURE(lines[at]);
      REQUIRE(std::regex_match(lines[at], parts, form));
      CHECK(parts[2].str() == recipe["path"]);
      CHECK(parts[3].str() == finding["line"].dump());
      ++at;
    }
  }
  CHECK(at == lines.size());
  CHECK(at > 3);
  const auto odd =
      run("check --format annotations -", replaced(wash_boiler(), "Hollow", "\"50%, one: Hollow"));
  CHECK(odd.status == 2);  // the quote is not closed: unreadable, and told on one line
  CHECK(lines_of(odd.out).size() == 1);
}

TEST_CASE("NDJSON: the recipes of JSON, one a line") {
  const auto plain = nlohmann::json::parse(in_samples("--format json ."));
  const auto lines = lines_of(in_samples("--format ndjson ."));
  REQUIRE(lines.size() == plain["recipes"].size());
  for (std::size_t i = 0; i < lines.size(); ++i)
    CHECK(nlohmann::json::parse(lines[i]) == plain["recipes"][i]);
}

TEST_CASE("--output may be given several times, each with its format") {
  const Folder folder;
  const auto sarif = folder.path() + "/r.sarif";
  const auto plain = folder.path() + "/r.json";
  const auto ran =
      run("check --format json --output sarif:" + sarif + " --output " + plain + " --output text:- -",
          wash_boiler());
  CHECK(ran.status == 1);
  CHECK(ran.out.find("HAZARD") != std::string::npos);
  CHECK(nlohmann::json::parse(read_all(sarif))["version"] == "2.1.0");
  CHECK(nlohmann::json::parse(read_all(plain))["summary"]["hazard"] == 1);
  CHECK(ran.out == run("check -", wash_boiler()).out);
}

TEST_CASE("--output: unknown formats and places given twice are told") {
  for (const auto* outputs :
       {"--output serif:x", "--output a.txt --output json:a.txt", "--output - --output json:-"}) {
    CAPTURE(outputs);
    const auto ran = run(std::string("check ") + outputs + " -", beans);
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
    CHECK(ran.err.find("--output") != std::string::npos);
  }
}
