#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>
#include <sealworthy/acidity.hpp>

#include "rules_at_hand.hpp"
#include "science/card_mixture.hpp"
#include "science/mixture.hpp"
#include "unit/reading/identities.hpp"

using namespace sealworthy;
using namespace sealworthy::science;

namespace {

const AcidData& data() { return rules_at_hand().knowledge->acidity; }

Part part_of(std::string_view id, double grams) {
  const foods::Food* food = rules_at_hand().catalogue().find(id);
  REQUIRE(food != nullptr);
  const auto profile = data().profile(*food, rules_at_hand().catalogue());
  REQUIRE(profile.has_value());
  return {food->name, Interval<double>::exactly(grams), *profile};
}

MixturePh ph(std::vector<Part> parts) {
  const auto found = ph_of(Mixture{std::move(parts), 0}, data());
  REQUIRE(found.has_value());
  return *found;
}

}  // namespace

TEST_CASE("a weak acid alone has the pH of the textbook formula") {
  const std::array acids{weak_acid({4.756})};
  AcidAmounts mol{};
  mol[0] = 0.1;
  const auto found = std::get<Equilibrium>(equilibrium(acids, mol, 0, Activity::none));
  const double ka = std::pow(10, -4.756);
  const double h = (-ka + std::sqrt(ka * ka + 4 * ka * 0.1)) / 2;
  CHECK(found.ph == doctest::Approx(-std::log10(h)).epsilon(1e-6));
  // Half neutralised, the pH is the pKa.
  CHECK(std::get<Equilibrium>(equilibrium(acids, mol, 0.05, Activity::none)).ph ==
        doctest::Approx(4.756).epsilon(1e-3));
  // Water alone.
  CHECK(std::get<Equilibrium>(equilibrium(acids, {}, 0, Activity::davies)).ph ==
        doctest::Approx(7).epsilon(1e-6));
}

TEST_CASE("a food alone comes back at its own pH, at every level") {
  int foods = 0;
  for (const auto& food : rules_at_hand().catalogue().all()) {
    const auto profile = data().profile(food, rules_at_hand().catalogue());
    if (!profile || profile->inert || profile->leave_out || !profile->leans) continue;
    const auto found = ph_of(Mixture{{{food.name, Interval<double>::exactly(100), *profile}}, 0}, data());
    REQUIRE(found.has_value());
    CAPTURE(food.id);
    CHECK(found->ph[0] == doctest::Approx(profile->own_ph[0]).epsilon(1e-5));
    // The bounds scale what a food brings, but not the free hydrogen ions of its water.
    CHECK(std::abs(found->ph[2] - std::max(profile->own_ph[2], found->ph[1])) < 0.1);
    ++foods;
  }
  CHECK(foods > 300);
}

TEST_CASE("pH falls with added acid and rises with added low-acid food") {
  double before = 20;
  for (int vinegar = 0; vinegar <= 1000; vinegar += 50) {
    const auto now = ph({part_of("cucumber", 1000), part_of("onion", 200), part_of("vinegar", vinegar)});
    for (std::size_t i = 1; i < level_count; ++i) CHECK(now.ph[i] >= now.ph[i - 1]);
    CHECK(now.ph[0] < before);
    before = now.ph[0];
  }
  before = 0;
  for (int beans = 0; beans <= 2000; beans += 100) {
    const double now =
        ph({part_of("tomato", 500), part_of("lemon-juice-bottled", 60), part_of("green-bean", beans)}).ph[1];
    CHECK(now > before);
    before = now;
  }
}

TEST_CASE("weaker or less acid at the worse end never lowers the bounds") {
  Part vinegar = part_of("vinegar", 400);
  const std::vector<Part> foods{part_of("cucumber", 1000), part_of("onion", 300)};
  auto exact = foods, ranged = foods;
  exact.push_back(vinegar);
  vinegar.grams = {250, 550};
  ranged.push_back(vinegar);
  CHECK(ph(ranged).ph[0] == doctest::Approx(ph(exact).ph[0]));
  CHECK(ph(ranged).ph[1] > ph(exact).ph[1]);
  CHECK(ph(ranged).ph[2] > ph(exact).ph[2]);
}

TEST_CASE("what the parts give and take adds up to nothing but water's own share") {
  const auto found = ph({part_of("carrot", 700), part_of("onion", 200), part_of("vinegar", 300)});
  double sum = 0;
  for (const auto& pull : found.pulls) sum += pull.meq;
  CHECK(found.pulls[0].meq < 0);
  CHECK(found.pulls[2].meq > 0);
  const double free_acid = 1200 * std::pow(10, -found.ph[0]);  // meq, before activity
  CHECK(std::abs(sum) < 2 * free_acid);
}

TEST_CASE("no input gives a NaN, and the balance always closes") {
  std::mt19937 random(20260102);  // NOLINT(cert-msc51-cpp): the same run each time
  std::uniform_real_distribution<double> exponent(-9, 1.5);
  std::uniform_real_distribution<double> base(-2, 6);
  int solved = 0;
  for (int i = 0; i < 5000; ++i) {
    AcidAmounts mol{};
    for (double& m : mol) m = random() % 3 == 0 ? std::pow(10, exponent(random)) : 0;
    const double b = i % 2 == 0 ? base(random) : std::pow(10, exponent(random)) / 10;
    for (const auto activity : {Activity::none, Activity::davies}) {
      const auto found = equilibrium(data().acids(), mol, b, activity);
      const auto* at = std::get_if<Equilibrium>(&found);
      if (at == nullptr) continue;
      ++solved;
      CHECK(at->ph >= 0);
      CHECK(at->ph <= 14);
      CHECK(std::abs(at->residual) < 1e-9);
    }
  }
  CHECK(solved > 6000);
}

TEST_CASE("amounts beyond the ranges are refused") {
  AcidAmounts mol{};
  mol[0] = std::numeric_limits<double>::quiet_NaN();
  CHECK(std::holds_alternative<OutOfRange>(equilibrium(data().acids(), mol, 0, Activity::davies)));
  mol[0] = -1;
  CHECK(std::holds_alternative<OutOfRange>(equilibrium(data().acids(), mol, 0, Activity::davies)));
  mol[0] = 1;
  const auto beyond = equilibrium(data().acids(), mol, 19, Activity::none);
  REQUIRE(std::holds_alternative<OutOfRange>(beyond));
  CHECK(words(std::get<OutOfRange>(beyond)).find("pH") == 0);
  CHECK(!ph_of(Mixture{}, data()).has_value());
}

TEST_CASE("every published acidified formula is estimated at or below 4.6") {
  // USDA Complete Guide (2015) and the other publications of rules/processes: a boiling-water process for a
  // mixture that its acid carries. What can't be weighed or has an acid of unknown strength is left out.
  int formulas = 0;
  for (const auto& product : rules_at_hand().tables().products()) {
    if (!product.formula || product.acid_class != tested::ProductClass::acidified) continue;
    const auto card = cards::write(product.title, cards::lines_of(*product.formula));
    const auto mixture = mixture_of(card->reading, data());
    if (mixture.acid_unknown || !mixture.no_amount.empty()) continue;
    const auto found = ph_of(mixture.mixture, data());
    if (!found) continue;
    CAPTURE(product.id);
    CHECK(found->ph[0] <= 4.6);
    ++formulas;
  }
  MESSAGE(formulas, " formulas estimated");
  CHECK(formulas >= 20);
}
