#include "checks/verdict.hpp"

#include <doctest/doctest.h>

#include "fake_card.hpp"

namespace sealworthy::checks::fake {
namespace {

using tested::ProductClass;
using tested::TableMethod;
using State = Point::State;

/// Every point but those named by the product's class.
std::vector<Point> all_held() {
  std::vector<Point> points;
  for (const auto kind : {PointKind::food, PointKind::form, PointKind::pack, PointKind::jar,
                          PointKind::headspace, PointKind::method, PointKind::time, PointKind::altitude})
    points.push_back({kind, State::held, {}, {}});
  return points;
}

Card peaches() {
  Card card(ProductClass::acid);
  return card.row(TableMethod::boiling_water, "hot", "pint", {{{1000, 20}, {3000, 25}, {6000, 30}, {0, 35}}})
      .minutes(25)
      .feet(2000);
}

Verdict verdict(Card& card, std::vector<Point> points, const std::vector<Finding>& findings = {}) {
  const reading::Reading& reading = card.read();
  return decide(reading, deciding_points(reading, points), findings);
}

Finding finding(Severity severity, Topic topic) {
  Finding made;
  made.severity = severity;
  made.topic = topic;
  return made;
}

TEST_CASE("tested only with every deciding point held or assumed") {
  Card card = peaches();
  CHECK(verdict(card, all_held()) == Verdict::tested);
  for (std::size_t i = 0; i < all_held().size(); ++i) {
    for (const State state : {State::unknown, State::differs}) {
      auto points = all_held();
      points[i].state = state;
      CHECK(verdict(card, points) == Verdict::unproven);
    }
    auto assumed = all_held();
    assumed[i].state = State::assumed;
    CHECK(verdict(card, assumed) == Verdict::tested);
  }
}

TEST_CASE("a point that nobody recorded is unknown") {
  Card card = peaches();
  for (std::size_t i = 0; i < all_held().size(); ++i) {
    auto points = all_held();
    points.erase(points.begin() + static_cast<std::ptrdiff_t>(i));
    CHECK(verdict(card, points) == Verdict::unproven);
  }
  CHECK(verdict(card, {}) == Verdict::unproven);
}

TEST_CASE("the worst of several records counts") {
  Card card = peaches();
  auto points = all_held();
  points.push_back({PointKind::time, State::differs, "20 minutes", "25 minutes"});
  points.push_back({PointKind::time, State::held, {}, {}});
  CHECK(verdict(card, points) == Verdict::unproven);
  const auto merged = deciding_points(card.read(), points);
  REQUIRE(merged.size() == all_held().size());
  CHECK(merged.back().kind == PointKind::altitude);
}

TEST_CASE("gauge and pressure decide in a pressure canner, acid and amounts where the product has them") {
  Card pressure;
  pressure.row(TableMethod::pressure_dial, "hot", "pint", {{{2000, 20, 11}}})
      .method(reading::MethodKind::pressure, recipe::Gauge::dial)
      .minutes(20)
      .psi(11)
      .feet(500);
  CHECK(verdict(pressure, all_held()) == Verdict::unproven);
  auto points = all_held();
  points.push_back({PointKind::gauge, State::held, {}, {}});
  points.push_back({PointKind::pressure, State::held, {}, {}});
  CHECK(verdict(pressure, points) == Verdict::tested);

  Card acidified = peaches();
  acidified.product.acid_class = ProductClass::acidified;
  CHECK(verdict(acidified, all_held()) == Verdict::unproven);
  points = all_held();
  points.push_back({PointKind::acid, State::held, {}, {}});
  CHECK(verdict(acidified, points) == Verdict::tested);
  acidified.product.formula.emplace();
  CHECK(verdict(acidified, points) == Verdict::unproven);
  points.push_back({PointKind::amounts, State::held, {}, {}});
  CHECK(verdict(acidified, points) == Verdict::tested);
}

TEST_CASE("findings") {
  Card card = peaches();
  CHECK(verdict(card, all_held(), {finding(Severity::danger, Topic::practice)}) == Verdict::hazard);
  CHECK(verdict(card, all_held(), {finding(Severity::warning, Topic::storage)}) == Verdict::hazard);
  CHECK(verdict(card, {}, {finding(Severity::warning, Topic::time)}) == Verdict::hazard);
  for (const Topic handling : {Topic::practice, Topic::equipment, Topic::storage})
    CHECK(verdict(card, all_held(), {finding(Severity::caution, handling)}) == Verdict::tested);
  for (const Topic process :
       {Topic::method, Topic::acid, Topic::altitude, Topic::time, Topic::pressure, Topic::headspace,
        Topic::jar, Topic::pack, Topic::ingredient, Topic::change, Topic::card})
    CHECK(verdict(card, all_held(), {finding(Severity::caution, process)}) == Verdict::unproven);
  CHECK(verdict(card, all_held(), {finding(Severity::notice, Topic::time)}) == Verdict::tested);
}

TEST_CASE("what is accepted keeps its verdict") {
  Card card = peaches();
  auto accepted = finding(Severity::warning, Topic::time);
  accepted.accepted_because = "tried";
  CHECK(verdict(card, all_held(), {accepted}) == Verdict::hazard);
}

TEST_CASE("no match, a doubtful one, cold keeping and disagreeing bodies are never tested") {
  Card card = peaches();
  reading::Reading& reading = card.read();
  const auto points = deciding_points(reading, all_held());
  reading.match.doubtful = true;
  CHECK(decide(reading, points, {}) == Verdict::unproven);
  reading.match.doubtful = false;
  reading.keep = reading::Keep::refrigerator;
  CHECK(decide(reading, points, {}) == Verdict::unproven);
  reading.keep = reading::Keep::shelf;
  card.product.no_tested_process = true;
  CHECK(decide(reading, points, {}) == Verdict::unproven);
  card.product.no_tested_process = false;
  CHECK(decide(reading, points, {}) == Verdict::tested);
  reading.match.product = nullptr;
  CHECK(decide(reading, points, {}) == Verdict::unproven);
}

TEST_CASE("figures from memory are unproven at best") {
  Card card = peaches();
  card.product.rows[0].options[0].steps[2].read = Read::memory;
  CHECK(verdict(card, all_held()) == Verdict::tested);
  card.feet(4000);
  CHECK(rests_on_memory(card.read()));
  CHECK(verdict(card, all_held()) == Verdict::unproven);
  Card formula = peaches();
  formula.product.formula.emplace().read = Read::memory;
  CHECK(rests_on_memory(formula.read()));
}

TEST_CASE("what is matched, and up to where it holds") {
  Card card = peaches();
  const Matched matched = describe_match(card.read());
  CHECK(matched.id == "ridge-road-beans");
  CHECK(matched.by == "follows");
  CHECK(matched.source == "A table, page 1");
  CHECK(matched.holds_for == "0 to 3,000 ft");
  CHECK_FALSE(matched.from_memory);
  CHECK(describe_match(peaches().minutes(35).read()).holds_for == "0 to 10,000 ft");
  CHECK(describe_match(peaches().minutes(10).read()).holds_for.empty());
}

}  // namespace
}  // namespace sealworthy::checks::fake
