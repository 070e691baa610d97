/// Files with a recipe a line, of any size: read in parts, checked by several threads, in memory that does
/// not grow.

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "command/run.hpp"

namespace {

using sealworthy::test::Folder;
using sealworthy::test::Ran;
using sealworthy::test::run;
using sealworthy::test::shell;

std::string carrots(int number, int pad = 0) {
  return R"({"recipe": "Carrots )" + std::to_string(number) +
         R"(", "ingredients": ["11 lb carrots, peeled, sliced"], "jars": "pint", "headspace": "1 inch", "pack": "raw", )"
         R"("process": {"method": "boiling water", "time": "3 hours"}, "steps": [")" +
         std::string(static_cast<std::size_t>(pad), ' ') + "Wipe the rims.\"]}\n";
}

std::string many(int count) {
  std::string lines;
  for (int i = 1; i <= count; ++i) lines += carrots(i, i % 7 == 0 ? 3000 : 0);
  return lines;
}

std::vector<nlohmann::json> reports_of(const Ran& ran) {
  std::vector<nlohmann::json> out;
  for (std::size_t at = 0; at < ran.out.size();) {
    const auto end = ran.out.find('\n', at);
    out.push_back(nlohmann::json::parse(ran.out.substr(at, end - at)));
    at = end == std::string::npos ? ran.out.size() : end + 1;
  }
  return out;
}

}  // namespace

TEST_CASE("lines of a file and of a pipe: every recipe once, in order, whatever the threads") {
  const Folder folder;
  folder.write("a.ndjson", many(1500));
  folder.write("b.jsonl", many(3));
  const auto one = run("check --format ndjson --jobs 1 " + folder.path());
  CHECK(one.status == 1);
  const auto reports = reports_of(one);
  REQUIRE(reports.size() == 1503);
  for (std::size_t i = 0; i < 1500; ++i) {
    const auto number = static_cast<int>(i) + 1;
    REQUIRE(reports[i]["document"] == number);
    REQUIRE(reports[i]["title"] == "Carrots " + std::to_string(number));
    REQUIRE(reports[i]["findings"][0]["line"] == number);
  }
  CHECK(reports[1500]["document"] == 1);
  CHECK(run("check --format ndjson --jobs 4 " + folder.path()).out == one.out);
  // From a pipe that is slow, and to the text that people read: the same recipes.
  const auto piped =
      shell("cd " + folder.path() + " && (head -c 100000 a.ndjson; sleep 0.1; tail -c +100001 " +
            "a.ndjson) | sealworthy check --jobs 2 -");
  CHECK(piped.out.find("1500 recipes: 1500 hazard.") != std::string::npos);
  CHECK(run("check --format junit " + folder.path()).out.find("tests=\"1500\"") != std::string::npos);
}

TEST_CASE("a bad line in the middle is told at its line, and the others are checked") {
  const auto lines = many(400) + "{\"recipe\": \"Broken\", \"ingredients\": [\n" + "\n" + many(400);
  for (const char* jobs : {"1", "3"}) {
    const auto ran = run(std::string("check --format ndjson --jobs ") + jobs + " -", lines);
    CHECK(ran.status == 2);
    const auto reports = reports_of(ran);
    REQUIRE(reports.size() == 801);
    CHECK(reports[400]["verdict"] == "unreadable");
    CHECK(reports[400]["findings"][0]["line"] == 401);
    CHECK(reports[401]["findings"][0]["line"] == 403);
    CHECK(reports[800]["document"] == 801);
  }
}

TEST_CASE("a line that is too long is told and dropped, however long, and the next one is read") {
  const Folder folder;
  const auto path = folder.write(
      "a.ndjson", carrots(1) + "{\"recipe\": \"" + std::string(3'000'000, 'x') + "\"}\n" + carrots(2));
  const auto ran = run("check --format ndjson " + path);
  CHECK(ran.status == 2);
  const auto reports = reports_of(ran);
  REQUIRE(reports.size() == 3);
  CHECK(reports[0]["title"] == "Carrots 1");
  CHECK(reports[1]["findings"][0]["message"] == "This line is too long to be a recipe.");
  CHECK(reports[1]["findings"][0]["line"] == 2);
  CHECK(reports[2]["title"] == "Carrots 2");
  CHECK(reports[2]["findings"][0]["line"] == 3);
}

TEST_CASE("what standard input holds is told by its beginning, and may be as large as a file of its kind") {
  // JSON over several lines, JSON of one line and cards are not taken for lines.
  const auto one = carrots(1);
  CHECK(reports_of(run("check --format ndjson -", one)).size() == 1);
  CHECK(reports_of(run("check --format ndjson -", "\n\n" + one + "\n" + one)).size() == 2);
  CHECK(reports_of(run("check --format ndjson -", "[" + one + "," + one + "]")).size() == 2);
  CHECK(reports_of(run("check --format ndjson -", nlohmann::json::parse(one).dump(2))).size() == 1);
  const auto page =
      "<html>" + std::string(2'000'000, ' ') + R"(<script type="application/ld+json">)" +
      R"({"@type": "Recipe", "name": "Far down", "recipeIngredient": ["11 lb carrots"], )" +
      R"("recipeInstructions": ["Fill pint jars and process them 3 hours in boiling water."]})" + "</script>";
  const auto far = reports_of(run("check --format ndjson -", page));
  REQUIRE(far.size() == 1);
  CHECK(far[0]["title"] == "Far down");
}

TEST_CASE("lines without a recipe are a page without one; a file that can't be opened is told") {
  const Folder folder;
  const auto path = folder.write("log.jsonl", "{\"level\": \"info\"}\n\n{\"level\": \"warn\"}\n");
  const auto ran = run("check " + path);
  CHECK(ran.status == 0);
  CHECK(ran.out.find("1 page is not about canning") != std::string::npos);
  CHECK(run("check " + folder.write("empty.ndjson", "")).out.find("1 page is not") != std::string::npos);
}

TEST_CASE("the cache knows lines again") {
  const Folder folder;
  folder.write("a.ndjson", many(300));
  const auto check = [&](const std::string& more) {
    return shell("cd " + folder.path() + " && sealworthy check --format json --today 2026-08-31 " + more +
                 " a.ndjson");
  };
  const auto plain = check("");
  CHECK(check("--cache cache").out == plain.out);
  CHECK(check("--cache cache").out == plain.out);
  CHECK(shell("ls " + folder.path() + "/cache | wc -l").out == "1\n");
  folder.write("a.ndjson", "\n" + many(300));
  CHECK(check("--cache cache").out == check("").out);
}

TEST_CASE("memory does not grow with the lines") {
  const Folder folder;
  folder.write("few.ndjson", many(2000));  // more parts than the threads have under way at once
  folder.write("many.ndjson", many(24000));
  folder.write("peak.py",
               "import resource, subprocess, sys\n"
               "subprocess.run(['sealworthy', 'check', '--jobs', '2', '--format', sys.argv[2], '--output', "
               "'/dev/null', sys.argv[1]])\n"
               "print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)\n");
  for (const std::string format : {"ndjson", "text"}) {
    const auto peak = [&](const std::string& file) {
      const auto ran = shell("cd " + folder.path() +
                             " && ASAN_OPTIONS=quarantine_size_mb=1 python3 peak.py " + file + " " + format);
      return std::stol(ran.out);  // kB
    };
    const auto few = peak("few.ndjson");
    const auto much = peak("many.ndjson");
    CAPTURE(format);
    CAPTURE(few);
    CAPTURE(much);
    CHECK(much - few < 10000);  // the further lines are 15 MB, their reports more
  }
}

TEST_CASE(
    "a JSON file that can't be read counts when it is named or speaks of canning, not among a site's "
    "others") {
  const Folder folder;
  const auto settings = folder.write("site/settings.json", "{\"strict\": true, /* yes */ }");
  folder.write("site/log.ndjson", "{\"level\": \"info\"}\n");
  CHECK(run("check " + folder.path() + "/site").status == 0);
  CHECK(run("check " + folder.path() + "/site").out.find("2 pages are not about canning") !=
        std::string::npos);
  const auto named = run("check " + settings);
  CHECK(named.status == 2);
  CHECK(named.out.find("JSON has no comments.") != std::string::npos);
  CHECK(run("check --paths-from -", settings + "\n").status == 0);
  folder.write("site/beans.json", "{\"name\": \"Beans\", \"steps\": \"Process the jars\",}");
  const auto ran = run("check " + folder.path() + "/site");
  CHECK(ran.status == 2);
  CHECK(ran.out.find("A comma stands before the closing bracket.") != std::string::npos);
}
