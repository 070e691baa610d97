/// method-against-table and method-against-acid-class, on hand-made products. Foods are tested with whole
/// cards in whole_cards_test.cpp.
#include <doctest/doctest.h>

#include "fake_card.hpp"

namespace sealworthy::checks::fake {
namespace {

using reading::MethodKind;
using tested::ProductClass;
using tested::TableMethod;
using State = Point::State;

Card water(ProductClass product_class) {
  Card card(product_class);
  return card.row(TableMethod::boiling_water, "hot", "pint", {{{0, 20}}}).minutes(20).feet(500);
}

TEST_CASE("a method that the table lists holds") {
  const auto results = water(ProductClass::acid).run("method-against-table");
  CHECK(ids(results).empty());
  CHECK(state(results, PointKind::method) == State::held);
  CHECK(state(water(ProductClass::acid).method(MethodKind::steam).run("method-against-table"),
              PointKind::method) == State::held);
}

TEST_CASE("no conversion to a pressure canner") {
  const auto fruit =
      water(ProductClass::acid).method(MethodKind::pressure, recipe::Gauge::dial).run("method-against-table");
  CHECK(ids(fruit) == "fruit-pressure-options");
  CHECK(fruit.findings.front().severity == Severity::warning);
  CHECK(fruit.findings.front().at == Position{8, 11});
  CHECK(state(fruit, PointKind::method) == State::differs);
  CHECK(ids(water(ProductClass::acidified).method(MethodKind::pressure).run("method-against-table")) ==
        "no-conversion-between-methods");
}

TEST_CASE("low-temperature treatment only where it is listed") {
  Card listed = water(ProductClass::acidified).method(MethodKind::low_temperature);
  listed.product.low_temperature_pasteurization = true;
  CHECK(ids(listed.run("method-against-table")) == "low-temp-by-thermometer");
  const auto results =
      water(ProductClass::acidified).method(MethodKind::low_temperature).run("method-against-table");
  CHECK(ids(results) == "low-temp-pasteurization-only-when-listed");
  CHECK(state(results, PointKind::method) == State::differs);
}

TEST_CASE("a product without a process for the shelf") {
  Card card(ProductClass::acidified);
  CHECK(ids(card.minutes(10).run("method-against-table")) == "no-shelf-process");
}

TEST_CASE("words that name no method") {
  const auto results = water(ProductClass::acid).method(MethodKind::unknown).run("method-against-table");
  CHECK(ids(results) == "method-unknown");
  CHECK(state(results, PointKind::method) == State::unknown);
}

TEST_CASE("low-acid food in boiling water or steam is a danger") {
  Card card;
  card.row(TableMethod::pressure_dial, "hot", "pint", {{{2000, 20, 11}}}).minutes(180).feet(500);
  const auto boiled = Card(card).run("method-against-acid-class");
  CHECK(ids(boiled) == "low-acid-needs-pressure");
  CHECK(boiled.findings.front().severity == Severity::danger);
  CHECK(ids(Card(card).method(MethodKind::steam).run("method-against-acid-class")) ==
        "steam-canner-acid-only");
  CHECK(ids(Card(card).method(MethodKind::pressure, recipe::Gauge::dial).run("method-against-acid-class"))
            .empty());
  CHECK(state(Card(card).run("method-against-table"), PointKind::method) == State::differs);
  CHECK(ids(Card(card).run("method-against-table")).empty());
}

TEST_CASE("acid, acidified, fermented food and jam may go in boiling water") {
  for (const auto product_class :
       {ProductClass::acid, ProductClass::acidified, ProductClass::fermented, ProductClass::sugar_preserve})
    CHECK(ids(water(product_class).run("method-against-acid-class")).empty());
}

}  // namespace
}  // namespace sealworthy::checks::fake
