#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>
#include <sealworthy/science.hpp>
#include <vector>

using namespace sealworthy;
using namespace sealworthy::science;

namespace {

template <class T>
T sure(const Result<T>& result) {
  REQUIRE(std::holds_alternative<T>(result));
  return std::get<T>(result);
}

template <class T>
std::string refused(const Result<T>& result) {
  const auto* error = std::get_if<OutOfRange>(&result);
  REQUIRE(error != nullptr);
  return words(*error);
}

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
const Resistance spores{fahrenheit(250), step_fahrenheit(18), minutes(0.21)};

Duration f0(const HeatTreatment& treatment, const JarLag& lag) {
  return sure(jar_lethality(treatment, lag, spores.reference, spores.z));
}

}  // namespace

TEST_CASE("water boils lower the higher the place, and in bad weather") {
  double before = 1000;
  for (int ft = -1500; ft <= 30000; ft += 250) {
    const double now = in_fahrenheit(sure(boiling_point(feet(ft))));
    CHECK(now < before);
    before = now;
  }
  const Weather low{pascals_absolute(98000)};
  CHECK(sure(boiling_point(feet(5000), low)) < sure(boiling_point(feet(5000))));
  CHECK(in_fahrenheit(sure(boiling_point(feet(0)))) == doctest::Approx(211.953).epsilon(1e-5));
}

TEST_CASE("pressure and temperature of steam are each other's inverse") {
  for (double kelvin = 273.16; kelvin <= 647.0; kelvin += 0.37) {
    const auto pressure = sure(saturation_pressure(Temperature::from_si(kelvin)));
    CHECK(sure(saturation_temperature(pressure)).si() == doctest::Approx(kelvin).epsilon(1e-9));
  }
}

TEST_CASE("altitude and geopotential height are each other's inverse") {
  for (int ft = -16000; ft <= 36000; ft += 999) {
    CHECK(in_feet(sure(geometric(sure(geopotential(feet(ft)))))) == doctest::Approx(ft).epsilon(1e-12));
  }
  CHECK((10000 - sure(geopotential(feet(10000))).si() / unit::foot) == doctest::Approx(4.795).epsilon(1e-3));
  CHECK(sure(air_temperature(GeopotentialHeight::from_si(1000))).si() == doctest::Approx(281.65));
}

TEST_CASE("air left in a canner and a gauge that reads high cool the steam") {
  const Canner vented{psi_gauge(11), feet(1000)};
  Canner with_air = vented;
  with_air.air = 0.2;
  Canner high = vented;
  high.reads_high = psi_gauge(2);
  const auto pure = sure(canner_temperature(vented));
  CHECK(sure(canner_temperature(with_air)) < pure);
  CHECK(sure(canner_temperature(high)) == sure(canner_temperature({psi_gauge(9), feet(1000)})));
  // Dalton's law: a fifth of air leaves four fifths of the pressure to the steam.
  const auto partial = absolute(psi_gauge(11), sure(air_pressure(feet(1000)))) * 0.8;
  CHECK(sure(canner_temperature(with_air)) == sure(saturation_temperature(partial)));
}

TEST_CASE("the gauge for a temperature gives it back") {
  for (double psi = 1; psi < 30; psi += 0.7) {
    const auto steam = sure(canner_temperature({psi_gauge(psi), feet(4321)}));
    CHECK(in_psi(sure(gauge_for(steam, feet(4321)))) == doctest::Approx(psi).epsilon(1e-8));
  }
  CHECK(refused(gauge_for(fahrenheit(200), feet(0))).find("gauge pressure") == 0);
}

TEST_CASE("what lies outside an equation's range is refused, with the range") {
  CHECK(refused(boiling_point(feet(60000))) == "altitude of 60,000 ft is outside -16,391 to 36,152 ft");
  CHECK(refused(boiling_point(feet(nothing))).find("no number") != std::string::npos);
  CHECK(refused(air_pressure(feet(0), {pascals_absolute(50000)})) ==
        "sea-level pressure of 500 hPa is outside 870 to 1,085 hPa");
  CHECK(refused(saturation_pressure(celsius(-1))).find("temperature of 30.2 F") == 0);
  CHECK(refused(saturation_temperature(pascals_absolute(600))).find("steam pressure") == 0);
  CHECK(refused(canner_temperature({psi_gauge(31), feet(0)})) ==
        "gauge pressure of 31 psi is outside 0 to 30 psi");
  CHECK(refused(canner_temperature({psi_gauge(-1), feet(0)})).find("gauge pressure") == 0);
  CHECK(refused(canner_temperature({psi_gauge(10), feet(0), {}, 0.95})).find("share of air of 95 %") == 0);
  CHECK(refused(lethal_rate(celsius(250), spores.reference, spores.z)).find("temperature") == 0);
  CHECK(refused(lethal_rate(celsius(100), spores.reference, step_celsius(0))).find("z of") == 0);
  CHECK(refused(decimal_time({celsius(100), step_celsius(10), minutes(0)}, celsius(100))).find("D of") == 0);
  const std::vector<HeatPoint> back{{minutes(2), celsius(100)}, {minutes(1), celsius(100)}};
  CHECK(refused(lethality(back, spores.reference, spores.z)).find("time of -1") == 0);
}

TEST_CASE("no input, however odd, gives a NaN or an infinity") {
  std::mt19937 random(20260101);  // NOLINT(cert-msc51-cpp): the same run each time
  std::uniform_real_distribution<double> wide(-1e5, 1e5);
  std::uniform_real_distribution<double> narrow(0, 30);
  for (int i = 0; i < 20000; ++i) {
    const bool odd = i % 7 == 0;
    const double a = odd ? nothing : wide(random), b = narrow(random), c = narrow(random);
    const auto finite = [](const auto& result) {
      return std::visit(
          [](const auto& value) {
            if constexpr (std::is_same_v<std::decay_t<decltype(value)>, OutOfRange>)
              return true;
            else
              return std::isfinite(value.si());
          },
          result);
    };
    CHECK(finite(boiling_point(feet(a))));
    CHECK(finite(canner_temperature({psi_gauge(b), feet(a), psi_gauge(c - 15), c / 33})));
    CHECK(finite(saturation_pressure(Temperature::from_si(a))));
    CHECK(finite(saturation_temperature(pascals_absolute(a * a))));
    CHECK(finite(gauge_for(celsius(a / 100), feet(b * 300))));
    CHECK(finite(jar_lethality({celsius(a / 300), celsius(b * 4), minutes(c * 20), celsius(20)},
                               {minutes(b + 1), minutes(c + 1), 1 + b / 20}, spores.reference, spores.z)));
  }
}

TEST_CASE("lethality of a held temperature is its rate times the minutes") {
  const std::vector<HeatPoint> held{{minutes(0), fahrenheit(232)}, {minutes(30), fahrenheit(232)}};
  CHECK(in_minutes(sure(lethality(held, spores.reference, spores.z))) == doctest::Approx(3.0));
  CHECK(in_minutes(sure(lethality({}, spores.reference, spores.z))) == 0);
  CHECK(log_reductions(minutes(2.52), spores) == doctest::Approx(12));
}

TEST_CASE("a straight rise counts as its exact integral") {
  // From 232 to 250 F in 10 minutes: the mean of 10^x over one z is 0.9 / ln 10.
  const std::vector<HeatPoint> rise{{minutes(0), fahrenheit(232)}, {minutes(10), fahrenheit(250)}};
  CHECK(in_minutes(sure(lethality(rise, spores.reference, spores.z))) ==
        doctest::Approx(10 * 0.9 / std::log(10.0)).epsilon(1e-12));
}

TEST_CASE("F rises with time and with temperature, and a larger lag lowers it") {
  const JarLag lag{minutes(12), minutes(15), 1.2};
  double before = -1;
  for (int m = 0; m <= 120; m += 5) {
    const double now = in_minutes(f0({fahrenheit(140), fahrenheit(240), minutes(m), fahrenheit(70)}, lag));
    CHECK(now > before);
    before = now;
  }
  before = -1;
  for (int f = 190; f <= 260; f += 2) {
    const double now = in_minutes(f0({fahrenheit(140), fahrenheit(f), minutes(30), fahrenheit(70)}, lag));
    CHECK(now > before);
    before = now;
  }
  const HeatTreatment process{fahrenheit(140), fahrenheit(240), minutes(30), fahrenheit(70)};
  CHECK(f0(process, {minutes(20), minutes(15), 1.2}) < f0(process, lag));
}

TEST_CASE("a jar without lag counts as the steam around it, and its curve is fine enough") {
  const HeatTreatment process{fahrenheit(239), fahrenheit(240), minutes(500), fahrenheit(70)};
  const double rate = sure(lethal_rate(fahrenheit(240), spores.reference, spores.z));
  CHECK(in_minutes(f0(process, {minutes(1), minutes(1), 1})) == doctest::Approx(500 * rate).epsilon(0.01));
  // The same curve by a thousand small steps.
  const HeatTreatment slow{fahrenheit(100), fahrenheit(240), minutes(60), fahrenheit(70)};
  const JarLag lag{minutes(25), minutes(30), 1.4};
  double sum = 0, end = 100;
  constexpr double step = 0.01;
  for (double t = step / 2; t < 60; t += step) {
    end = 240 - 140 * std::min(1.0, 1.4 * std::pow(10, -t / 25));
    sum += step * std::pow(10, (end - 250) / 18);
  }
  for (double t = step / 2; t < 60; t += step) {
    const double now = 70 + (end - 70) * std::min(1.0, 1.4 * std::pow(10, -t / 30));
    sum += step * std::pow(10, (now - 250) / 18);
  }
  CHECK(in_minutes(f0(slow, lag)) == doctest::Approx(sum).epsilon(0.01));
}
