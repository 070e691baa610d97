// Heat kill against published times. Each table names its source.

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <sealworthy/science.hpp>

#include "rules_at_hand.hpp"

using namespace sealworthy;
using namespace sealworthy::science;

namespace {

template <class T>
T sure(const Result<T>& result) {
  REQUIRE(std::holds_alternative<T>(result));
  return std::get<T>(result);
}

struct Pair {
  double f, minutes;
};

}  // namespace

TEST_CASE("times of equal kill for acidified foods, pH 4.1 to 4.6") {
  // Food Protection Trends 34 (2014), page 137: F at 160 F is 5.6 minutes, z 16.7 F, for five powers of ten
  // of the most resistant pathogens.
  constexpr std::array table{Pair{150, 22.4}, Pair{160, 5.6}, Pair{165, 2.8},
                             Pair{170, 1.4},  Pair{175, 0.7}, Pair{180, 0.4}};
  for (const auto& [f, printed] : table) {
    const auto at = f;
    CAPTURE(at);
    const double rate = sure(lethal_rate(fahrenheit(f), fahrenheit(160), step_fahrenheit(16.7)));
    CHECK(std::abs(5.6 / rate - printed) < std::max(0.06, 0.012 * printed));
  }
}

TEST_CASE("times for seven powers of ten in acidified foods") {
  // B. Ingham, University of Wisconsin (May 2009), after Stumbo 1973: D at 150 F is 3.0 minutes, z 16 F. The
  // printed 8.9 minutes at 155 F contradict the rest of the table (10.2): a misprint, left out.
  const Resistance germ{fahrenheit(150), step_fahrenheit(16), minutes(3.0)};
  constexpr std::array table{Pair{150, 21.0}, Pair{160, 5.0},  Pair{165, 2.4},
                             Pair{170, 1.1},  Pair{175, 0.57}, Pair{180, 0.3}};
  for (const auto& [f, printed] : table) {
    const auto at = f;
    CAPTURE(at);
    const double found = 7 * in_minutes(sure(decimal_time(germ, fahrenheit(f))));
    CHECK(std::abs(found - printed) < std::max(0.09, 0.01 * printed));
  }
}

TEST_CASE("the 12-D process for spores of botulism") {
  // A. A. Teixeira, University of Florida: D 0.21 minutes at 121.1 C, 12 D about 2.5 minutes; Esty and
  // Meyer's 2.45 minutes at 121 C, z 10 C, as told in lecture notes.
  const auto& target = rules_at_hand().knowledge->heat.low_acid;
  const Resistance spores{target.reference, target.z, target.d};
  CHECK(12 * in_minutes(target.d) == doctest::Approx(2.52));
  CHECK(log_reductions(target.least, spores) == doctest::Approx(12).epsilon(0.01));
  CHECK(log_reductions(minutes(2.45), spores) > 11.6);
  CHECK(in_celsius(target.reference) == doctest::Approx(121.1).epsilon(1e-3));
  CHECK(in_celsius(target.z) == doctest::Approx(10));
}

TEST_CASE("measured D values of spores follow their z") {
  // Odlaug and Pflug, Appl. Environ. Microbiol. 34:23-29 (1977), Clostridium botulinum A16037.
  struct Row {
    const char* in;
    double z_c, d_115_6, d_110, d_104_4, within;
  };
  constexpr std::array rows{Row{"tomato juice, pH 4.2", 9.4, 0.4, 1.6, 6.0, 0.05},
                            Row{"phosphate buffer, pH 7", 9.9, 1.3, 4.4, 17.6, 0.10}};
  for (const Row& row : rows) {
    CAPTURE(row.in);
    const Resistance germ{celsius(115.6), step_celsius(row.z_c), minutes(row.d_115_6)};
    CHECK(in_minutes(sure(decimal_time(germ, celsius(110)))) ==
          doctest::Approx(row.d_110).epsilon(row.within));
    CHECK(in_minutes(sure(decimal_time(germ, celsius(104.4)))) ==
          doctest::Approx(row.d_104_4).epsilon(row.within));
  }
}

TEST_CASE("lethal rates are those of the textbook tables") {
  // Lethal rates for 250 F and z 18 F, as printed in food-process textbooks (from memory).
  constexpr std::array table{Pair{212, 0.00774}, Pair{230, 0.0774}, Pair{240, 0.278}, Pair{245, 0.527},
                             Pair{250, 1.0}};
  for (const auto& [f, rate] : table) {
    const auto at = f;
    CAPTURE(at);
    CHECK(sure(lethal_rate(fahrenheit(f), fahrenheit(250), step_fahrenheit(18))) ==
          doctest::Approx(rate).epsilon(0.003));
  }
}

TEST_CASE("every published low-acid process of a vented pressure canner could kill the spores") {
  // USDA Complete Guide (2015) and the other publications of rules/processes: were the whole jar as hot as
  // the steam, each tabled time at each altitude of its band would count as more than the 12-D minimum.
  // Boiling water for as long would not.
  const auto& target = rules_at_hand().knowledge->heat.low_acid;
  int steps = 0;
  for (const auto& product : rules_at_hand().tables().products()) {
    if (product.acid_class != tested::ProductClass::low_acid) continue;
    for (const auto& row : product.rows)
      for (const auto& option : row.options)
        for (const auto& step : option.steps) {
          if (!step.pressure || step.not_recommended) continue;
          const Altitude top = std::min(step.band.to, rules_at_hand().tables().highest_open());
          const auto steam = sure(canner_temperature({*step.pressure, top}));
          const double f0 = in_minutes(step.time) * sure(lethal_rate(steam, target.reference, target.z));
          CAPTURE(product.id);
          CAPTURE(in_feet(top));
          CHECK(f0 > in_minutes(target.least));
          const auto boiling = sure(boiling_point(top));
          CHECK(in_minutes(step.time) * sure(lethal_rate(boiling, target.reference, target.z)) <
                in_minutes(target.least));
          ++steps;
        }
  }
  CHECK(steps > 200);
}
