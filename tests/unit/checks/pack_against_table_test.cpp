#include <doctest/doctest.h>

#include "fake_card.hpp"

namespace sealworthy::checks::fake {
namespace {

using recipe::Pack;
using tested::ProductClass;
using tested::TableMethod;
using State = Point::State;

constexpr auto pack_check = "pack-against-table";

Card with_rows(ProductClass product_class, std::vector<const char*> packs, double minutes_step = 0) {
  Card card(product_class);
  double minutes = 20;
  for (const char* pack : packs) {
    card.row(TableMethod::boiling_water, pack, "pint", {{{0, minutes}}});
    minutes += minutes_step;
  }
  return card.minutes(30).feet(500);
}

TEST_CASE("a pack that is listed holds") {
  const auto results = with_rows(ProductClass::acid, {"hot"}).pack(Pack::hot).run(pack_check);
  CHECK(ids(results).empty());
  CHECK(state(results, PointKind::pack) == State::held);
}

TEST_CASE("raw where only hot is listed") {
  const auto severity = [](ProductClass product_class) {
    Card card(product_class);
    card.row(TableMethod::pressure_dial, "hot", "pint", {{{0, 20, 11}}})
        .method(reading::MethodKind::pressure, recipe::Gauge::dial)
        .pack(Pack::raw);
    const auto results = card.run(pack_check);
    CHECK(state(results, PointKind::pack) == State::differs);
    CHECK(results.findings.front().at == Position{4, 7});
    return results.findings.front().severity;
  };
  CHECK(severity(ProductClass::low_acid) == Severity::danger);
  CHECK(severity(ProductClass::acidified) == Severity::warning);
  CHECK(severity(ProductClass::sugar_preserve) == Severity::caution);
}

TEST_CASE("hot where only raw is listed is a caution") {
  const auto results = with_rows(ProductClass::low_acid, {"raw"}).pack(Pack::hot).run(pack_check);
  CHECK(ids(results) == "raw-pack-only-products");
  CHECK(state(results, PointKind::pack) == State::differs);
}

TEST_CASE("a source that names no pack holds for both") {
  CHECK(state(with_rows(ProductClass::low_acid, {""}).pack(Pack::raw).run(pack_check), PointKind::pack) ==
        State::held);
  CHECK(state(with_rows(ProductClass::low_acid, {""}).pack({}).run(pack_check), PointKind::pack) ==
        State::held);
}

TEST_CASE("pack not said") {
  const auto one = with_rows(ProductClass::low_acid, {"hot"}).pack({}).run(pack_check);
  CHECK(ids(one) == "pack-unsaid");
  CHECK(one.findings.front().at == Position{7, 1});
  CHECK(one.findings.front().found.empty());
  CHECK(one.findings.front().needed == "hot pack");
  CHECK(state(one, PointKind::pack) == State::unknown);
  const auto differ = with_rows(ProductClass::low_acid, {"hot", "raw"}, 5).pack({}).run(pack_check);
  CHECK(ids(differ) == "pack-unsaid-times-differ");
  CHECK(differ.findings.front().found.empty());
  CHECK(state(differ, PointKind::pack) == State::unknown);
  const auto same = with_rows(ProductClass::low_acid, {"hot", "raw"}).pack({}).run(pack_check);
  CHECK(ids(same).empty());
  CHECK(state(same, PointKind::pack) == State::held);
}

TEST_CASE("pack not said where only raw is listed: nothing is taken for granted, of whatever food") {
  for (const auto product_class : {ProductClass::acidified, ProductClass::low_acid}) {
    const auto results = with_rows(product_class, {"raw"}).pack({}).run(pack_check);
    CHECK(ids(results) == "pack-unsaid");
    CHECK(state(results, PointKind::pack) == State::unknown);
    CHECK(results.assumed.empty());
  }
}

TEST_CASE("raw fruit floats") {
  CHECK(ids(with_rows(ProductClass::acid, {"hot raw"}).pack(Pack::raw).run(pack_check)) ==
        "hot-pack-preferred-bwc");
  CHECK(ids(with_rows(ProductClass::acidified, {"hot raw"}).pack(Pack::raw).run(pack_check)).empty());
}

}  // namespace
}  // namespace sealworthy::checks::fake
