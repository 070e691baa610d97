#include <doctest/doctest.h>

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

nlohmann::json json_of(const std::string& arguments, const std::string& input = {}) {
  return nlohmann::json::parse(run("check --format json " + arguments, input).out);
}

}  // namespace

TEST_CASE("a tested card: exit 0, the report on standard output, nothing on standard error") {
  const auto ran = run("check -", beans);
  CHECK(ran.status == 0);
  CHECK(ran.err.empty());
  CHECK(ran.out.find("tested, at 0 to 2,000 ft") != std::string::npos);
  CHECK(ran.out.find("extension office") != std::string::npos);
}

TEST_CASE("a hazard: exit 1 at the default, 0 with --fail-on never") {
  CHECK(run("check -", wash_boiler()).status == 1);
  CHECK(run("check --fail-on danger -", wash_boiler()).status == 1);
  CHECK(run("check --fail-on never -", wash_boiler()).status == 0);
  CHECK(run("check -", wash_boiler()).out.find("HAZARD") != std::string::npos);
}

TEST_CASE("--require tested fails on a card that is only unproven") {
  const auto silent = replaced(beans, "headspace: 1 inch\n", "");
  CHECK(run("check -", silent).status == 0);
  CHECK(run("check --require tested -", silent).status == 1);
  CHECK(run("check --require tested -", beans).status == 0);
}

TEST_CASE("an unreadable card is 2, which beats 1, and the others are still checked") {
  const Folder folder;
  folder.write("a.yaml", beans);
  folder.write("b.yaml", wash_boiler());
  folder.write("c.yaml", replaced(beans, "headspace", "headspce"));
  const auto ran = run("check --format json " + folder.path());
  CHECK(ran.status == 2);
  const auto json = nlohmann::json::parse(ran.out);
  REQUIRE(json["recipes"].size() == 3);
  CHECK(json["recipes"][0]["verdict"] == "tested");
  CHECK(json["recipes"][1]["verdict"] == "hazard");
  const auto& slipped = json["recipes"][2];
  CHECK(slipped["verdict"] == "unreadable");
  REQUIRE(slipped["findings"].size() == 1);
  CHECK(slipped["findings"][0]["rule"] == "unreadable");
  CHECK(slipped["findings"][0]["severity"] == "warning");
  CHECK(slipped["findings"][0]["topic"] == "card");
  CHECK(slipped["findings"][0]["line"] == 7);
  CHECK(slipped["findings"][0]["column"] == 1);
  const auto told = slipped["findings"][0].dump();
  CHECK(told.find("headspace") != std::string::npos);
  CHECK(json["summary"]["unreadable"] == 1);
}

TEST_CASE("a bad document does not stop those after it in the file") {
  const auto json = json_of("-", beans + "---\nrecipe: [unclosed\n---\n" + beans);
  REQUIRE(json["recipes"].size() == 3);
  CHECK(json["recipes"][1]["verdict"] == "unreadable");
  CHECK(json["recipes"][2]["verdict"] == "tested");
  CHECK(json["recipes"][2]["document"] == 3);
}

TEST_CASE("paths that can't be read are told on standard error, with exit 2") {
  const Folder folder;
  folder.write("notes.log", "nothing");
  for (const auto& path : {std::string("no-such-file.yaml"), folder.path()}) {
    const auto ran = run("check " + path);
    CHECK(ran.status == 2);
    CHECK(ran.err.find(path) != std::string::npos);
  }
  const auto binary = folder.write("binary.yaml", std::string("\x7f\x45\x4c\x46\0\0\1", 7));
  const auto empty = folder.write("empty.yaml", "");
  CHECK(run("check " + binary).status == 2);
  CHECK(run("check " + empty).status == 2);
  CHECK(run("check " + empty).out.find("unreadable") != std::string::npos);
  CHECK(run("check " + empty).out.find("The file holds no recipe.") != std::string::npos);
  // Where nothing was checked there is nothing to caution about.
  const auto none = run("check " + folder.path() + "/none.html");
  CHECK(none.status == 2);
  CHECK(none.out == "\nNothing was checked.\n");
}

TEST_CASE("of a page that stands in one line a report quotes the words meant, not the line") {
  const Folder folder;
  // Invented; JSON-LD as site generators write it.
  const auto page =
      folder.write("dills.html", R"(<html><head>
<script type="application/ld+json">{"@context": "https://schema.org", "@type": "Recipe", "name": "Canned dills", )"
                                 R"("recipeIngredient": ["9 lb pickling cucumbers", "2 cups vinegar",)"
                                 R"( "1/4 cup canning salt"], "recipeInstructions": [{"@type": )"
                                 R"("HowToStep", "text": "Pack the cucumbers into quart jars."}, )"
                                 R"({"@type": "HowToStep", "text": "Process in a hot water bath for )"
                                 R"(5 minutes so they stay crisp, then turn the jars upside down to )"
                                 R"(seal."}]}</script></head><body></body></html>
)");
  const auto text = run("check " + page);
  CAPTURE(text.out);
  CHECK(text.status == 1);
  CHECK(text.out.find("<script") == std::string::npos);
  CHECK(text.out.find(" | Process in a hot water bath for 5 ") != std::string::npos);
  CHECK(text.out.find("2:1 |") == std::string::npos);
  const auto html = run("check --format html " + page).out;
  CHECK(html.find("Process in a hot water bath for 5 minutes so they stay crisp") != std::string::npos);
  CHECK(html.find("application/ld+json") == std::string::npos);
}

TEST_CASE("folders: hidden files and kitchen.yaml are left out, the order is by path") {
  const Folder folder;
  folder.write("b/2.yaml", beans);
  folder.write("b/1.yml", beans);
  folder.write("a.yaml", beans);
  folder.write("kitchen.yaml", "kitchen: Hollow Farm\naltitude: 500 ft\n");
  folder.write(".hidden/x.yaml", "not: [a card");
  folder.write("b/.x.yaml", "not: [a card");
  const auto json = json_of(folder.path());
  REQUIRE(json["recipes"].size() == 3);
  CHECK(json["recipes"][0]["path"] == folder.path() + "/a.yaml");
  CHECK(json["recipes"][1]["path"] == folder.path() + "/b/1.yml");
  CHECK(json["recipes"][2]["path"] == folder.path() + "/b/2.yaml");
}

TEST_CASE("the kitchen beside or above the card gives the altitude; --altitude wins") {
  const Folder folder;
  folder.write("kitchen.yaml", "kitchen: Hollow Farm\naltitude: 5,280 ft\n");
  const auto card = folder.write("cards/beans.yaml", replaced(beans, "  altitude: 0-2,000 ft\n", ""));
  CHECK(json_of(card)["recipes"][0]["verdict"] == "hazard");
  CHECK(json_of("--altitude 1000ft " + card)["recipes"][0]["verdict"] == "tested");
  const auto bad = folder.write("bad.yaml", "kitchen: Hollow Farm\naltidude: 5,280 ft\n");
  const auto ran = run("check --kitchen " + bad + " " + card);
  CHECK(ran.status == 2);
  CHECK(ran.err.find("bad.yaml:2:1") != std::string::npos);
  CHECK(ran.err.find("altitude") != std::string::npos);
}

TEST_CASE("wrong arguments are exit 2 with a word on standard error and nothing on standard output") {
  for (const auto* arguments :
       {"check", "check --format xml x.yaml", "check --altitude 40001ft -", "check --altitude high -",
        "check --jobs -1 -", "check --today 2026-02-30 -", "chek x.yaml", "--nonsense"}) {
    CAPTURE(arguments);
    const auto ran = run(arguments, beans);
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
    CHECK_FALSE(ran.err.empty());
  }
}

TEST_CASE("help is on standard output and names the exit statuses") {
  const auto ran = run("check --help");
  CHECK(ran.status == 0);
  CHECK(ran.err.empty());
  CHECK(ran.out.find("--fail-on") != std::string::npos);
  CHECK(ran.out.find("Exit status") != std::string::npos);
}

TEST_CASE("a reader that goes away is no error to talk about") {
  const Folder folder;
  for (int i = 0; i < 300; ++i) folder.write(std::to_string(i) + ".yaml", wash_boiler());
  const auto ran = shell("sealworthy check " + folder.path() + " | head -n 1");
  CHECK(ran.err.empty());
  CHECK_FALSE(ran.out.empty());
  const auto ignored = shell("trap '' PIPE; sealworthy check " + folder.path() + " | head -n 1");
  CHECK(ignored.err.empty());
}

TEST_CASE("a full disk is told") {
  const auto ran = shell("sealworthy check - > /dev/full", beans);
  CHECK(ran.status == 2);
  CHECK_FALSE(ran.err.empty());
}

TEST_CASE("the same bytes for any number of threads") {
  const Folder folder;
  for (int i = 0; i < 200; ++i)
    folder.write(std::to_string(i % 7) + "/" + std::to_string(i) + ".yaml",
                 i % 3 == 0 ? wash_boiler() : beans);
  const auto one = run("check --jobs 1 " + folder.path());
  for (const auto* jobs : {"2", "3", "16", "0"})
    CHECK(run(std::string("check --jobs ") + jobs + " " + folder.path()).out == one.out);
}

TEST_CASE("--output writes the file and leaves standard output alone") {
  const Folder folder;
  const auto file = folder.path() + "/report.json";
  const auto ran = run("check --format json --output " + file + " -", beans);
  CHECK(ran.status == 0);
  CHECK(ran.out.empty());
  CHECK(nlohmann::json::parse(read_all(file))["summary"]["tested"] == 1);
  CHECK(run("check --output " + folder.path() + "/no/such/folder.txt -", beans).status == 2);
}

TEST_CASE("colour only where asked for or on a terminal") {
  CHECK(run("check -", beans).out.find('\033') == std::string::npos);
  CHECK(run("check --color always -", beans).out.find('\033') != std::string::npos);
}

TEST_CASE("a danger can't be accepted; a lesser finding can, and is still listed") {
  const auto accepted =
      replaced(wash_boiler(),
               "process:", "accept:\n  - {rule: low-acid-needs-pressure, because: always did}\nprocess:");
  const auto ran = run("check --format json -", accepted);
  CHECK(ran.status == 1);
  const auto json = nlohmann::json::parse(ran.out);
  CHECK(json["recipes"][0]["verdict"] == "hazard");
  for (const auto& finding : json["recipes"][0]["findings"])
    if (finding["severity"] == "danger") CHECK_FALSE(finding.contains("accepted"));
}

TEST_CASE("ten thousand ingredients, absurd heights and negative amounts are answered, not choked on") {
  std::string many = "recipe: Everything\ningredients:\n";
  for (int i = 0; i < 10000; ++i) many += "  - 1 cup green beans\n";
  CHECK(json_of("-", many)["recipes"][0]["verdict"] != "tested");
  for (const auto* altitude : {"40,001 ft", "-2,000 ft"}) {
    const auto json = json_of("-", replaced(beans, "0-2,000 ft", std::string("\"") + altitude + "\""));
    CHECK(json["recipes"][0]["verdict"] == "unreadable");
    CHECK(json["recipes"][0]["findings"][0]["line"] == 13);
  }
  CHECK(json_of("-", replaced(beans, "20 minutes", "-20 minutes"))["recipes"][0]["verdict"] == "unreadable");
}
