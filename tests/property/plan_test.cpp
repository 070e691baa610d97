/// `plan` and `check` agree: a card of every product, planned for several numbers of jars, is tested as it
/// will be canned. The amounts of a card that is scaled are those of the card times the factor.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <sealworthy/plan.hpp>
#include <set>

#include "figures.hpp"
#include "knowledge/knowledge.hpp"

namespace sealworthy::property {
namespace {

/// The figures of the product's first row and option at 500 ft.
std::optional<CardFigures> first_figures(const tested::Product& product) {
  for (const auto& row : product.rows) {
    const auto* step = row.options.empty() ? nullptr : row.options.front().at(feet(500));
    if (step == nullptr || step->not_recommended) continue;
    CardFigures card{row.method,
                     row.raw && !row.hot ? recipe::Pack::raw : recipe::Pack::hot,
                     row.jar,
                     in_minutes(step->time),
                     {},
                     500,
                     row.applies_to};
    if (step->pressure) card.psi = in_psi(*step->pressure);
    return card;
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("what is planned checks as tested, for every product") {
  const Checker checker = Checker::builtin();
  const auto& knowledge = checker.knowledge();
  const CardWriter writer(knowledge.tables, knowledge.catalogue);
  PlanOptions options;
  options.check.altitude = Interval<Altitude>::exactly(feet(500));
  long cards = 0, planned = 0, scaled = 0, again = 0, refused = 0;
  std::set<std::string> products;
  for (const auto& product : knowledge.tables.products()) {
    const auto figures = first_figures(product);
    if (!figures) continue;
    std::string text = writer.write(product, *figures, {});
    if (checker.check_text("card.yaml", text, options.check).front().verdict != Verdict::tested) continue;
    ++cards;
    for (const int jars : {1, 5, 14, 40}) {
      options.jars = std::to_string(jars);
      std::vector<PlanCards> one{{"card.yaml", text}};
      auto made = make_plan(checker, one, options);
      if (std::holds_alternative<std::vector<InputError>>(made)) {
        // A card without `makes:` of a product without a published yield can't be planned before it says.
        const auto& error = std::get<std::vector<InputError>>(made).front();
        INFO(product.id << ": " << error.message << "\n" << text);
        REQUIRE(error.message.find("does not say how many jars") != std::string::npos);
        one.front().text += fmt::format("makes: 8 {} jars\n",
                                        knowledge.tables.jars()[static_cast<std::size_t>(figures->jar)].name);
        made = make_plan(checker, one, options);
      }
      if (const auto* errors = std::get_if<std::vector<InputError>>(&made)) {
        ++refused;
        MESSAGE(product.id << " for " << jars << ": " << errors->front().message);
        continue;
      }
      const auto& plan = std::get<Plan>(made);
      ++planned;
      products.insert(product.id);
      REQUIRE(plan.cards.size() == 1);
      const auto& card = plan.cards.front();
      const auto report = checker.check_text("planned.yaml", card.card, options.check).front();
      INFO(product.id << " for " << jars << "\n" << card.card);
      CHECK(report.verdict == Verdict::tested);
      CHECK(report.matched.id == product.id);
      if (card.batches == 1 && card.factor != 1) ++scaled;
      if (card.batches > 1) ++again;
      CHECK(card.jars >= jars);
      int loaded = 0;
      for (const auto& load : plan.loads)
        for (const auto& some : load.jars) loaded += some.count;
      CHECK(loaded == card.jars);
    }
  }
  MESSAGE(fmt::format("{} cards; {} plans of {} products: {} scaled, {} made again; {} refused", cards,
                      planned, products.size(), scaled, again, refused));
  CHECK(cards > 100);
  CHECK(scaled > 100);
  CHECK(refused == 0);
}

}  // namespace sealworthy::property
