// The pH of mixtures, estimated, against what others measured. Each row of acidity.yaml names its source. The
// mean errors are printed and required; so is that no published formula looks too little acid.

#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <iterator>

#include "checks/fields.hpp"
#include "rules_at_hand.hpp"
#include "science/mixture.hpp"

using namespace sealworthy;
using namespace sealworthy::science;

namespace {

const AcidData& data() { return rules_at_hand().knowledge->acidity; }

const yaml::Node& rows() {
  static const auto document = [] {
    std::ifstream in(SEALWORTHY_SOURCE_DIR "/tests/published/acidity.yaml", std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(in), {}};
    const auto read = yaml::read_documents(bytes);
    REQUIRE(read.size() == 1);
    REQUIRE(std::holds_alternative<yaml::Document>(read.front()));
    return std::get<yaml::Document>(read.front());
  }();
  return *document.root().find("mixtures");
}

double number(const yaml::Node& node) {
  const auto value = checks::number_of(node);
  REQUIRE(value.has_value());
  return *value;
}

double number_at(const yaml::Node& row, std::string_view key) {
  const auto* node = row.find(key);
  return node == nullptr ? 0 : number(*node);
}

Part part_of(std::string_view id, double grams) {
  const foods::Food* food = rules_at_hand().catalogue().find(id);
  REQUIRE(food != nullptr);
  const auto profile = data().profile(*food, rules_at_hand().catalogue());
  REQUIRE(profile.has_value());
  return {food->name, Interval<double>::exactly(grams), *profile};
}

Part pure_acid(std::string_view id, double grams) {
  Part part{id, Interval<double>::exactly(grams), {}};
  part.profile.leans = false;
  part.profile.usual_percent = 100;
  const auto acid = data().acid(id);
  REQUIRE(acid.has_value());
  part.profile.acid = *acid;
  part.profile.grams_per_mol = data().grams_per_mol(*acid);
  data().set_strength(part.profile, 100);
  return part;
}

Mixture mixture_of_row(const yaml::Node& row) {
  Mixture mixture;
  if (const auto* foods = row.find("foods"))
    for (const auto& item : foods->items) {
      Part part = part_of(item.find("food")->text, number_at(item, "g"));
      if (const auto* ph = item.find("ph")) {
        const double own = number(ph->items[0]), high = number(ph->items[1]);
        part.profile.own_ph = {own, high, high};
        data().settle(part.profile);
      }
      mixture.parts.push_back(part);
    }
  if (const auto* acids = row.find("acids-g"))
    for (const auto& entry : acids->entries)
      mixture.parts.push_back(pure_acid(entry.key, number(entry.value)));
  if (const double vinegar = number_at(row, "vinegar-g"); vinegar > 0)
    mixture.parts.push_back(part_of("vinegar", vinegar));
  Part water{"water", Interval<double>::exactly(number_at(row, "inert-g")), {}};
  water.profile.inert = true;
  mixture.parts.push_back(water);
  mixture.extra_base = number_at(row, "base-meq") / 1000;
  return mixture;
}

template <class Take>
void each_of(std::string_view kind, Take take) {
  for (const auto& row : rows().items)
    if (row.find("kind")->text == kind) take(std::string(row.find("id")->text), row);
}

Interval<double> measured(const yaml::Node& row) {
  const auto* node = row.find("measured");
  REQUIRE(node != nullptr);
  return {number(node->items[0]), number(node->items[1])};
}

MixturePh estimate(const yaml::Node& row) {
  const auto ph = ph_of(mixture_of_row(row), data());
  REQUIRE(ph.has_value());
  for (const double residual : ph->residual) CHECK(std::abs(residual) < 1e-9);
  return *ph;
}

struct Errors {
  double sum = 0;
  int count = 0;
  void add(double error) {
    sum += std::abs(error);
    ++count;
  }
  [[nodiscard]] double mean() const { return sum / count; }
};

}  // namespace

TEST_CASE("the acidity of foods was loaded without an error") { CHECK(rules_at_hand().errors.empty()); }

TEST_CASE("food mixtures come out near what was measured") {
  Errors errors;
  int by_bound = 0, by_strict = 0;
  each_of("food", [&](const std::string& id, const yaml::Node& row) {
    CAPTURE(id);
    const auto ph = estimate(row);
    const auto range = measured(row);
    const double error = ph.ph[0] - (range.low + range.high) / 2;
    MESSAGE(id, ": measured ", range.low, " to ", range.high, ", best ", ph.ph[0], ", bound ", ph.ph[1],
            ", strict ", ph.ph[2]);
    // Of the elderberry juice in this syrup no composition is known, so it says nothing of the food data: it
    // is taken at the default, which must be on the safe side.
    if (id == "elderberry-syrup") {
      CHECK(ph.ph[0] > range.high);
      return;
    }
    errors.add(error);
    by_bound += ph.ph[1] >= range.high ? 1 : 0;
    by_strict += ph.ph[2] >= range.high ? 1 : 0;
  });
  MESSAGE("food rows: mean absolute error ", errors.mean(), " of ", errors.count,
          "; covered by the bound: ", by_bound, ", by the strict bound: ", by_strict);
  REQUIRE(errors.count == 9);
  CHECK(errors.mean() <= 0.16);
  CHECK(by_strict >= 8);  // missed: the ferment with calcium acetate, half of whose brine is a guess
  CHECK(by_bound >= 6);
}

TEST_CASE("one-sided measurements are kept, by the strict bound too") {
  int count = 0;
  each_of("limit", [&](const std::string& id, const yaml::Node& row) {
    CAPTURE(id);
    const auto ph = estimate(row);
    CHECK(ph.ph[2] <= measured(row).high);
    ++count;
  });
  CHECK(count == 2);
}

TEST_CASE("laboratory buffers come out near their tables") {
  Errors mcilvaine, acetate, citrate;
  each_of("solution", [&](const std::string& id, const yaml::Node& row) {
    CAPTURE(id);
    AcidAmounts mol{};
    for (const auto& entry : row.find("mol")->entries)
      mol[data().acid(entry.key).value()] = number(entry.value);
    const auto found = equilibrium(data().acids(), mol, number_at(row, "base"), Activity::davies);
    REQUIRE(std::holds_alternative<Equilibrium>(found));
    const auto& at = std::get<Equilibrium>(found);
    CHECK(std::abs(at.residual) < 1e-9);
    const double error = at.ph - measured(row).low;
    (id.find("phosphate") != id.npos ? mcilvaine
     : id.find("acetate") != id.npos ? acetate
                                     : citrate)
        .add(error);
    // Without activity nothing comes out lower.
    const auto strict = equilibrium(data().acids(), mol, number_at(row, "base"), Activity::none);
    CHECK(std::get<Equilibrium>(strict).ph > at.ph);
  });
  MESSAGE("mean absolute error: McIlvaine ", mcilvaine.mean(), ", acetate ", acetate.mean(), ", citrate ",
          citrate.mean());
  REQUIRE(mcilvaine.count == 10);
  REQUIRE(acetate.count == 6);
  REQUIRE(citrate.count == 6);
  CHECK(mcilvaine.mean() <= 0.12);
  CHECK(acetate.mean() <= 0.12);
  // The two citrate tables stand 0.2 to 0.5 apart when held against the same constants.
  CHECK(citrate.mean() <= 0.25);
}

TEST_CASE("no published formula looks too little acid; every mixture that needs an alarm raises it") {
  int formulas = 0, bound_above = 0, strict_above = 0, alarms = 0;
  each_of("formula", [&](const std::string& id, const yaml::Node& row) {
    CAPTURE(id);
    const auto ph = estimate(row);
    CHECK(ph.ph[0] <= 4.6);
    ++formulas;
    bound_above += ph.ph[1] > 4.6 ? 1 : 0;
    strict_above += ph.ph[2] > 4.6 ? 1 : 0;
  });
  each_of("needs-alarm", [&](const std::string& id, const yaml::Node& row) {
    CAPTURE(id);
    CHECK(estimate(row).ph[1] > 4.6);
    ++alarms;
  });
  MESSAGE(formulas, " formulas: bound above 4.6 in ", bound_above, ", strict bound in ", strict_above);
  CHECK(formulas >= 20);
  CHECK(alarms == 4);
  CHECK(bound_above <= 1);
}
