/// What must follow from one card for another, whatever the figures: more acid or more time never makes a
/// card worse, more of a low-acid food never makes one better. Over every tested formula, as published and
/// with one line already wrong. No outside source: the directions are those of rules/practice/amounts.yaml.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <sealworthy/checker.hpp>
#include <string>
#include <vector>

#include "card_writer.hpp"
#include "knowledge/knowledge.hpp"

namespace sealworthy::mutation {
namespace {

class Pairs {
 public:
  Pairs() : knowledge_(checker_.knowledge()), writer_(knowledge_.tables, knowledge_.catalogue) {}

  void run() {
    for (const auto& product : knowledge_.tables.products())
      if (product.formula && !product.rows.empty() && !product.no_tested_process) one(product);
  }

  long pairs = 0;
  std::vector<std::string> broken;

 private:
  struct Judged {
    Severity worst = Severity::notice;
    bool hazard = false;
    std::string card;
  };

  Judged judge(const tested::Product& product, const std::vector<LineEdit>& edits, double more_minutes = 0) {
    const auto& row = product.rows.front();
    const auto& step = row.options.front().steps.front();
    CardFigures figures{row.method,
                        row.hot || !row.raw ? recipe::Pack::hot : recipe::Pack::raw,
                        row.jar,
                        step.time.si() / 60 + more_minutes,
                        {},
                        500,
                        row.applies_to};
    if (step.pressure) figures.psi = in_psi(*step.pressure);
    CardStyle style;
    style.edits = edits;
    Judged judged;
    judged.card = writer_.write(product, figures, style);
    const auto report = checker_.check_text("card.yaml", judged.card).front();
    REQUIRE(report.verdict != Verdict::unreadable);
    judged.hazard = report.verdict == Verdict::hazard;
    for (const auto& finding : report.findings) judged.worst = std::max(judged.worst, finding.severity);
    return judged;
  }

  void never_worse(const tested::Product& product, const char* what, const Judged& better,
                   const Judged& worse) {
    ++pairs;
    if (better.worst > worse.worst || (better.hazard && !worse.hazard))
      broken.push_back(fmt::format("{}: {}\n{}--- against\n{}", what, product.id, better.card, worse.card));
  }

  static bool movable(const tested::FormulaLine& line, std::string_view role) {
    return line.role == role && !line.amounts.empty() && !line.per_jar && !line.optional && !line.not_eaten;
  }

  void one(const tested::Product& product) {
    const auto& lines = product.formula->lines;
    const bool preserve = product.acid_class == tested::ProductClass::sugar_preserve;
    const std::vector<LineEdit> published(lines.size());
    std::vector<std::vector<LineEdit>> bases{published};
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (!movable(lines[i], "low-acid") && !movable(lines[i], "acid")) continue;
      bases.push_back(published);
      bases.back()[i].factor = lines[i].role == "acid" ? 0.5 : 2;
    }
    for (const auto& base : bases) {
      const auto before = judge(product, base);
      never_worse(product, "longer", judge(product, base, 10), before);
      for (std::size_t i = 0; i < lines.size(); ++i) {
        auto changed = base;
        if (movable(lines[i], "acid") && !preserve) {
          changed[i].factor *= 1.4;
          never_worse(product, "more acid", judge(product, changed), before);
        } else if (movable(lines[i], "low-acid")) {
          changed[i].factor *= 1.4;
          never_worse(product, "more low-acid food", before, judge(product, changed));
        }
      }
    }
  }

  Checker checker_ = Checker::builtin();
  const knowledge::Knowledge& knowledge_;
  CardWriter writer_;
};

}  // namespace

TEST_CASE("more acid or time never makes a card worse, more low-acid food never better") {
  Pairs all;
  all.run();
  CHECK(all.pairs > 1000);
  MESSAGE(all.pairs << " pairs, " << all.broken.size() << " broken");
  for (std::size_t i = 0; i < std::min<std::size_t>(all.broken.size(), 10); ++i) MESSAGE(all.broken[i]);
  CHECK(all.broken.empty());
}

}  // namespace sealworthy::mutation
