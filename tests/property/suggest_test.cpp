/// What `suggest` prints checks as tested: for every product, from a card that follows it with too short a
/// time, no headspace, and without its acid; at several altitudes and batch sizes.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <regex>
#include <sealworthy/suggest.hpp>

#include "figures.hpp"
#include "knowledge/knowledge.hpp"

namespace sealworthy::property {
namespace {

std::optional<CardFigures> first_figures(const tested::Product& product, double height) {
  for (const auto& row : product.rows) {
    const auto* step = row.options.empty() ? nullptr : row.options.front().at(feet(height));
    if (step == nullptr || step->not_recommended) continue;
    CardFigures card{row.method,
                     row.raw && !row.hot ? recipe::Pack::raw : recipe::Pack::hot,
                     row.jar,
                     in_minutes(step->time),
                     {},
                     height,
                     row.applies_to};
    if (step->pressure) card.psi = in_psi(*step->pressure);
    return card;
  }
  return std::nullopt;
}

std::string spoiled(const std::string& card) {
  const std::string short_time =
      std::regex_replace(card, std::regex("  time: [0-9.]+ minutes"), "  time: 3 minutes");
  return std::regex_replace(short_time, std::regex("headspace: [^\n]*\n"), "");
}

}  // namespace

TEST_CASE("a suggestion checks as tested, for every product") {
  const Checker checker = Checker::builtin();
  const auto& knowledge = checker.knowledge();
  const CardWriter writer(knowledge.tables, knowledge.catalogue);
  long cards = 0, tested_again = 0;
  for (const auto& product : knowledge.tables.products()) {
    for (const double height : {500.0, 4300.0}) {
      const auto figures = first_figures(product, height);
      if (!figures) continue;
      CheckOptions options;
      options.altitude = Interval<Altitude>::exactly(feet(height));
      const std::string good = writer.write(product, *figures, {});
      // Rows from memory are never tested; the other tests count them.
      if (checker.check_text("card.yaml", good, options).front().verdict != Verdict::tested) continue;
      for (const double scale : {1.0, 2.0}) {
        for (const bool acid : {true, false}) {
          CardStyle style;
          style.acid = acid;
          style.scale = product.acid_class == tested::ProductClass::sugar_preserve ? 1 : scale;
          const std::string bad = spoiled(writer.write(product, *figures, style));
          const auto made = suggest_cards(checker, "card.yaml", bad, options);
          ++cards;
          INFO(product.id << " at " << height << " ft, times " << style.scale << "\n" << bad);
          REQUIRE(made.errors.empty());
          REQUIRE(made.cards.size() == 1);
          INFO(made.cards.front().card);
          INFO(made.cards.front().why_not_tested);
          CHECK(made.cards.front().product == product.id);
          CHECK(made.cards.front().verdict == Verdict::tested);
          tested_again += made.cards.front().verdict == Verdict::tested ? 1 : 0;
          CHECK(made.cards.front().card.find("the card has: 3 minutes") != std::string::npos);
        }
      }
    }
  }
  MESSAGE(fmt::format("{} cards put right, {} tested", cards, tested_again));
  CHECK(cards > 400);
}

TEST_CASE("a mixture of one's own gets no card of other foods, and a fish stays that fish") {
  const Checker checker = Checker::builtin();
  const auto salsa = suggest_cards(
      checker, "card.yaml",
      "recipe: Corn salsa\ningredients: [10 cups chopped tomatoes, 4 cups corn, 2 cans black beans, 3 cups "
      "onions, "
      "1/4 cup vinegar]\njars: pint\nprocess: {method: boiling water, time: 15 minutes, altitude: 500 ft}\n");
  CHECK(salsa.cards.empty());
  REQUIRE(salsa.errors.size() == 1);
  CHECK(salsa.errors.front().message.find("another dish") != std::string::npos);
  const auto fish = suggest_cards(
      checker, "card.yaml",
      "recipe: Lake trout\ningredients: [\"20 lb lake trout, cut in chunks\", each quart: 1 tbsp ketchup]\n"
      "jars: quart\npack: raw\nheadspace: 1 inch\nprocess: {method: pressure canner, gauge: dial, "
      "pressure: 10 psi, time: 100 minutes, altitude: 500 ft}\n");
  REQUIRE(fish.cards.size() == 1);
  CHECK(fish.cards.front().product == "fish-in-quart-jars");
  CHECK(fish.cards.front().card.find("20 lb lake trout, cut in chunks") != std::string::npos);
  CHECK(fish.cards.front().card.find("shad") == std::string::npos);
}

}  // namespace sealworthy::property
