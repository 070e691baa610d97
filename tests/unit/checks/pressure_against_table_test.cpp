#include <doctest/doctest.h>

#include "fake_card.hpp"

namespace sealworthy::checks::fake {
namespace {

using reading::MethodKind;
using recipe::Gauge;
using tested::ProductClass;
using tested::TableMethod;
using State = Point::State;

constexpr auto pressure_check = "pressure-against-table";

/// Snap beans in pints (USDA Complete Guide (2015), Guide 4).
Card beans(std::optional<Gauge> gauge, ProductClass product_class = ProductClass::low_acid) {
  Card card(product_class);
  card.row(TableMethod::pressure_dial, "hot raw", "pint",
           {{{2000, 20, 11}, {4000, 20, 12}, {6000, 20, 13}, {8000, 20, 14}}})
      .row(TableMethod::pressure_weighted, "hot raw", "pint", {{{1000, 20, 10}, {0, 20, 15}}})
      .method(MethodKind::pressure, gauge)
      .minutes(20);
  return card;
}

TEST_CASE("dial gauge by its bands") {
  CHECK(ids(beans(Gauge::dial).psi(11).feet(2000).run(pressure_check)).empty());
  CHECK(ids(beans(Gauge::dial).psi(12).feet(2001).run(pressure_check)).empty());
  const auto results = beans(Gauge::dial).psi(11).feet(2001).run(pressure_check);
  CHECK(ids(results) == "altitude-dial-gauge");
  CHECK(results.findings.front().severity == Severity::danger);
  CHECK(results.findings.front().found == "11 psi");
  CHECK(results.findings.front().needed == "12 psi");
  CHECK(results.findings.front().at == Position{10, 13});
  CHECK(state(results, PointKind::pressure) == State::differs);
}

TEST_CASE("weighted gauge by its bands") {
  CHECK(ids(beans(Gauge::weighted).psi(10).feet(1000).run(pressure_check)).empty());
  CHECK(ids(beans(Gauge::weighted).psi(15).feet(9000).run(pressure_check)).empty());
  CHECK(ids(beans(Gauge::weighted).psi(10).feet(1001).run(pressure_check)) == "altitude-weighted-gauge");
}

TEST_CASE("too little at any altitude") {
  CHECK(ids(beans(Gauge::dial).psi(10).feet(500).run(pressure_check)) == "pressure-11-dial-why");
  CHECK(ids(beans(Gauge::weighted).psi(5).feet(500).run(pressure_check)) == "pressure-short");
  CHECK(ids(beans(Gauge::weighted, ProductClass::acid).psi(5).feet(500).run(pressure_check)) ==
        "pressure-short-acid");
}

TEST_CASE("a range counts with its low end") {
  CHECK(ids(beans(Gauge::dial).psi(10, 11).feet(500).run(pressure_check)) == "pressure-11-dial-why");
}

TEST_CASE("the gauge is not said: judged for both kinds") {
  const auto dial = beans({}).psi(11).feet(500).run(pressure_check);
  CHECK(ids(dial) == "gauge-unsaid");
  CHECK(dial.findings.front().severity == Severity::notice);
  CHECK(dial.findings.front().message.find("dial") != std::string::npos);
  CHECK(state(dial, PointKind::gauge) == State::unknown);
  CHECK(state(dial, PointKind::pressure) == State::held);
  const auto weighted = beans({}).psi(10).feet(500).run(pressure_check);
  CHECK(ids(weighted) == "gauge-unsaid");
  CHECK(weighted.findings.front().message.find("serves a weighted gauge") != std::string::npos);
  const auto both = beans({}).psi(15).feet(3000).run(pressure_check);
  CHECK(ids(both).empty());
  CHECK(state(both, PointKind::gauge) == State::held);
  const auto neither = beans({}).psi(11).feet(3000).run(pressure_check);
  CHECK(ids(neither) == "altitude-either-gauge");
  CHECK(ids(beans({}).psi(5).feet(500).run(pressure_check)) == "pressure-short");
}

TEST_CASE("a weight that no weighted gauge has") {
  const auto results = beans(Gauge::weighted).psi(11).feet(500).run(pressure_check);
  CHECK(ids(results) == "weighted-gauge-steps");
  CHECK(results.findings.front().severity == Severity::notice);
  CHECK(state(results, PointKind::gauge) == State::unknown);
  // 70 kPa is what a 10 psi weight is called elsewhere (69 kPa).
  CHECK(ids(beans(Gauge::weighted).psi(70 / 6.894757).feet(500).run(pressure_check)).empty());
}

TEST_CASE("more than a home canner is made for") {
  const auto results = beans(Gauge::dial).psi(18).feet(500).run(pressure_check);
  CHECK(ids(results) == "pressure-not-above-15");
  CHECK(results.findings.front().severity == Severity::warning);
  CHECK(ids(beans(Gauge::dial).psi(15).feet(500).run(pressure_check)).empty());
}

TEST_CASE("no pressure said") {
  const auto results = beans(Gauge::dial).feet(2500).run(pressure_check);
  CHECK(ids(results) == "pressure-unsaid");
  CHECK(results.findings.front().message.find("12 psi") != std::string::npos);
  CHECK(state(results, PointKind::pressure) == State::unknown);
}

TEST_CASE("a pressure beside boiling water contradicts it") {
  Card card = beans({}).psi(10).feet(500).method(MethodKind::boiling_water);
  CHECK(ids(card.run(pressure_check)) == "pressure-without-canner");
}

TEST_CASE("boiling water has no gauge to judge") {
  Card card(ProductClass::acid);
  card.row(TableMethod::boiling_water, "hot", "pint", {{{0, 20}}}).minutes(20).feet(500);
  CHECK_FALSE(recorded(card.run(pressure_check), PointKind::gauge));
}

}  // namespace
}  // namespace sealworthy::checks::fake
