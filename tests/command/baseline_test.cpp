#include <doctest/doctest.h>

#include <filesystem>
#include <nlohmann/json.hpp>

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

/// A card with findings below danger only: too little headspace and jars turned upside down.
std::string careless() {
  return replaced(beans, "headspace: 1 inch\n", "headspace: 1/2 inch\n") +
         "steps:\n  - Turn the jars upside down until they are cold.\n";
}

struct Site {
  Folder folder;
  std::string baseline = folder.path() + "/known.json";

  sealworthy::test::Ran check(const std::string& arguments) const {
    return shell("cd " + folder.path() + " && sealworthy check --fail-on caution " + arguments + " cards");
  }
};

}  // namespace

TEST_CASE("a baseline: known findings are counted and do not fail, new ones do") {
  const Site site;
  site.folder.write("cards/a.yaml", careless());
  CHECK(site.check("").status == 1);
  const auto written = site.check("--write-baseline known.json");
  CHECK(written.status == 0);
  const auto known = site.check("--baseline known.json --format json");
  CHECK(known.status == 0);
  CHECK(known.err.empty());
  const auto plain = nlohmann::json::parse(known.out);
  CHECK(plain["summary"]["known"] == 2);
  CHECK(plain["summary"]["caution"] == 0);
  CHECK(plain["recipes"][0]["findings"].size() == 2);
  CHECK(site.check("--baseline known.json").out.find("2 known from the baseline") != std::string::npos);

  site.folder.write("cards/b.yaml", replaced(careless(), "Hollow Farm beans", "Other beans"));
  CHECK(site.check("--baseline known.json").status == 1);
}

TEST_CASE("a baseline outlives moved lines, renamed files and other spacing, but no other figure") {
  const Site site;
  site.folder.write("cards/a.yaml", careless());
  REQUIRE(site.check("--write-baseline known.json").status == 0);
  std::filesystem::remove(site.folder.path() + "/cards/a.yaml");
  const auto moved =
      "# a line more\n\n" + replaced(careless(), "headspace: 1/2 inch", "headspace:   1/2  inch");
  site.folder.write("cards/deep/renamed.yaml", moved);
  const auto ran = site.check("--baseline known.json");
  CHECK(ran.status == 0);
  CHECK(ran.err.empty());
  site.folder.write("cards/deep/renamed.yaml", replaced(moved, "1/2  inch", "5/8 inch"));
  const auto changed = site.check("--baseline known.json");
  CHECK(changed.status == 1);
  CHECK(changed.err.find("no longer occurs") != std::string::npos);
}

TEST_CASE("a second finding like one known is new") {
  const Site site;
  site.folder.write("cards/a.yaml", careless());
  REQUIRE(site.check("--write-baseline known.json").status == 0);
  site.folder.write("cards/b.yaml", careless());
  const auto ran = site.check("--baseline known.json --format json");
  CHECK(ran.status == 1);
  const auto summary = nlohmann::json::parse(ran.out)["summary"];
  CHECK(summary["known"] == 2);
  CHECK(summary["caution"] == 2);
}

TEST_CASE("a danger never enters a baseline, nor is it known where someone wrote it in") {
  const Site site;
  site.folder.write("cards/a.yaml", wash_boiler());
  const auto written = site.check("--write-baseline known.json --format json");
  CHECK(written.status == 1);
  CHECK(read_all(site.baseline).find("low-acid-needs-pressure") == std::string::npos);

  const auto sarif = nlohmann::json::parse(site.check("--format sarif").out);
  nlohmann::json forged{{"sealworthy-baseline", 1}, {"findings", nlohmann::json::array()}};
  for (const auto& result : sarif["runs"][0]["results"])
    forged["findings"].push_back({{"fingerprint", result["partialFingerprints"]["sealworthy/v1"]},
                                  {"rule", result["ruleId"]},
                                  {"count", 5}});
  site.folder.write("known.json", forged.dump());
  const auto ran = site.check("--baseline known.json --format json");
  CHECK(ran.status == 1);
  const auto plain = nlohmann::json::parse(ran.out);
  CHECK(plain["summary"]["danger"] >= 1);
  CHECK(plain["recipes"][0]["verdict"] == "hazard");
  for (const auto& finding : plain["recipes"][0]["findings"])
    if (finding["severity"] == "danger") CHECK_FALSE(finding.contains("known"));
}

TEST_CASE("stale entries are told for what was checked or is gone, and for nothing else") {
  const Site site;
  site.folder.write("cards/a.yaml", careless());
  site.folder.write("cards/b.yaml", replaced(careless(), "Hollow Farm beans", "Other beans"));
  REQUIRE(site.check("--write-baseline known.json").status == 0);
  const auto in_folder = "cd " + site.folder.path() + " && sealworthy check --baseline known.json ";
  CHECK(shell(in_folder + "cards/a.yaml").err.empty());
  std::filesystem::remove(site.folder.path() + "/cards/b.yaml");
  const auto ran = shell(in_folder + "cards/a.yaml");
  CHECK(ran.err.find("2 findings of this baseline no longer occur") != std::string::npos);
  CHECK(ran.err.find("cards/b.yaml") != std::string::npos);
  CHECK(ran.status == 0);
}

TEST_CASE("baselines of another version and files that are none are refused clearly") {
  const Site site;
  site.folder.write("cards/a.yaml", careless());
  for (const auto& [text, word] : std::vector<std::pair<std::string, std::string>>{
           {R"({"sealworthy-baseline": 2, "findings": []})", "form 2"},
           {"not json", "no baseline"},
           {"[]", "no baseline"},
           {R"({"sealworthy-baseline": 1})", "no list"},
           {R"({"sealworthy-baseline": 1, "findings": [{}]})", "entry 1"},
           {R"({"sealworthy-baseline": 1, "findings": [{"fingerprint":
                                                          "0", "rule": "x", "count": -1}]})",
            "entry 1"}}) {
    const std::string given = text;
    CAPTURE(given);
    site.folder.write("known.json", text);
    const auto ran = site.check("--baseline known.json");
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
    CHECK(ran.err.find("known.json") != std::string::npos);
    CHECK(ran.err.find(word) != std::string::npos);
    CHECK(ran.err.find("--write-baseline") != std::string::npos);
  }
  CHECK(site.check("--baseline none.json").status == 2);
  CHECK(site.check("--write-baseline no/such/folder.json").status == 2);
}

TEST_CASE("SARIF marks known findings as suppressed from outside; annotations leave them out") {
  const Site site;
  site.folder.write("cards/a.yaml", careless());
  REQUIRE(site.check("--write-baseline known.json").status == 0);
  const auto sarif = nlohmann::json::parse(site.check("--baseline known.json --format sarif").out);
  REQUIRE(sarif["runs"][0]["results"].size() == 2);
  for (const auto& result : sarif["runs"][0]["results"])
    CHECK(result["suppressions"][0]["kind"] == "external");
  CHECK(site.check("--baseline known.json --format annotations").out.empty());
}

TEST_CASE("accept: until the last day, then the finding counts again and the report says why") {
  const auto card = replaced(
      careless(),
      "steps:", "accept:\n  - {rule: headspace-too-little, because: a trial, until: 2026-09-30}\nsteps:");
  const auto on = [&](const std::string& day) {
    return nlohmann::json::parse(run("check --format json --today " + day + " -", card).out);
  };
  CHECK(on("2026-09-30")["summary"]["accepted"] == 1);
  const auto after = on("2026-10-01");
  CHECK(after["summary"]["accepted"] == 0);
  CHECK(after["recipes"][0]["findings"].dump().find("\"accepted_until\":\"2026-09-30\"") !=
        std::string::npos);
  CHECK(run("check --today 2026-10-01 -", card).out.find("only until 2026-09-30") != std::string::npos);
  const auto bad = run("check --format json -", replaced(card, "2026-09-30", "2026-02-30"));
  CHECK(bad.status == 2);
  CHECK(bad.out.find("`until:` is not a date") != std::string::npos);
}

TEST_CASE("--paths-from: lines or NUL-separated, from a file or standard input, beside other paths") {
  const Folder folder;
  const auto a = folder.write("a card.yaml", beans);
  const auto b = folder.write("b.yaml", wash_boiler());
  const auto list = folder.write("list", a + "\r\n\n" + b + "\n");
  CHECK(nlohmann::json::parse(run("check --format json --paths-from " + list).out)["recipes"].size() == 2);
  CHECK(nlohmann::json::parse(run("check --format json --paths-from -", a + "\n").out)["recipes"].size() ==
        1);
  const auto piped = shell("find " + folder.path() +
                           " -name '*.yaml' -print0 | sealworthy check --format json "
                           "--paths-from -");
  CHECK(piped.status == 1);
  CHECK(nlohmann::json::parse(piped.out)["recipes"].size() == 2);
  CHECK(
      nlohmann::json::parse(run("check --format json --paths-from - " + b, a + "\n").out)["recipes"].size() ==
      2);
  const auto none = run("check --paths-from -", "");
  CHECK(none.status == 0);
  CHECK(none.out.find("Nothing was checked") != std::string::npos);
  CHECK(run("check --paths-from - -", beans).status == 2);
  CHECK(run("check --paths-from " + folder.path() + "/none").status == 2);
  CHECK(run("check --paths-from -", "no-such.yaml\n").status == 2);
}
