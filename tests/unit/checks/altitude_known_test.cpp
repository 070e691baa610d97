#include <doctest/doctest.h>

#include "fake_card.hpp"

namespace sealworthy::checks::fake {
namespace {

using reading::MethodKind;
using tested::ProductClass;
using tested::TableMethod;
using State = Point::State;

constexpr auto altitude_check = "altitude-known";

Card peaches() {
  Card card(ProductClass::acid);
  return card.row(TableMethod::boiling_water, "hot", "pint", {{{1000, 20}, {3000, 25}, {6000, 30}, {0, 35}}});
}

Card beef() {
  Card card;
  return card
      .row(TableMethod::pressure_dial, "hot raw", "pint",
           {{{2000, 75, 11}, {4000, 75, 12}, {6000, 75, 13}, {8000, 75, 14}}})
      .method(MethodKind::pressure, recipe::Gauge::dial)
      .minutes(75);
}

TEST_CASE("none known: up to where the figures hold, and what is needed above") {
  const auto results = peaches().minutes(25).run(altitude_check);
  CHECK(ids(results) == "altitude-must-be-known");
  CHECK(results.findings.front().severity == Severity::notice);
  CHECK(results.findings.front().at == Position{7, 1});
  CHECK(results.findings.front().message.find("3,000 ft") != std::string::npos);
  CHECK(results.findings.front().message.find("30 minutes") != std::string::npos);
  CHECK(state(results, PointKind::altitude) == State::unknown);
}

TEST_CASE("known and inside the table") {
  const auto results = peaches().minutes(25).feet(3000).run(altitude_check);
  CHECK(ids(results).empty());
  CHECK(state(results, PointKind::altitude) == State::held);
  CHECK(state(peaches().minutes(25).feet(-200).run(altitude_check), PointKind::altitude) == State::held);
}

TEST_CASE("above the highest band of a dial table") {
  const auto results = beef().psi(14).feet(8001).run(altitude_check);
  CHECK(ids(results) == "altitude-pressure-above-8000");
  CHECK(results.findings.front().severity == Severity::warning);
  CHECK(state(results, PointKind::altitude) == State::unknown);
}

TEST_CASE("an extension body's row that is followed is a notice, not proof") {
  const auto results = beef().psi(15).feet(8900).run(altitude_check);
  CHECK(ids(results) == "altitude-extension-row");
  CHECK(results.findings.front().severity == Severity::notice);
  CHECK(state(results, PointKind::altitude) == State::unknown);
}

TEST_CASE("an open band holds to 10,000 ft; another body's figure is told") {
  const auto results = peaches().minutes(35).feet(9200).run(altitude_check);
  CHECK(ids(results) == "altitude-bwc-above-8000");
  CHECK(state(results, PointKind::altitude) == State::held);
  const auto higher = peaches().minutes(60).feet(10001).run(altitude_check);
  CHECK(ids(higher) == "altitude-pressure-above-8000");
  CHECK(state(higher, PointKind::altitude) == State::unknown);
}

TEST_CASE("a kitchen outside the card's own range is told") {
  Card card = peaches().minutes(30).feet(1000).feet(5280);
  reading::Reading& reading = card.read();
  reading.altitude.kitchen = Interval<Altitude>::exactly(feet(5280));
  reading.altitude.card = recipe::Placed<Interval<Altitude>>{{feet(0), feet(1000)}, {11, 13}, "0-1000 ft"};
  const auto& knowledge = knowledge::Knowledge::builtin();
  Results results;
  for (std::size_t i = 0; i < registry().size(); ++i) {
    if (registry()[i].name == altitude_check) knowledge.checks[i]->run(reading, results);
  }
  CHECK(ids(results) == "altitude-outside-card");
  CHECK(results.findings.front().at == Position{11, 13});
  CHECK(state(results, PointKind::altitude) == State::held);
}

}  // namespace
}  // namespace sealworthy::checks::fake
