#include <doctest/doctest.h>

#include "fake_card.hpp"

namespace sealworthy::checks::fake {
namespace {

using reading::MethodKind;
using tested::ProductClass;
using tested::TableMethod;
using State = Point::State;

constexpr auto time_check = "time-against-table";

/// Boiling water, four bands: figures of peaches, hot pack (USDA Complete Guide (2015), Guide 2).
Card peaches() {
  Card card(ProductClass::acid);
  card.row(TableMethod::boiling_water, "hot", "pint", {{{1000, 20}, {3000, 25}, {6000, 30}, {0, 35}}})
      .row(TableMethod::boiling_water, "hot", "quart", {{{1000, 25}, {3000, 30}, {6000, 35}, {0, 40}}})
      .row(TableMethod::boiling_water, "raw", "pint", {{{1000, 25}, {3000, 30}, {6000, 35}, {0, 40}}});
  return card;
}

/// Snap beans (USDA Complete Guide (2015), Guide 4).
Card beans() {
  Card card;
  card.row(TableMethod::pressure_dial, "hot raw", "pint",
           {{{2000, 20, 11}, {4000, 20, 12}, {6000, 20, 13}, {8000, 20, 14}}})
      .row(TableMethod::pressure_weighted, "hot raw", "pint", {{{1000, 20, 10}, {0, 20, 15}}})
      .method(MethodKind::pressure, recipe::Gauge::weighted)
      .psi(10);
  return card;
}

TEST_CASE("the full time holds and says nothing") {
  Card card = peaches().minutes(20).feet(500);
  const auto results = card.run(time_check);
  CHECK(ids(results).empty());
  CHECK(state(results, PointKind::time) == State::held);
}

TEST_CASE("more time than asked is no fault") {
  Card card = peaches().minutes(60).feet(500);
  CHECK(ids(card.run(time_check)).empty());
}

TEST_CASE("too short in every band") {
  Card card = peaches().minutes(15).feet(500);
  const auto results = card.run(time_check);
  CHECK(ids(results) == "never-shorten-time-acid");
  CHECK(state(results, PointKind::time) == State::differs);
  const auto& finding = results.findings.front();
  CHECK(finding.found == "15 minutes");
  CHECK(finding.needed == "20 minutes");
  CHECK(finding.at == Position{9, 9});
  CHECK(finding.message.find("pint jars") != std::string::npos);
  CHECK(finding.message.find("500 ft") != std::string::npos);
  CHECK(finding.sources.front() == "A table, page 1");
}

TEST_CASE("a range counts with its low end") {
  Card card = peaches().minutes(15, 25).feet(500);
  CHECK(ids(card.run(time_check)) == "never-shorten-time-acid");
}

TEST_CASE("the upper figure belongs to the band") {
  Card edge = peaches().minutes(25).feet(3000);
  CHECK(ids(edge.run(time_check)).empty());
  Card over = peaches().minutes(25).feet(3001);
  const auto results = over.run(time_check);
  CHECK(ids(results) == "altitude-always-adjust");
  CHECK(results.findings.front().needed == "30 minutes");
  CHECK(results.findings.front().message.find("3,000 ft") != std::string::npos);
}

TEST_CASE("where two heights are judged the higher one is told") {
  Card card = peaches().minutes(20).feet(500).feet(5280);
  const auto results = card.run(time_check);
  CHECK(ids(results) == "altitude-always-adjust");
  CHECK(results.findings.front().message.find("5,280 ft") != std::string::npos);
}

TEST_CASE("no altitude known: the lowest band counts") {
  Card card = peaches().minutes(20);
  CHECK(state(card.run(time_check), PointKind::time) == State::held);
}

TEST_CASE("severity goes by the class of the jar") {
  const auto severity = [](ProductClass product_class) {
    Card card(product_class);
    card.row(TableMethod::boiling_water, "hot", "pint", {{{0, 10}}}).minutes(5).feet(500);
    return card.run(time_check).findings.front().severity;
  };
  CHECK(severity(ProductClass::low_acid) == Severity::danger);
  CHECK(severity(ProductClass::acid) == Severity::warning);
  CHECK(severity(ProductClass::acidified) == Severity::warning);
  CHECK(severity(ProductClass::fermented) == Severity::warning);
  CHECK(severity(ProductClass::sugar_preserve) == Severity::caution);
}

TEST_CASE("the time of the other pack") {
  Card raw = peaches().pack(recipe::Pack::raw).minutes(20).feet(500);
  CHECK(ids(raw.run(time_check)) == "raw-needs-own-time");
  Card unsaid = peaches().pack({}).minutes(20).feet(500);
  CHECK(ids(unsaid.run(time_check)).empty());
}

TEST_CASE("a smaller jar takes the next larger one's time") {
  Card card = peaches().jar("half-pint").minutes(15).feet(500);
  CHECK(ids(card.run(time_check)) == "never-shorten-time-acid");
  Card held = peaches().jar("12 oz").minutes(20).feet(500);
  CHECK(state(held.run(time_check), PointKind::time) == State::held);
}

TEST_CASE("an untabled larger jar has no time to hold") {
  Card card = peaches().jar("half-gallon").minutes(200).feet(500);
  CHECK(state(card.run(time_check), PointKind::time) == State::unknown);
}

TEST_CASE("more pressure does not shorten the time") {
  Card card = beans().psi(15).minutes(10).feet(500);
  const auto results = card.run(time_check);
  CHECK(ids(results) == "pressure-higher-not-shorter");
  CHECK(results.findings.front().needed == "20 minutes");
}

TEST_CASE("a printed option of less time at more pressure holds") {
  // Tomatoes in water, pints, weighted gauge (USDA Complete Guide (2015), Guide 3).
  Card card(ProductClass::acidified);
  card.row(TableMethod::pressure_weighted, "hot raw", "pint",
           {{{1000, 15, 5}, {0, 15, 10}}, {{1000, 10, 10}, {0, 10, 15}}, {{1000, 1, 15}, {0, 1, 15, true}}})
      .method(MethodKind::pressure, recipe::Gauge::weighted);
  CHECK(ids(Card(card).psi(10).minutes(10).feet(500).run(time_check)).empty());
  CHECK(ids(Card(card).psi(5).minutes(10).feet(500).run(time_check)) == "never-shorten-time-acid");
  CHECK(ids(Card(card).psi(15).minutes(1).feet(500).run(time_check)).empty());
  // The third option is not recommended above 1,000 ft.
  const auto higher = Card(card).psi(15).minutes(1).feet(2000).run(time_check);
  CHECK(ids(higher) == "altitude-always-adjust");
  CHECK(higher.findings.front().needed == "10 minutes");
}

TEST_CASE("a steam canner runs 45 minutes at most") {
  Card card(ProductClass::acidified);
  card.row(TableMethod::boiling_water, "hot", "quart", {{{1000, 45}, {3000, 50}, {0, 60}}})
      .jar("quart")
      .method(MethodKind::steam);
  CHECK(ids(Card(card).minutes(45).feet(500).run(time_check)).empty());
  CHECK(ids(Card(card).minutes(50).feet(2000).run(time_check)) == "steam-canner-45-min");
  CHECK(ids(Card(card).minutes(45).feet(2000).run(time_check)) ==
        "steam-canner-45-min altitude-always-adjust");
}

TEST_CASE("low-temperature treatment has its own time") {
  Card card(ProductClass::acidified);
  card.row(TableMethod::boiling_water, "raw", "pint", {{{0, 10}}}).method(MethodKind::low_temperature);
  card.product.low_temperature_pasteurization = true;
  CHECK(ids(Card(card).minutes(30).feet(500).run(time_check)).empty());
  CHECK(ids(Card(card).minutes(20).feet(500).run(time_check)) == "low-temp-too-short");
}

TEST_CASE("no time said: a notice names it") {
  Card card = peaches().feet(500);
  const auto results = card.run(time_check);
  CHECK(ids(results) == "time-unsaid");
  CHECK(results.findings.front().severity == Severity::notice);
  CHECK(results.findings.front().message.find("20 minutes") != std::string::npos);
  CHECK(state(results, PointKind::time) == State::unknown);
}

TEST_CASE("no jar said: short only if too short for every size") {
  CHECK(ids(peaches().no_jar().minutes(20).feet(500).run(time_check)).empty());
  CHECK(ids(peaches().no_jar().minutes(15).feet(500).run(time_check)) == "never-shorten-time-acid");
}

}  // namespace
}  // namespace sealworthy::checks::fake
