// Runs every example of every rule through the whole checker, and holds the base cards to be tested cards.

#include <doctest/doctest.h>

#include <algorithm>
#include <sealworthy/checker.hpp>

#include "knowledge/knowledge.hpp"
#include "rules/example_card.hpp"

using namespace sealworthy;

namespace {

const Checker& checker() {
  static const auto made = Checker::builtin();
  return made;
}

bool has(const RecipeReport& report, std::string_view rule) {
  return std::any_of(report.findings.begin(), report.findings.end(),
                     [&](const auto& f) { return f.rule == rule; });
}

std::string found(const RecipeReport& report) {
  std::string out = std::string(to_string(report.verdict)) + ", matched '" + report.matched.id + "'";
  for (const auto& point : report.points)
    if (point.state != Point::State::held && point.state != Point::State::assumed)
      out += "\n      point " + std::string(to_string(point.kind)) + " " +
             std::string(to_string(point.state)) + ": " + point.found + " / " + point.needed;
  for (const auto& finding : report.findings)
    out +=
        "\n      " + std::string(to_string(finding.severity)) + " " + finding.rule + ": " + finding.message;
  return out;
}

/// A name in braces that no check filled in.
bool left_open(const Finding& finding) {
  return finding.message.find('{') != std::string::npos || finding.why.find('{') != std::string::npos ||
         finding.instead.find('{') != std::string::npos;
}

std::string place(const checks::Rule& rule, const checks::Example& example) {
  return rule.file + ":" + std::to_string(example.change.at.line) + ": " + rule.id;
}

}  // namespace

TEST_CASE("every example of every rule is flagged or silent as it says") {
  int examples = 0;
  for (const auto& rule : checker().knowledge().rules)
    for (const auto& example : rule.examples) {
      ++examples;
      INFO(place(rule, example));
      const auto made = test::make_card(example, checker().knowledge().bases);
      REQUIRE(made);
      const auto reports = checker().check_text(made->path, made->card, made->options);
      REQUIRE(reports.size() == 1);
      const auto& report = reports[0];
      INFO(made->card << found(report));
      CHECK(report.verdict != Verdict::unreadable);
      CHECK(has(report, rule.id) == example.flags);
      for (const auto& finding : report.findings) CHECK_FALSE(left_open(finding));
    }
  MESSAGE(examples << " examples of " << checker().knowledge().rules.size() << " rules");
}

TEST_CASE(
    "every rule has examples that it flags and that it leaves alone, but for advice and what is taken for "
    "granted") {
  for (const auto& rule : checker().knowledge().rules) {
    const auto flags =
        std::count_if(rule.examples.begin(), rule.examples.end(), [](auto& e) { return e.flags; });
    const auto silent = static_cast<std::ptrdiff_t>(rule.examples.size()) - flags;
    INFO(rule.file << ":" << rule.at.line << ": " << rule.id);
    CHECK(silent >= 1);
    const bool tells = rule.check != "advice" && rule.with.find("assume") == nullptr;
    if (tells) CHECK(flags >= 1);
  }
}

TEST_CASE("every base card that follows a process is tested and draws nothing above a notice") {
  for (const auto& base : checker().knowledge().bases) {
    if (base.find("follows") == nullptr) continue;
    const auto reports = checker().check_text("base.yaml", test::base_card(base));
    REQUIRE(reports.size() == 1);
    INFO("rules/practice/bases.yaml:" << base.at.line << ": " << base.find("base")->text << "\n      "
                                      << found(reports[0]));
    CHECK(reports[0].verdict == Verdict::tested);
    for (const auto& finding : reports[0].findings) CHECK(finding.severity == Severity::notice);
  }
}
