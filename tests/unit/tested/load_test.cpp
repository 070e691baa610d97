// What a wrong row of rules/processes is told, and where.

#include "at_hand.hpp"

using namespace sealworthy;
using namespace sealworthy::tested;

namespace {

/// Two invented products of an invented household that every check is content with.
const std::string good = R"(publication: usda-2015
section: Guide 4
food-groups:
  any-vinegar: [vinegar, vinegar-white, vinegar-cider]
products:
  - id: ridge-beans
    title: Ridge beans
    page: "4-99"
    class: low-acid
    foods: [green-bean]
    styles: [pieces]
    jars: [pint, quart]
    headspace: 1 inch
    largest-piece: {pieces: 1 inch, whole: 4 inches}
    rows:
      - {method: pressure-dial, packs: [hot, raw], jars: [pint, quart], minutes: 25, psi: {0-2000: 11, 2001-4000: 12, 4001-6000: 13, 6001-8000: 14}}
      - {method: pressure-weighted, packs: [hot], jar: pint, minutes: 25, psi: {0-1000: 10, 1001+: 15}, read: memory, bands-read: [0-1000]}
  - id: ridge-relish
    title: Ridge relish
    class: acidified
    foods: [cucumber, onion]
    headspace:
      - {part: solids, leave: 1 inch}
      - {part: liquid, leave: 1/2 inch}
    acid-per-jar:
      - {jar: pint, one-of: [{food: vinegar, amount: 2 tbsp, strength: 5 %}, {food: citric-acid, amount: 1/4 tsp}]}
    rows:
      - {method: boiling-water, packs: not said, jar: pint, minutes: {0-1000: 10, 1001-6000: 15, 6001+: 20}}
    formula:
      yields: about 8 pints
      lines:
        - {food: cucumber, name: pickling cucumber, amount: 6 lb, state: [sliced], role: low-acid}
        - {food: onion, amount: [8 cups, about 3 lb], role: low-acid, at-most: yes, note: peeled}
        - {food: any-vinegar, amount: 4 cups, role: acid, strength: 5 %}
        - {food: celery-seed, amount: 1 tsp, per: pint, role: flavor, optional: yes}
        - {food: water, text: water to cover}
      versions:
        - name: half a batch
          yields: 4 pints
          lines:
            - {food: cucumber, amount: 3 lb}
)";

struct Slip {
  std::string from;
  std::string to;
  int line;
  int column;
  std::string told;
};

void check(const Slip& slip) {
  CAPTURE(slip.from);
  CAPTURE(slip.to);
  auto text = good;
  const auto at = text.find(slip.from);
  REQUIRE(at != std::string::npos);
  text.replace(at, slip.from.size(), slip.to);
  const auto loaded = load(text);
  REQUIRE(!loaded.errors.empty());
  const auto& error = loaded.errors.front().error;
  CHECK(loaded.errors.front().file == "house.yaml");
  CHECK_MESSAGE(error.message.find(slip.told) != std::string::npos, error.message);
  CHECK_MESSAGE((error.at == Position{slip.line, slip.column}),
                error.message << " at " << error.at.line << ":" << error.at.column);
}

}  // namespace

TEST_CASE("a good file loads whole") {
  const auto loaded = load(good);
  for (const auto& error : loaded.errors) FAIL_CHECK(error.error.message);
  const auto* beans = loaded.tables.find("ridge-beans");
  REQUIRE(beans != nullptr);
  CHECK(beans->source == "USDA Complete Guide (2015), Guide 4, page 4-99");
  CHECK(beans->acid_class == ProductClass::low_acid);
  REQUIRE(beans->rows.size() == 3);  // a row for two jars is two rows
  CHECK(beans->rows[0].jar == jar("pint"));
  CHECK(beans->rows[1].jar == jar("quart"));
  CHECK(beans->rows[1].source == beans->source);
  CHECK(beans->rows[2].options.at(0).steps.at(0).read == Read::reprint);
  CHECK(beans->rows[2].options.at(0).steps.at(1).read == Read::memory);
  CHECK(beans->largest_piece == piece_inches(4));
  REQUIRE(beans->piece_limits.size() == 2);
  CHECK(beans->piece_limits[0].form == "pieces");

  const auto* relish = loaded.tables.find("ridge-relish");
  REQUIRE(relish != nullptr);
  CHECK(relish->headspace.size() == 2);
  CHECK(!relish->rows[0].hot);
  CHECK(!relish->rows[0].raw);
  REQUIRE(relish->acid_per_jar.size() == 1);
  CHECK(relish->acid_per_jar[0].one_of[0].strength_percent == 5);
  REQUIRE(relish->formula.has_value());
  const auto& lines = relish->formula->lines;
  REQUIRE(lines.size() == 5);
  CHECK(lines[0].text == "6 lb pickling cucumber, sliced");
  CHECK(lines[1].text == "8 cups onion (peeled)");
  CHECK(lines[1].amounts.size() == 2);
  CHECK(lines[1].at_most);
  CHECK(lines[2].foods == std::vector<std::string>{"vinegar", "vinegar-white", "vinegar-cider"});
  CHECK(lines[2].strength_percent == 5);
  CHECK(lines[3].per_jar);
  CHECK(lines[3].per_jar_of == jar("pint"));
  CHECK(lines[3].text == "1 tsp celery seed in each pint");
  CHECK(lines[4].amounts.empty());
  CHECK(lines[4].text == "water to cover");
  REQUIRE(relish->versions.size() == 1);
  CHECK(relish->versions[0].name == "half a batch");
}

TEST_CASE("a wrong row is told at its place") {
  // clang-format off
  check({"jars: [pint, quart]\n", "jars: [pint, quartt]\n", 12, 18, "no such jar as 'quartt'"});
  check({"class: low-acid", "class: low", 9, 12, "can't be 'low'"});
  check({"foods: [green-bean]", "foods: [green-been]", 10, 13, "no such food as 'green-been'"});
  check({"headspace: 1 inch", "headspace: 1 pinch", 13, 16, "1 pinch"});
  check({"headspace: 1 inch", "headspace: 3/4 inch", 13, 16, "no table asks for a headspace of 3/4 inch"});
  check({"    headspace: 1 inch\n", "", 6, 5, "'headspace' is missing"});
  check({"    title: Ridge beans\n", "", 6, 5, "'title' is missing"});
  check({"styles: [pieces]", "stiles: [pieces]", 11, 5, "no such key as 'stiles'"});
  check({"method: pressure-dial", "method: pressure-dail", 16, 18, "can't be 'pressure-dail'"});
  check({"packs: [hot, raw]", "packs: [hot, rough]", 16, 46, "can't be 'rough'"});
  check({"minutes: 25,", "minutes: 25.5,", 16, 82, "no time in whole minutes"});
  check({"minutes: 25,", "minutes: 600,", 16, 82, "no time in whole minutes"});
  check({"2001-4000: 12", "2001-4000: twelve", 16, 115, "no pressure in psi"});
  check({"2001-4000: 12", "2001 to 4000: 12", 16, 104, "no altitude band"});
  check({"2001-4000: 12", "2501-4000: 12", 16, 9, "without gap or overlap"});
  check({"2001-4000: 12", "1901-4000: 12", 16, 9, "without gap or overlap"});
  check({"0-2000: 11", "500-2000: 11", 16, 9, "begin at 0"});
  check({"2001-4000: 12", "2001-4000: 13", 16, 9, "do not rise from band to band"});
  check({"0-2000: 11, 2001-4000: 12", "0-3000: 11, 3001-4000: 12", 16, 9, "bands of a dial gauge"});
  check({", 4001-6000: 13, 6001-8000: 14", "", 16, 9, "bands of a dial gauge"});
  check({"0-1000: 10, 1001+: 15}, read", "0-1000: 10, 1001+: 13}, read", 17, 9, "not those that weights have"});
  check({"0-1000: 10, 1001+: 15}, read", "0-2000: 10, 2001+: 15}, read", 17, 9, "bands of a weighted gauge"});
  check({"minutes: 25, psi: {0-1000", "minutes: 20, psi: {0-1000", 17, 9, "differ in time"});
  check({"6001+: 20", "6001-8000: 20", 28, 9, "must be open"});
  check({"1001-6000: 15", "1001-6000: 5", 28, 9, "the time falls"});
  check({"1001-6000: 15, 6001+", "1001-5000: 15, 5001+", 28, 9, "no boiling-water band begins at 5,001 ft"});
  check({"class: acidified", "class: low-acid", 28, 9, "has no boiling-water process"});
  check({"read: memory", "read: heard", 17, 111, "can't be 'heard'"});
  check({"amount: 6 lb,", "amount: some,", 32, 61, "'some' is no amount"});
  check({"amount: 6 lb,", "amount: 6 lb cucumbers,", 32, 61, "is no amount"});
  check({"role: acid,", "role: sour,", 34, 53, "can't be 'sour'"});
  check({"strength: 5 %}\n", "strength: strong}\n", 34, 69, "no strength in percent"});
  check({", text: water to cover", "", 36, 11, "without an amount needs a text"});
  check({"amount: 2 tbsp, ", "", 26, 30, "one food and its amount"});
  check({"id: ridge-relish", "id: ridge-beans", 18, 5, "stands here twice"});
  check({"page: \"4-99\"", "publication: usda-2016", 8, 18, "no such source as 'usda-2016'"});
  check({"styles: [pieces]", "as-printed: [times]", 6, 5, "no longer needed"});
  check({"styles: [pieces]", "same-process-as: ridge-peas", 11, 22, "no such product"});
  check({"styles: [pieces]", "same-process-as: ridge-relish", 11, 22, "differs from that of ridge-relish"});
  check({"styles: [pieces]", "sterile-jars: always", 11, 19, "under what time"});
  // clang-format on
}

TEST_CASE("a larger jar with a shorter time is told, unless the source prints it so") {
  auto text = good;
  const std::string row = "      - {method: boiling-water, packs: not said, jar: pint, ";
  const auto at = text.find(row);
  text.insert(
      at,
      "      - {method: boiling-water, packs: not said, jar: quart, minutes: {0-1000: 5, 1001-6000: 10, "
      "6001+: 15}}\n");
  const auto loaded = load(text);
  REQUIRE(loaded.errors.size() == 1);
  CHECK(loaded.errors[0].error.message.find("the time for quarts is shorter than for pints") !=
        std::string::npos);
  CHECK(loaded.errors[0].error.suggestion.find("as-printed: [jar-times]") != std::string::npos);
  text.insert(text.find("    class: acidified"), "    as-printed: [jar-times]\n");
  CHECK(load(text).errors.empty());
}

TEST_CASE("a row told twice is an error") {
  auto text = good;
  const auto at = text.find("      - {method: pressure-weighted");
  const auto row = text.substr(at, text.find('\n', at) + 1 - at);
  text.insert(at, row);
  const auto loaded = load(text);
  REQUIRE(loaded.errors.size() == 1);
  CHECK(loaded.errors[0].error.at == Position{18, 9});
  CHECK(loaded.errors[0].error.message.find("stands above already") != std::string::npos);
}
