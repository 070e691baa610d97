#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "checks/practice_in_steps.hpp"
#include "steps_by_hand.hpp"

using namespace sealworthy;
using test::Card;
using test::Steps;

namespace {

constexpr std::string_view vocabulary = R"(
vocabulary:
  TAKEN-BACK: [unsafe, not safe, not recommended]
  JARS: [jar, =pints]
  FINE: [fine, no harm, not matter]
  VESSELS: [JARS, crock]
)";

std::string rule(std::string_view id, std::string_view with, std::string_view more = {}) {
  std::string text =
      "  - id: " + std::string(id) +
      "\n    severity: caution\n    topic: practice\n    check: practice-in-steps\n    with: {" +
      std::string(with) + "}\n";
  if (!more.empty()) text += "    " + std::string(more) + "\n";
  return text +
         "    says: \"The steps say: {words} ({found}).\"\n    why: w\n    instead: i\n    source: {title: "
         "t}\n"
         "    read: memory\n    examples: []\n";
}

/// The check over these rules, with no errors.
const Steps& steps(std::string_view with, std::string_view more = {}) {
  static std::vector<std::pair<std::string, std::unique_ptr<Steps>>> made;
  const auto key = std::string(with) + "|" + std::string(more);
  for (const auto& [known, check] : made)
    if (known == key) return *check;
  auto check = std::make_unique<Steps>();
  check->add("words.yaml", vocabulary);
  check->add("rules.yaml", "rules:\n" + rule("it", with, more));
  check->make();
  for (const auto& error : check->errors()) FAIL_CHECK(error.error.message);
  made.emplace_back(key, std::move(check));
  return *made.back().second;
}

bool tells(std::string_view with, std::string_view sentence, const Card& card = {}) {
  return !steps(with).flagged(sentence, card).empty();
}

std::vector<std::string> errors_of(std::string_view rules, std::string_view words = vocabulary) {
  Steps check;
  check.add("words.yaml", words);
  check.add("rules.yaml", "rules:\n" + std::string(rules));
  check.make();
  std::vector<std::string> out;
  for (const auto& error : check.errors())
    out.push_back(error.file + ":" + std::to_string(error.error.at.line) + ": " + error.error.message + " " +
                  error.error.suggestion);
  return out;
}

}  // namespace

TEST_CASE("all items must stand in one sentence, in any order and form") {
  const auto* with = "told: [[turn | flip, JARS, upside down]]";
  CHECK(tells(with, "Turn the jars upside down."));
  CHECK(tells(with, "The jars are turned upside-down"));
  CHECK(tells(with, "Upside down you flip the pints"));
  CHECK_FALSE(tells(with, "Turn the jars."));
  CHECK_FALSE(tells(with, "Turn the pint upside down"));  // =pints is that form only
  CHECK_FALSE(tells(with, "Turn the jars. Upside down cake is good."));
}

TEST_CASE("words of a phrase follow each other, articles between them read over") {
  const auto* with = "told: [[on head, jar]]";
  CHECK(tells(with, "stand the jar on its head"));
  CHECK_FALSE(tells(with, "the jar on the very head"));
}

TEST_CASE("~ reads over a few words, not over a comma, and or then") {
  const auto* with = "told: [[cool ~ jar]]";
  CHECK(tells(with, "cool all of the filled jars"));
  CHECK_FALSE(tells(with, "cool the syrup and fill the jars"));
  CHECK_FALSE(tells(with, "cool, then take the jars"));
  CHECK_FALSE(tells(with, "cool the very hot and thick red sweet syrup jars"));
}

TEST_CASE("reach and order") {
  CHECK_FALSE(tells("told: [{words: [turn, jar], reach: 3}]", "turn each of your jars"));
  CHECK(tells("told: [{words: [turn, jar], reach: 4}]", "turn each filled jar"));
  CHECK(tells("told: [{words: [cold water, jar], in-order: yes}]", "run cold water over the jars"));
  CHECK_FALSE(tells("told: [{words: [cold water, jar], in-order: yes}]", "dip the jars in cold water"));
  CHECK_FALSE(tells("told: [[turn, jar]]",
                    "turn on the light of the kitchen when you come home in the evening of a long day "
                    "and see that there is one jar"));
}

TEST_CASE("lists may use lists") {
  CHECK(tells("told: [[fill, VESSELS]]", "fill the crock"));
  CHECK(tells("told: [[fill, VESSELS]]", "fill the pints"));
}

TEST_CASE("a practice told as not done is none") {
  const auto* with = "told: [[invert, JARS]]";
  CHECK_FALSE(tells(with, "do not invert the jars"));
  CHECK_FALSE(tells(with, "never, ever invert the jars"));
  CHECK(tells(with, "do not open but invert the jars"));
  CHECK_FALSE(tells(with, "inverting the jars is not safe"));
  CHECK_FALSE(tells(with, "if you invert the jars they may leak"));
  CHECK(tells(with, "if you are in a hurry, invert the jars"));
  CHECK_FALSE(tells(with, "Should you invert the jars?"));
}

TEST_CASE("the next sentence may take it back") {
  const auto* with = "told: [[invert, JARS]]";
  CHECK_FALSE(tells(with, "Some people invert the jars; don't."));
  CHECK_FALSE(tells(with, "Some people invert the jars. That is not safe."));
  CHECK_FALSE(tells(with, "Some people invert the jars. Do not do it."));
  CHECK(tells(with, "Invert the jars. Do not touch the lids."));
  CHECK(tells(with, "They say it is unsafe, but we invert the jars."));
  CHECK(tells(with, "Invert the jars. It is not unsafe."));
}

TEST_CASE("not: the fault is that it is not done") {
  const auto* with = "told: [[not wipe, rim]]";
  CHECK(tells(with, "no need to wipe the rims"));
  CHECK(tells(with, "Close the jars without wiping the rims"));
  CHECK(tells(with, "wiping the rims is unnecessary"));
  CHECK(tells(with, "never wipe the rims"));
  CHECK_FALSE(tells(with, "wipe the rims"));
  CHECK_FALSE(tells(with, "do not forget to wipe the rims"));
  CHECK_FALSE(tells(with, "if you forgot to wipe the rims, start over"));
}

TEST_CASE("a negation that the pattern asks for itself does not count against it") {
  const auto* with = "told: [[chip, FINE]]";
  CHECK(tells(with, "a chip does no harm"));
  CHECK(tells(with, "a chip does not matter"));
  CHECK_FALSE(tells(with, "a chip is not fine"));
}

TEST_CASE("if asked for counts") {
  CHECK(tells("told: [[if, boil stops, keep counting]]", "if the boil stops keep counting"));
  CHECK_FALSE(tells("told: [[boil stops, keep counting]]", "if the boil stops keep counting"));
}

TEST_CASE("figures") {
  CHECK(tells("told: [[vent, under 10 minutes]]", "vent for two minutes"));
  CHECK(tells("told: [[vent, under 10 minutes]]", "vent 7 to 10 minutes"));
  CHECK_FALSE(tells("told: [[vent, under 10 minutes]]", "vent 10 minutes"));
  CHECK(tells("told: [[keep, over 75 F]]", "keep at 72 to 80 F"));
  CHECK_FALSE(tells("told: [[keep, over 75 F]]", "keep at 75 F"));
  CHECK(tells("told: [[hold, from 150 to 190 F]]", "hold at 190 F"));
  CHECK_FALSE(tells("told: [[hold, from 150 to 190 F]]", "hold at 191 F"));
  CHECK(tells("told: [[bake, any hours]]", "bake 20 minutes"));
  CHECK_FALSE(tells("told: [[bake, any hours]]", "bake at 300 F"));
}

TEST_CASE("unless silences a pattern or all of a rule") {
  CHECK_FALSE(tells("told: [[invert, JARS]], unless: [empty]", "invert the empty jars"));
  CHECK(tells("told: [[invert, JARS]], unless: [empty]", "invert the jars, not the empty ones"));
  CHECK_FALSE(tells("told: [[invert, JARS]], unless: [[wash, drain]]", "wash the jars and invert to drain"));
  CHECK(tells("told: [[invert, JARS]], unless: [[wash, drain]]", "wash, then invert the jars"));
  CHECK_FALSE(tells("told: [{words: [invert, JARS], unless: [mix]}]", "invert the jars to mix"));
}

TEST_CASE("titles are read only where the rule says so") {
  Card card;
  card.title = "Inverted jars of jam";
  CHECK_FALSE(tells("told: [[invert, JARS]]", "Fill.", card));
  CHECK(tells("told: [[invert, JARS]], look-in: [title, steps]", "Fill.", card));
  CHECK_FALSE(tells("told: [[invert, JARS]], look-in: title", "invert the jars"));
}

TEST_CASE("cases of a rule share its words, and a rule yields to another") {
  Steps check;
  check.add("words.yaml", vocabulary);
  check.add("rules.yaml", "rules:\n" +
                              rule("plain", "told: [[invert, JARS]]", "only-if: {process: present}") +
                              rule("bare", "as: plain", "only-if: {process: missing}") +
                              rule("shy", "told: [[invert]], yields-to: [plain]"));
  check.make();
  REQUIRE(check.errors().empty());
  CHECK(check.flagged("invert the jars") == std::vector<std::string>{"plain"});
  Card card;
  card.processed = false;
  CHECK(check.flagged("invert the jars", card) == std::vector<std::string>{"bare", "shy"});
}

TEST_CASE("a finding carries the words, the figure and the place, once a step") {
  const auto findings =
      steps("told: [[vent, under 10 minutes]]").findings("Vent 2 minutes. Later vent two minutes.");
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].message == "The steps say: Vent 2 minutes (2 minutes).");
  CHECK(findings[0].found == "2 minutes");
  CHECK(findings[0].at == Position{7, 5});
}

TEST_CASE("wrong parameters are told with file and place") {
  CHECK(errors_of(rule("a", "told: [[BOTTLES]]")) ==
        std::vector<std::string>{"rules.yaml:6: There is no list of words named BOTTLES. "});
  CHECK(errors_of(rule("a", "told: [[JAR]]")).front().find("JARS") != std::string::npos);
  CHECK(errors_of(rule("a", "told: []")).front().find("list of patterns") != std::string::npos);
  CHECK(errors_of(rule("a", "told: [[]]")).front().find("list of items") != std::string::npos);
  CHECK(errors_of(rule("a", "told: [[jar | ]]")).front().find("empty") != std::string::npos);
  CHECK(errors_of(rule("a", "told: [[~ jar]]")).front().find("between two words") != std::string::npos);
  CHECK(errors_of(rule("a", "told: [['jar!']]")).front().find("small letters") != std::string::npos);
  CHECK(errors_of(rule("a", "told: [[under 10 parsecs]]")).front().find("no unit") != std::string::npos);
  CHECK(errors_of(rule("a", "told: [{words: [jar], rech: 3}]")).front().find("reach") != std::string::npos);
  CHECK(errors_of(rule("a", "told: [{words: [jar], reach: 0}]")).front().find("1 to 96") !=
        std::string::npos);
  CHECK(errors_of(rule("a", "as: b")).front().find("no rule with 'told:'") != std::string::npos);
  CHECK(errors_of(rule("a", "look-in: steps")).front().find("'told:' and 'as:'") != std::string::npos);
  CHECK(errors_of(rule("a", "told: [[jar]], yields-to: [b]")).front().find("no rule") != std::string::npos);
  CHECK(errors_of(rule("a", "tolds: [[jar]]")).size() >= 1);
}

TEST_CASE("wrong lists of words are told") {
  const auto first = [](std::string_view words) {
    return errors_of(rule("a", "told: [[jar]]"), words).front();
  };
  CHECK(first("vocabulary: {jars: [jar]}").find("capitals") != std::string::npos);
  CHECK(first("vocabulary: {JARS: []}").find("no words") != std::string::npos);
  CHECK(first("vocabulary: {AA: [BB], BB: [AA]}").find("uses itself") != std::string::npos);
  CHECK(first("vocabulary: [a]").find("map of lists") != std::string::npos);
}

TEST_CASE("a long text costs in proportion to its length and breaks nothing") {
  std::string text;
  for (int i = 0; i < 20000; ++i) text += "do not invert the jars and wipe jar jar ";
  CHECK_NOTHROW((void)steps("told: [[invert, JARS], [not wipe, JARS, jar]]").flagged(text));
}
