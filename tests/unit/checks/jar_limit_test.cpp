#include <doctest/doctest.h>

#include "fake_card.hpp"

namespace sealworthy::checks::fake {
namespace {

using tested::ProductClass;
using tested::TableMethod;
using State = Point::State;

constexpr auto jar_check = "jar-limit";

/// Pints and half-pints only, as salsas and chile con carne are.
Card pints(ProductClass product_class) {
  Card card(product_class);
  card.row(TableMethod::boiling_water, "hot", "half-pint", {{{0, 15}}})
      .row(TableMethod::boiling_water, "hot", "pint", {{{0, 15}}})
      .minutes(30)
      .feet(500);
  return card;
}

TEST_CASE("listed sizes and smaller ones hold") {
  for (const char* jar : {"pint", "half-pint", "12 oz", "4 oz", "500 ml"})
    CHECK(state(pints(ProductClass::acid).jar(jar).run(jar_check), PointKind::jar) == State::held);
}

TEST_CASE("larger than every size listed") {
  const auto results = pints(ProductClass::low_acid).jar("quart").run(jar_check);
  CHECK(ids(results) == "jar-not-larger-than-tested");
  CHECK(results.findings.front().severity == Severity::danger);
  CHECK(results.findings.front().at == Position{5, 7});
  CHECK(results.findings.front().needed == "pint");
  CHECK(state(results, PointKind::jar) == State::differs);
  CHECK(ids(pints(ProductClass::acidified).jar("quart").run(jar_check)) == "jar-not-larger-than-tested-acid");
  CHECK(ids(pints(ProductClass::sugar_preserve).jar("quart").run(jar_check)) == "jam-jar-size");
}

TEST_CASE("between two sizes with no larger one listed") {
  CHECK(ids(pints(ProductClass::low_acid).jar("24 oz").run(jar_check)) == "between-size-needs-larger-listed");
  CHECK(ids(pints(ProductClass::acidified).jar("28 oz").run(jar_check)) ==
        "between-size-needs-larger-listed-acid");
  // An imperial pint (568 mL) is larger than a US pint (NIST SP 430).
  CHECK(ids(pints(ProductClass::low_acid).jar("imperial pint").run(jar_check)) ==
        "between-size-needs-larger-listed");
}

TEST_CASE("half-gallons are for two juices") {
  CHECK(ids(pints(ProductClass::low_acid).jar("half gallon").run(jar_check)) == "half-gallon-only-juice");
  CHECK(ids(pints(ProductClass::acid).jar("half gallon").run(jar_check)) == "half-gallon-only-juice-acid");
  Card juice = pints(ProductClass::acid).row(TableMethod::boiling_water, "hot", "half-gallon", {{{0, 10}}});
  CHECK(ids(juice.jar("half gallon").run(jar_check)).empty());
}

TEST_CASE("metric jars are told, and hold") {
  const auto results = pints(ProductClass::acid).jar("500 ml").run(jar_check);
  CHECK(ids(results) == "imperial-and-metric-jars");
  CHECK(results.findings.front().severity == Severity::notice);
}

TEST_CASE("no jar named") {
  const auto results = pints(ProductClass::acid).no_jar().run(jar_check);
  CHECK(ids(results) == "jar-unsaid");
  CHECK(results.findings.front().message.find("half-pint or pint") != std::string::npos);
  CHECK(state(results, PointKind::jar) == State::unknown);
}

TEST_CASE("the wrong method says nothing of the jar") {
  Card card =
      pints(ProductClass::acid).jar("quart").method(reading::MethodKind::pressure, recipe::Gauge::dial);
  const auto results = card.run(jar_check);
  CHECK(ids(results).empty());
  CHECK(state(results, PointKind::jar) == State::unknown);
}

}  // namespace
}  // namespace sealworthy::checks::fake
