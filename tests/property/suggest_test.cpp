/// What `suggest` prints checks as tested: for every product, from a card that follows it with too short a
/// time, no headspace, and without its acid; at several altitudes and batch sizes. And it can always be read
/// again, whatever a page's lines hold.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <array>
#include <regex>
#include <sealworthy/suggest.hpp>
#include <sstream>

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

/// Lines that would be something else in YAML than the words of a step.
constexpr std::array odd_lines{"lids: new",
                               "recipe: another",
                               "accept: []",
                               "---",
                               "...",
                               "- one more",
                               "# a remark",
                               "\"half a quote",
                               "it's 'so'",
                               "\ta tab\tbetween: them",
                               "{braces: [and, brackets",
                               "%YAML 1.2",
                               "&anchor *alias !tag",
                               "| block",
                               "> folded",
                               "? key",
                               "@at `ticks`",
                               "back\\slash \\n \\\"",
                               "a\xC2\x85lids: new",
                               "a\xE2\x80\xA8lids: new",
                               "a\xE2\x80\xA9---",
                               "a\rlids: new\rb",
                               "a\x0B\x0C\x7F"
                               "b: c",
                               "a \xC2\x80 b: c"};

// Invented, after USDA Complete Guide (2015), Guide 4, page 4-10.
std::string carrots(const std::string& title, const std::string& water, const std::string& step) {
  return title + "\n\nIngredients\n17 1/2 lb carrots, peeled and sliced\n" + water +
         "\n\nDirections\nPeel and slice the carrots and simmer them 5 minutes.\n" + step +
         "\nFill hot jars with the hot carrots and cooking liquid, leaving 1 inch headspace.\n"
         "Process quarts 30 minutes in a dial-gauge pressure canner at 11 psi, 0-2,000 ft.\n";
}

std::string without_own_steps(const std::string& card) {
  std::istringstream in(card);
  std::string kept;
  for (std::string line; std::getline(in, line);)
    if (!line.starts_with("  # ")) kept += line + "\n";
  return kept;
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

TEST_CASE("a suggestion can be read again, whatever lines the page has") {
  const Checker checker = Checker::builtin();
  const auto suggested = [&](const std::string& page) {
    const auto made = suggest_cards(checker, "page.txt", page);
    INFO(page);
    REQUIRE(made.errors.empty());
    REQUIRE(made.cards.size() == 1);
    INFO(made.cards.front().card);
    INFO(made.cards.front().why_not_tested);
    const auto reports = checker.check_text("card.yaml", made.cards.front().card);
    CHECK(reports.size() == 1);
    CHECK(reports.front().verdict == Verdict::tested);
    CHECK(made.cards.front().verdict == Verdict::tested);
    return made.cards.front().card;
  };
  const std::string plain = without_own_steps(suggested(carrots("Canned carrots", "water", "Stir.")));
  for (const std::string odd : odd_lines) {
    // The steps of a page become comments: no other line of the card may change through them.
    CHECK(without_own_steps(suggested(carrots("Canned carrots", "water", odd))) == plain);
    CHECK(without_own_steps(suggested(carrots("Canned carrots", "water", "Stir\n" + odd + "\nwell."))) ==
          plain);
    suggested(carrots("Canned carrots \"" + odd + "\"", "water", "Stir."));
  }
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
