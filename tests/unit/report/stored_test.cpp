#include <doctest/doctest.h>

#include <sealworthy/checker.hpp>
#include <sealworthy/formats.hpp>
#include <sealworthy/stored.hpp>
#include <sealworthy/study.hpp>

using namespace sealworthy;

namespace {

const std::string cards = R"(recipe: Ridge road beans
ingredients:
  - 14 lb green beans, cut in 1-inch pieces
  - water
jars: quart
headspace: 1/2 inch
process:
  method: boiling water
  time: 3 hours
steps:
  - Turn the jars upside down.
---
recipe: [broken
---
recipe: Plum sauce
ingredients: [4 lb plums]
)";

std::string ndjson(const std::vector<RecipeReport>& reports) {
  NdjsonWriter writer;
  std::string out;
  for (const auto& report : reports) out += writer.recipe(report);
  return out;
}

std::string text(const std::vector<RecipeReport>& reports) {
  TextWriter writer{TextStyle{}};
  std::string out;
  for (const auto& report : reports) out += writer.recipe(report);
  return out;
}

}  // namespace

TEST_CASE("stored reports come back as they were, under the path asked for") {
  const auto checker = Checker::builtin();
  const auto reports = checker.check_text("a.yaml", cards);
  REQUIRE(reports.size() == 3);
  const auto again = restore(store(reports), "a.yaml");
  REQUIRE(again);
  CHECK(ndjson(*again) == ndjson(reports));
  CHECK(text(*again) == text(reports));
  const auto moved = restore(store(reports), "b.yaml");
  REQUIRE(moved);
  CHECK(ndjson(*moved) == ndjson(checker.check_text("b.yaml", cards)));
}

TEST_CASE("the study and the comparison are stored too") {
  const auto checker = Checker::builtin();
  CheckOptions options;
  options.explain = options.side_by_side = true;
  options.altitude = Interval<Altitude>::exactly(feet(2400));
  options.against = "choice-salsa";
  const std::string salsa =
      "recipe: Salsa\ningredients:\n  - 6 cups tomatoes\n  - 9 cups onions\n  - 1 cup bottled lime juice\n  "
      "- "
      "some salt\njars: pint\nprocess: {method: boiling water, time: 15 minutes}\n";
  const auto reports = checker.check_text("a.yaml", salsa, options);
  REQUIRE(reports.size() == 1);
  REQUIRE(reports[0].compared);
  REQUIRE(reports[0].study != nullptr);
  REQUIRE(reports[0].study->acidity);
  const auto bytes = store(reports);
  const auto again = restore(bytes, "a.yaml");
  REQUIRE(again);
  CHECK(ndjson(*again) == ndjson(reports));
  CHECK(text(*again) == text(reports));
  CHECK(store(*again) == bytes);
  for (std::size_t n = 0; n < bytes.size(); ++n) CHECK_FALSE(restore(bytes.substr(0, n), "a.yaml"));
}

TEST_CASE("bytes that are cut off or damaged are refused or harmless") {
  const auto bytes = store(Checker::builtin().check_text("a.yaml", cards));
  for (std::size_t n = 0; n < bytes.size(); ++n) CHECK_FALSE(restore(bytes.substr(0, n), "a.yaml"));
  CHECK_FALSE(restore(bytes + "x", "a.yaml"));
  for (std::size_t at = 0; at < bytes.size(); ++at) {
    auto damaged = bytes;
    damaged[at] = static_cast<char>(damaged[at] ^ 0xff);
    if (const auto reports = restore(damaged, "a.yaml")) CHECK(ndjson(*reports).empty() == reports->empty());
  }
}

TEST_CASE("a fingerprint holds on to the words of the line, the title and the rule, not to the place") {
  const auto checker = Checker::builtin();
  const auto print = [&](const std::string& path, const std::string& card) {
    const auto report = checker.check_text(path, card).front();
    for (const auto& finding : report.findings)
      if (finding.rule == "headspace-too-little") return fingerprint(report, finding);
    return std::string("none");
  };
  const auto changed = [](const std::string& from, const std::string& to) {
    auto card = cards;
    return card.replace(card.find(from), from.size(), to);
  };
  const auto whole = print("a.yaml", cards);
  CHECK(whole.size() == 16);
  CHECK(print("b/c.yaml", "# one\n# two\n" + cards) == whole);
  CHECK(print("a.yaml", changed("headspace: 1/2 inch", "headspace:  1/2  Inch # less")) != whole);
  CHECK(print("a.yaml", changed("headspace: 1/2 inch", "headspace:  1/2  Inch")) == whole);
  CHECK(print("a.yaml", changed("headspace: 1/2 inch", "headspace: 5/8 inch")) != whole);
  CHECK(print("a.yaml", changed("Ridge road", "Other road")) != whole);
}
