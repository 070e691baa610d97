#include <doctest/doctest.h>

#include "fake_card.hpp"

namespace sealworthy::checks::fake {
namespace {

using State = Point::State;

constexpr auto headspace_check = "headspace-against-table";

Results run(double said, double low, double high = 0) {
  Card card;
  card.product.headspace = {{{headspace_inches(low), headspace_inches(high > 0 ? high : low)}, {}, {}, ""}};
  return card.headspace(said).run(headspace_check);
}

TEST_CASE("within one eighth inch or a quarter of the figure, whichever is less") {
  for (const double held : {0.875, 1.0, 1.125})
    CHECK(state(run(held, 1), PointKind::headspace) == State::held);
  CHECK(ids(run(0.8125, 1)) == "headspace-too-little");
  CHECK(ids(run(1.2, 1)) == "headspace-too-much");
  CHECK(state(run(0.1875, 0.25), PointKind::headspace) == State::held);
  CHECK(ids(run(0.17, 0.25)) == "headspace-too-little");
  CHECK(ids(run(0.1875, 0.125)) == "headspace-too-much");
}

TEST_CASE("millimetres are rounded inches") {
  CHECK(ids(run(13 / 25.4, 0.5)).empty());
  CHECK(ids(run(25 / 25.4, 1)).empty());
  CHECK(ids(run(32 / 25.4, 1.25)).empty());
  CHECK(ids(run(6 / 25.4, 0.25)).empty());
  CHECK(ids(run(3 / 25.4, 0.125)).empty());
}

TEST_CASE("under half is worse") {
  CHECK(ids(run(0.5, 1)) == "headspace-too-little");
  const auto results = run(0.49, 1);
  CHECK(ids(results) == "headspace-far-too-little");
  CHECK(results.findings.front().severity == Severity::warning);
  CHECK(results.findings.front().at == Position{6, 12});
  CHECK(ids(run(0, 0.25)) == "headspace-far-too-little");
}

TEST_CASE("a range in the source") {
  CHECK(ids(run(1, 1, 1.25)).empty());
  CHECK(ids(run(1.25, 1, 1.25)).empty());
  CHECK(ids(run(1.5, 1, 1.25)) == "headspace-too-much");
}

TEST_CASE("by pack and jar: small and large limas (USDA Complete Guide (2015), Guide 4)") {
  Card card;
  const auto inches = [](double v) { return Interval<Headspace>::exactly(headspace_inches(v)); };
  card.product.headspace = {{inches(1), recipe::Pack::hot, size_of("quart"), ""},
                            {inches(1.5), recipe::Pack::raw, size_of("quart"), "small beans"},
                            {inches(1.25), recipe::Pack::raw, size_of("quart"), "large beans"}};
  card.jar("quart").pack(recipe::Pack::raw);
  CHECK(ids(Card(card).headspace(1.25).run(headspace_check)).empty());
  CHECK(ids(Card(card).headspace(1.5).run(headspace_check)).empty());
  CHECK(ids(Card(card).headspace(1).run(headspace_check)) == "headspace-too-little");
  CHECK(ids(Card(card).pack(recipe::Pack::hot).headspace(1).run(headspace_check)).empty());
}

TEST_CASE("no headspace said") {
  Card card;
  card.recipe.headspace.reset();
  const auto results = card.run(headspace_check);
  CHECK(ids(results) == "headspace-unsaid");
  CHECK(results.findings.front().at == Position{7, 1});
  CHECK(results.findings.front().message.find("1 inch") != std::string::npos);
  CHECK(state(results, PointKind::headspace) == State::unknown);
}

}  // namespace
}  // namespace sealworthy::checks::fake
