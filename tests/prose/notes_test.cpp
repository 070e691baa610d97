/// Notes below a recipe that follows a published process: one that changes it must never leave it `tested`,
/// one that changes nothing must. The pages, each with its publication, and the notes are in
/// tests/data/notes.yaml.

#include <doctest/doctest.h>

#include <fstream>
#include <sealworthy/checker.hpp>
#include <sstream>
#include <string>

#include "yaml/document.hpp"

namespace sealworthy {
namespace {

const yaml::Document& notes() {
  static const yaml::Document document = [] {
    std::ifstream file(SEALWORTHY_SOURCE_DIR "/tests/data/notes.yaml");
    std::stringstream text;
    text << file.rdbuf();
    return std::get<yaml::Document>(yaml::read_documents(text.str()).at(0));
  }();
  return document;
}

RecipeReport checked(std::string_view page, std::string_view note) {
  static const auto checker = Checker::builtin();
  CheckOptions options;
  options.named = true;
  const auto reports =
      checker.check_text("page.md", std::string(page) + "\n" + std::string(note) + "\n", options);
  REQUIRE(reports.size() == 1);
  return reports[0];
}

}  // namespace

TEST_CASE("a note that changes a tested recipe never leaves it tested, one that changes nothing does") {
  std::size_t changes = 0, harmless = 0;
  for (const auto& page : notes().root().find("pages")->items) {
    const auto text = page.find("page")->text;
    CAPTURE(page.find("of")->text);
    CHECK(checked(text, "").verdict == Verdict::tested);
    for (const auto& note : page.find("changes")->items) {
      CAPTURE(note.text);
      CHECK(checked(text, note.text).verdict != Verdict::tested);
      ++changes;
    }
    for (const auto& note : page.find("changes-nothing")->items) {
      CAPTURE(note.text);
      const auto report = checked(text, note.text);
      CHECK(report.verdict == Verdict::tested);
      for (const auto& finding : report.findings) CHECK(finding.severity == Severity::notice);
      ++harmless;
    }
  }
  MESSAGE(changes << " notes that change a recipe, " << harmless << " that change nothing");
}

TEST_CASE("a page that is tested says that its notes in somebody's own words are left to the reader") {
  const auto& page = notes().root().find("pages")->items.front();
  const auto text = page.find("page")->text;
  const auto says = [](const RecipeReport& report) {
    std::string found;
    for (const auto& one : report.assumed)
      if (one.find("in the notes") != std::string::npos) found = one;
    return found;
  };
  CHECK(says(checked(text, "")).empty());
  CHECK(says(checked(text, "Let the jars cool 12 hours and check the seals.")).empty());
  const auto report = checked(text, "We think of our grandmother whenever the lids sing.");
  CHECK(report.verdict == Verdict::tested);
  CHECK(says(report).starts_with("nothing in the notes in line "));
  CHECK(says(report).ends_with(" changes the recipe"));
}

}  // namespace sealworthy
