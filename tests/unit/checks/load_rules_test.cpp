#include "checks/load_rules.hpp"

#include <doctest/doctest.h>

using namespace sealworthy;
using checks::OnlyIf;

namespace {

yaml::Document document(std::string_view text) {
  auto documents = yaml::read_documents(text);
  REQUIRE(documents.size() == 1);
  REQUIRE(std::holds_alternative<yaml::Document>(documents[0]));
  return std::get<yaml::Document>(documents[0]);
}

struct Loaded {
  yaml::Document keep;
  std::vector<checks::Rule> rules;
  std::vector<foods::LoadError> errors;
};

Loaded load(std::string_view text) {
  Loaded loaded{document(text), {}, {}};
  knowledge::Sources sources;
  sources.load("sources.yaml",
               document("sources:\n  usda-2015: {name: USDA Complete Guide (2015), year: 2015}\n"),
               loaded.errors);
  checks::load_rules("practice/x.yaml", loaded.keep, sources, loaded.rules, loaded.errors);
  return loaded;
}

constexpr std::string_view good = R"(
rules:
  - id: inversion
    severity: caution
    topic: practice
    check: advice
    only-if: {jar-class: [low-acid, acidified], method: pressure, process: present, matched: no, keep: any}
    says: "Jars stand upside down {found}."
    why: Seals may fail.
    instead: Leave them upright.
    source: {key: usda-2015, section: "Guide 1, Jars and lids", page: 1-14}
    read: memory
    on: peaches
    examples:
      - silent: do not invert the jars
      - flags: {on: plum-jam, headspace: 0 inch}
)";

}  // namespace

TEST_CASE("a rule is read with its words, source, scope and examples") {
  const auto loaded = load(good);
  for (const auto& e : loaded.errors) MESSAGE(e.error.message);
  REQUIRE(loaded.errors.empty());
  REQUIRE(loaded.rules.size() == 1);
  const auto& rule = loaded.rules[0];
  CHECK(rule.id == "inversion");
  CHECK(rule.severity == Severity::caution);
  CHECK(rule.topic == Topic::practice);
  CHECK(rule.read == Read::memory);
  CHECK(rule.source == "USDA Complete Guide (2015), Guide 1, Jars and lids, page 1-14");
  CHECK(rule.only_if.jar_class == 0b000101U);
  CHECK(rule.only_if.method == 0b000100U);
  CHECK(rule.only_if.process == true);
  CHECK(rule.only_if.matched == false);
  CHECK_FALSE(rule.only_if.infant.has_value());
  CHECK(rule.only_if.keep == OnlyIf::Keep::any);
  REQUIRE(rule.examples.size() == 2);
  CHECK_FALSE(rule.examples[0].flags);
  CHECK(rule.examples[0].base == "peaches");
  CHECK(rule.examples[1].base == "plum-jam");
  CHECK(rule.at.line == 3);
}

TEST_CASE("a publication used once is told in full") {
  const auto loaded = load(R"(
rules:
  - {id: a, severity: notice, topic: card, check: advice, says: s, why: w, instead: i, read: reprint, examples: [],
     source: {title: Canned breads, publisher: Some Extension, year: 2017, section: whole page}}
)");
  REQUIRE(loaded.errors.empty());
  CHECK(loaded.rules[0].source == "Canned breads, Some Extension (2017), whole page");
}

TEST_CASE("what is wrong is told with its file, place and the nearest right word") {
  struct Wrong {
    std::string_view from, to, message, suggestion;
    int line;
  };
  for (const auto& wrong : {
           Wrong{"severity: caution", "severity: cautoin", "can't be 'cautoin'", "did you mean 'caution'?",
                 4},
           Wrong{"topic: practice", "topik: practice", "no such key as 'topik'", "did you mean 'topic'?", 5},
           Wrong{"key: usda-2015", "key: usda-2051", "no such source as 'usda-2051'",
                 "did you mean 'usda-2015'?", 11},
           Wrong{"low-acid, acidified", "low-acids, acidified", "can't be 'low-acids'",
                 "did you mean 'low-acid'?", 7},
           Wrong{"matched: no", "mached: no", "no such key as 'mached'", "did you mean 'matched'?", 7},
           Wrong{"silent: do", "quiet: do", "an example is 'flags:' or 'silent:'", "", 15},
           Wrong{"    why: Seals may fail.\n", "", "'why' is missing", "", 3},
       }) {
    const auto& [from, to, message, suggestion, line] = wrong;
    CAPTURE(wrong.to);
    std::string text(good);
    text.replace(text.find(from), from.size(), to);
    const auto loaded = load(text);
    CHECK(loaded.rules.empty());
    bool told = false;
    for (const auto& error : loaded.errors) {
      CHECK(error.file == "practice/x.yaml");
      told = told || (error.error.message.find(message) != std::string::npos &&
                      error.error.suggestion == suggestion && error.error.at.line == line);
    }
    CHECK(told);
  }
}

TEST_CASE("across files: an id given twice, a base or a check that does not exist") {
  auto loaded = load(good);
  loaded.rules.push_back(loaded.rules[0]);
  const auto base = document("bases:\n  - {base: peaches, recipe: x}\n");
  std::vector<yaml::Node> bases;
  checks::load_bases("practice/bases.yaml", base, bases, loaded.errors);
  REQUIRE(bases.size() == 1);
  checks::finish_rules(loaded.rules, bases, {"advise"}, loaded.errors);
  std::string all;
  for (const auto& error : loaded.errors) all += error.error.message + " " + error.error.suggestion + "\n";
  CHECK(all.find("rule inversion is given twice the other stands at practice/x.yaml:3") != std::string::npos);
  CHECK(all.find("no base card 'plum-jam'") != std::string::npos);
  CHECK(all.find("no such check as 'advice' did you mean 'advise'?") != std::string::npos);
}

TEST_CASE("a card without its name among the base cards is an error") {
  std::vector<yaml::Node> bases;
  std::vector<foods::LoadError> errors;
  checks::load_bases("b.yaml", document("bases:\n  - {recipe: x}\n"), bases, errors);
  CHECK(bases.empty());
  REQUIRE(errors.size() == 1);
  CHECK(errors[0].error.at.line == 2);
}
