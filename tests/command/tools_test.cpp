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

TEST_CASE("merge: parts made apart are the report of one run, byte for byte, with its exit status") {
  const Folder folder;
  for (int i = 0; i < 30; ++i)
    folder.write("cards/" + std::to_string(i % 4) + "/" + std::to_string(i) + ".yaml",
                 i % 5 == 0 ? wash_boiler() + "---\n" + beans : beans);
  const auto ran =
      shell("cd " + folder.path() +
            "\nsealworthy check --format json cards > one.json; echo $?\n"
            "sealworthy check --format ndjson cards > one.ndjson\n"
            "find cards -name '*.yaml' | sort -r > all\nsplit -n l/3 all list.\n"
            "for l in list.a?; do sealworthy check --format ndjson --paths-from $l > part.$l; done\n"
            "sealworthy merge part.* --output merged.json; echo $?\n"
            "sealworthy merge --format ndjson part.* | cmp - one.ndjson && cmp merged.json one.json\n"
            "sealworthy merge one.json part.list.aa | cmp - one.json\n"
            "cat part.* | sealworthy merge - | cmp - one.json\n"
            "sealworthy merge --fail-on never part.* > again.json; echo $?\n");
  CAPTURE(ran.err);
  CHECK(ran.out == "1\n1\n0\n");
}

TEST_CASE("merge: damaged parts are told, with their line, and the rest is merged") {
  const Folder folder;
  const auto good = folder.write("good", run("check --format ndjson -", beans).out);
  const auto line = read_all(good);
  const auto told = [&](const std::string& text) {
    const auto bad = folder.write("bad", text);
    const auto ran = run("merge " + good + " " + bad);
    CHECK(ran.status == 2);
    CHECK(nlohmann::json::parse(ran.out)["summary"]["recipes"] == 1);
    CHECK(ran.err.find(bad) != std::string::npos);
    return ran.err;
  };
  CHECK(told(line.substr(0, line.size() / 2)).find("cut off") != std::string::npos);
  CHECK(told("{\n").find("bad:1") != std::string::npos);
  CHECK(told("{\"path\": \"x\"}\n").find("no recipe of a report") != std::string::npos);
  CHECK(told("{\"sealworthy\": \"9.9.9\", \"recipes\": []}").find("9.9.9") != std::string::npos);
  CHECK(told(run("check --format ndjson -", wash_boiler()).out).find("told otherwise") != std::string::npos);
  CHECK(run("merge " + folder.path() + "/none").status == 2);
}

TEST_CASE("merge counts what is accepted and known as one run does") {
  const Folder folder;
  const auto careless = replaced(beans, "headspace: 1 inch\n", "headspace: 1/2 inch\n");
  folder.write("a.yaml", careless + "accept: {rule: headspace-too-little, because: a trial}\n");
  folder.write("b.yaml", replaced(careless, "Hollow Farm", "Other"));
  const auto ran =
      shell("cd " + folder.path() +
            "\nsealworthy check --write-baseline known.json --fail-on notice --format json . > one.json\n"
            "sealworthy merge --fail-on notice one.json > merged.json; echo $?; cmp one.json merged.json");
  CHECK(ran.out == "0\n");
  const auto summary = nlohmann::json::parse(read_all(folder.path() + "/merged.json"))["summary"];
  CHECK(summary["known"] == 1);
  CHECK(summary["skipped"] == 1);  // one.json, which the shell makes before the run
}

TEST_CASE("what a run writes among the recipes is not read as one") {
  const Folder folder;
  folder.write("a.yaml", beans);
  const auto ran = shell("cd " + folder.path() +
                         "\nsealworthy check --write-baseline known.json --output json:report.json . && "
                         "sealworthy check --baseline known.json --output json:report.json .");
  CHECK(ran.status == 0);
  CHECK(nlohmann::json::parse(read_all(folder.path() + "/report.json"))["summary"]["skipped"] == 0);
}

TEST_CASE("completions: each shell that is here reads them, and bash completes by them") {
  for (const auto* name : {"bash", "zsh", "fish"}) {
    CAPTURE(name);
    const auto script = run(std::string("completions ") + name);
    CHECK(script.status == 0);
    CHECK(script.out.find("fail-on") != std::string::npos);
    CHECK(script.out.find("sarif") != std::string::npos);
    const auto ran =
        shell(std::string("command -v ") + name + " > /dev/null || exit 0; sealworthy completions " + name +
              " > c && " + name + " -n c; status=$?; rm -f c; exit $status");
    CAPTURE(ran.err);
    CHECK(ran.status == 0);
  }
  const auto words = [](const std::string& typed) {
    return shell("source <(sealworthy completions bash)\nCOMP_WORDS=(" + typed +
                 ")\nCOMP_CWORD=$((${#COMP_WORDS[@]} - 1))\n_sealworthy\nprintf '%s\\n' \"${COMPREPLY[@]}\"")
        .out;
  };
  CHECK(words("sealworthy lo") == "lookup\n");
  CHECK(words("sealworthy check --form") == "--format\n");
  CHECK(words("sealworthy check --format sa") == "sarif\n");
  CHECK(words("sealworthy check --fail-on d") == "danger\n");
  CHECK(words("sealworthy completions --he") == "--help\n");
  CHECK(run("completions tcsh").status == 2);
}

TEST_CASE("the manual page is what man reads without complaint, and has every option of the help") {
  const auto page = run("man");
  CHECK(page.status == 0);
  const auto ran = shell(
      "command -v man > /dev/null && command -v groff > /dev/null || exit 0\n"
      "sealworthy man | groff -man -Tascii -ww -z 2>&1");
  CHECK(ran.out.empty());
  for (const auto* command : {"check", "lookup", "read", "merge"}) {
    const auto help = run(std::string(command) + " --help").out;
    for (auto at = help.find("  --"); at != std::string::npos; at = help.find("  --", at + 1)) {
      auto name = help.substr(at + 2, help.find_first_of(" ,=\n", at + 2) - at - 2);
      std::string escaped;
      for (const char c : name) escaped += c == '-' ? std::string("\\-") : std::string(1, c);
      CAPTURE(name);
      CHECK(page.out.find(escaped) != std::string::npos);
    }
  }
  CHECK(page.out.find("EXIT STATUS") != std::string::npos);
}
