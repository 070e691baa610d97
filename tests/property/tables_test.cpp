/// Every row of every table at every altitude band, as a card that follows it: `tested`, or `unproven` where
/// the figures rest on memory. Then one figure at a time is changed: a hazard, unless the changed card still
/// meets a published option. Sources of the expected outcome: the process tables themselves, each with its
/// publication.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <functional>
#include <map>
#include <sealworthy/checker.hpp>

#include "figures.hpp"
#include "knowledge/knowledge.hpp"

namespace sealworthy::property {
namespace {

struct Counts {
  long rows = 0, cards = 0, tested = 0, from_memory = 0, found = 0, not_found = 0, mutations = 0, hazards = 0,
       still_published = 0;
  long not_tested = 0, hazards_missed = 0, tested_wrongly = 0, false_alarms = 0;
  std::map<std::string, long> examples;  ///< of what went wrong, by product and kind
};

class Run {
 public:
  Run() : knowledge_(checker_.knowledge()), writer_(knowledge_.tables, knowledge_.catalogue) {}

  Counts all() {
    for (const auto& product : knowledge_.tables.products()) {
      for (const auto& row : product.rows) one_row(product, row);
    }
    return counts_;
  }

 private:
  void one_row(const tested::Product& product, const tested::Row& row) {
    ++counts_.rows;
    for (const recipe::Pack pack : {recipe::Pack::hot, recipe::Pack::raw}) {
      const bool any = !row.hot && !row.raw;
      if (!any && !(pack == recipe::Pack::hot ? row.hot : row.raw)) continue;
      for (const auto& option : row.options) {
        for (std::size_t i = 0; i < option.steps.size(); ++i) one_band(product, row, option, i, pack);
      }
    }
  }

  void one_band(const tested::Product& product, const tested::Row& row, const tested::Option& option,
                std::size_t band, recipe::Pack pack) {
    const auto& step = option.steps[band];
    const double top =
        std::isfinite(step.band.to.si()) ? in_feet(step.band.to) : in_feet(knowledge_.tables.highest_open());
    const double bottom = band == 0 ? 0 : std::floor(in_feet(option.steps[band - 1].band.to) + 1.5);
    for (const double feet : {bottom, std::round(top)}) {
      CardFigures card{row.method, pack, row.jar, step.time.si() / 60, {}, feet, row.applies_to};
      if (step.pressure) card.psi = in_psi(*step.pressure);
      if (step.not_recommended && !card.psi) card.psi = in_psi(*option.steps.front().pressure);
      exact(product, card);
      mutate(product, option, band, card);
    }
  }

  [[nodiscard]] RecipeReport check(const tested::Product& product, const CardFigures& card,
                                   const CardStyle& style) {
    last_ = writer_.write(product, card, style);
    return checker_.check_text("card.yaml", last_).front();
  }

  void note(const std::string& kind, const tested::Product& product, const RecipeReport& report) {
    if (++counts_.examples[kind + ": " + product.id] > 1 || shown_ >= 40) return;
    ++shown_;
    std::string text = fmt::format("{} ({}): {}\n{}", kind, product.id, to_string(report.verdict), last_);
    for (const auto& finding : report.findings)
      text += fmt::format("    {} {}: {}\n", to_string(finding.severity), finding.rule, finding.message);
    for (const auto& point : report.points) {
      if (point.state == Point::State::unknown || point.state == Point::State::differs)
        text += fmt::format("    point {} {} found '{}' needed '{}'\n", to_string(point.kind),
                            to_string(point.state), point.found, point.needed);
    }
    MESSAGE(text);
  }

  [[nodiscard]] Published expected(const tested::Product& product, const CardFigures& card) const {
    const Published by_table = published(product, card);
    const bool memory = (product.formula && product.formula->read == Read::memory) ||
                        (!product.acid_per_jar.empty() && product.read == Read::memory) ||
                        product.no_tested_process;
    return by_table == Published::yes && memory ? Published::from_memory : by_table;
  }

  void exact(const tested::Product& product, const CardFigures& card) {
    for (const bool follows : {true, false}) {
      const auto report = check(product, card, {.follows = follows});
      ++counts_.cards;
      judge(product, card, report, follows);
    }
  }

  void judge(const tested::Product& product, const CardFigures& card, const RecipeReport& report,
             bool follows) {
    const Published should = expected(product, card);
    if (should == Published::no) {
      // A row that the source rules out in this band.
      judge_bad(product, report, "not recommended");
      return;
    }
    const bool this_one = report.matched.id == product.id;
    if (!follows) ++(this_one ? counts_.found : counts_.not_found);
    if (report.verdict == Verdict::hazard || (this_one && worst(report) >= Severity::caution)) {
      ++counts_.false_alarms;
      note("false alarm", product, report);
    } else if (report.verdict == Verdict::tested && should == Published::from_memory && this_one) {
      ++counts_.tested_wrongly;
      note("tested from memory", product, report);
    } else if (report.verdict == Verdict::tested) {
      ++counts_.tested;
    } else if (should == Published::from_memory) {
      ++counts_.from_memory;
    } else if (follows || this_one) {
      ++counts_.not_tested;
      note("not tested", product, report);
    }
  }

  static Severity worst(const RecipeReport& report) {
    Severity severity = Severity::notice;
    for (const auto& finding : report.findings) severity = std::max(severity, finding.severity);
    return severity;
  }

  /// A card that meets nothing published.
  void judge_bad(const tested::Product& product, const RecipeReport& report, const std::string& kind) {
    if (report.verdict == Verdict::tested) {
      ++counts_.tested_wrongly;
      note("tested wrongly, " + kind, product, report);
      return;
    }
    const bool sugar = product.acid_class == tested::ProductClass::sugar_preserve;
    const bool told = report.verdict == Verdict::hazard || (sugar && worst(report) >= Severity::caution);
    if (told) {
      ++counts_.hazards;
    } else {
      ++counts_.hazards_missed;
      note("hazard missed, " + kind, product, report);
    }
  }

  void judge_change(const tested::Product& product, const CardFigures& card, const std::string& kind) {
    const auto report = check(product, card, {});
    ++counts_.mutations;
    if (published(product, card) == Published::no) {
      judge_bad(product, report, kind);
      return;
    }
    ++counts_.still_published;
    if (report.verdict == Verdict::hazard) {
      ++counts_.false_alarms;
      note("false alarm, " + kind, product, report);
    }
  }

  void mutate(const tested::Product& product, const tested::Option& option, std::size_t band,
              const CardFigures& card) {
    CardFigures changed = card;
    changed.minutes -= 5;
    if (changed.minutes <= 0) changed.minutes = 1;
    judge_change(product, changed, "five minutes less");
    if (card.psi) {
      changed = card;
      *changed.psi -= 1;
      judge_change(product, changed, "one pound less");
    }
    if (band > 0) {
      const auto& lower = option.steps[band - 1];
      changed = card;
      changed.minutes = lower.time.si() / 60;
      if (lower.pressure) changed.psi = in_psi(*lower.pressure);
      judge_change(product, changed, "figures of the band below");
    }
    for (const auto next : larger_sizes(card.jar)) {
      changed = card;
      changed.jar = next;
      judge_change(product, changed, "next larger jar");
    }
    wrong_method(product, card);
    no_acid(product, card);
  }

  /// The next of the usual sizes.
  [[nodiscard]] std::vector<tested::JarIndex> larger_sizes(tested::JarIndex jar) const {
    const auto jars = knowledge_.tables.jars();
    for (auto i = static_cast<std::size_t>(jar) + 1; i < jars.size(); ++i) {
      if (!jars[i].counts_as) return {static_cast<tested::JarIndex>(i)};
    }
    return {};
  }

  void wrong_method(const tested::Product& product, const CardFigures& card) {
    CardFigures changed = card;
    if (card.psi) {
      changed.method = tested::TableMethod::boiling_water;
      changed.psi.reset();
      judge_change(product, changed, "boiling water for pressure");
    } else {
      changed.method = tested::TableMethod::pressure_weighted;
      changed.psi = 10;
      changed.minutes = std::max(1.0, std::floor(card.minutes / 3));
      judge_change(product, changed, "pressure for boiling water");
    }
  }

  void no_acid(const tested::Product& product, const CardFigures& card) {
    bool asked = !product.acid_per_jar.empty();
    if (product.formula) {
      for (const auto& line : product.formula->lines)
        asked = asked || (line.role == "acid" && !line.optional);
    }
    const bool decides = product.acid_class == tested::ProductClass::acidified;
    if (!asked || !decides) return;
    const auto report = check(product, card, {.acid = false});
    ++counts_.mutations;
    judge_bad(product, report, "no acid");
  }

  Checker checker_ = Checker::builtin();
  const knowledge::Knowledge& knowledge_;
  CardWriter writer_;
  Counts counts_;
  std::string last_;
  int shown_ = 0;
};

TEST_CASE("every row of every table as a card, exact and changed") {
  const Counts counts = Run().all();
  fmt::print("rows {}, cards {}: tested {}, from memory {}; without follows: found {}, not found {}\n",
             counts.rows, counts.cards, counts.tested, counts.from_memory, counts.found, counts.not_found);
  fmt::print("changed cards {}: hazards told {}, still published {}\n", counts.mutations, counts.hazards,
             counts.still_published);
  fmt::print("not tested {}, hazards missed {}, called tested wrongly {}, false alarms {}\n",
             counts.not_tested, counts.hazards_missed, counts.tested_wrongly, counts.false_alarms);
  for (const auto& [kind, times] : counts.examples) fmt::print("  {} x{}\n", kind, times);
  CHECK(counts.rows >= 538);
  CHECK(counts.not_tested == 0);
  CHECK(counts.hazards_missed == 0);
  CHECK(counts.tested_wrongly == 0);
  CHECK(counts.false_alarms == 0);
}

}  // namespace
}  // namespace sealworthy::property
