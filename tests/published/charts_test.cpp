// Other bodies' charts against ours. Each row of charts.yaml names the publication that prints it; see there
// for title, body and year. `ours` of the rows that differ is the figure of the USDA Complete Guide (2015),
// with the reason.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <sealworthy/lookup.hpp>

#include "rules_at_hand.hpp"

using namespace sealworthy;

namespace {

const RulesAtHand& rules() { return rules_at_hand(); }

const yaml::Node& charts() {
  static const auto document = [] {
    std::ifstream in(SEALWORTHY_SOURCE_DIR "/tests/published/charts.yaml", std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(in), {}};
    const auto read = yaml::read_documents(bytes);
    REQUIRE(read.size() == 1);
    REQUIRE(std::holds_alternative<yaml::Document>(read.front()));
    return std::get<yaml::Document>(read.front());
  }();
  return document.root();
}

std::string value(const yaml::Node& node, std::string_view key) {
  const auto* found = node.find(key);
  return found != nullptr ? std::string(found->text) : std::string{};
}

int figure(const yaml::Node& node, std::string_view key) { return std::stoi(value(node, key)); }

template <class T>
T low(const quantity::Figure<Interval<T>>& read) {
  REQUIRE(std::holds_alternative<Interval<T>>(read));
  return std::get<Interval<T>>(read).low;
}

std::vector<std::string> products_of(const yaml::Node& chart) {
  const auto* product = chart.find("product");
  REQUIRE(product != nullptr);
  std::vector<std::string> ids;
  if (product->is_scalar()) ids.emplace_back(product->text);
  for (const auto& item : product->items) ids.emplace_back(item.text);
  return ids;
}

/// What we answer for the method, pack, jar and altitude of a row.
std::vector<LookupAnswer> answers(const std::string& product, const yaml::Node& row) {
  const auto method = value(row, "method");
  LookupQuery query{.words = product, .jar = value(row, "jar"), .method = method};
  if (value(row, "pack") != "hot and raw") query.pack = value(row, "pack");
  query.altitude = low(quantity::read_altitude(value(row, "altitude")));
  const auto found = tested::lookup(rules().for_lookup(), query);
  REQUIRE(std::holds_alternative<LookupResult>(found));
  return std::get<LookupResult>(found).answers;
}

std::optional<int> psi_of(const yaml::Node& row) {
  return row.find("psi") != nullptr ? std::optional(figure(row, "psi")) : std::nullopt;
}

void check_headspace(const yaml::Node& row, const LookupAnswer& answer) {
  if (row.find("headspace") == nullptr) return;
  const double printed = in_inches(low(quantity::read_headspace(value(row, "headspace"))));
  CHECK(answer.headspace_in.low <= doctest::Approx(printed));
  CHECK(answer.headspace_in.high >= doctest::Approx(printed));
}

quantity::Amount amount(std::string_view words) {
  const auto read = quantity::read_amount(words, quantity::Units::us);
  REQUIRE_MESSAGE(read.has_value(), words);
  return *read;
}

bool same(const quantity::Amount& a, const quantity::Amount& b) {
  return a.unit == b.unit && a.stated == b.stated;
}

const tested::Product& product(const std::string& id) {
  const auto* found = rules().tables().find(id);
  REQUIRE_MESSAGE(found != nullptr, id);
  return *found;
}

const tested::FormulaLine* line_of(const tested::Product& product, std::string_view food) {
  for (const auto& line : product.formula->lines)
    if (std::find(line.foods.begin(), line.foods.end(), food) != line.foods.end()) return &line;
  return nullptr;
}

}  // namespace

TEST_CASE("rows of eleven bodies' charts are answers of ours") {
  std::size_t rows = 0;
  for (const auto& chart : charts().find("charts")->items)
    for (const auto& row : chart.find("rows")->items) {
      ++rows;
      for (const auto& id : products_of(chart)) {
        CAPTURE(value(chart, "publication"));
        CAPTURE(id);
        CAPTURE(value(row, "method"));
        CAPTURE(value(row, "pack"));
        CAPTURE(value(row, "jar"));
        CAPTURE(value(row, "altitude"));
        const auto ours = answers(id, row);
        const auto same_row = std::find_if(ours.begin(), ours.end(), [&](const LookupAnswer& answer) {
          return answer.psi == psi_of(row) && answer.minutes == figure(row, "minutes");
        });
        REQUIRE_MESSAGE(same_row != ours.end(), value(row, "minutes"));
        check_headspace(row, *same_row);
      }
    }
  CHECK(rows == 413);
}

TEST_CASE("rows that differ still differ as told") {
  std::size_t rows = 0;
  for (const auto& chart : charts().find("differs")->items)
    for (const auto& row : chart.find("rows")->items) {
      ++rows;
      CAPTURE(value(chart, "publication"));
      CAPTURE(value(chart, "product"));
      CAPTURE(value(row, "altitude"));
      CHECK(!value(chart, "why").empty());
      const auto ours = answers(value(chart, "product"), row);
      REQUIRE(!ours.empty());
      for (const auto& answer : ours) {
        CHECK(answer.minutes == figure(row, "ours"));
        CHECK(answer.minutes < figure(row, "minutes"));
      }
    }
  CHECK(rows == 24);
}

// Utah State's timetables go on above 8,000 ft; their step is told with the answer.
TEST_CASE("Utah State's longer time above 8,000 ft is told") {
  for (const auto& chart : charts().find("differs")->items) {
    if (value(chart, "publication") != "usu-timetables-1994") continue;
    for (const auto& row : chart.find("rows")->items)
      for (const auto& answer : answers(value(chart, "product"), row)) {
        const auto told = [](const std::string& note) {
          return note.find("5 minutes more") != std::string::npos;
        };
        CHECK(std::any_of(answer.notes.begin(), answer.notes.end(), told));
      }
  }
}

TEST_CASE("canner loads") {
  const auto& loads = charts().find("canner-loads")->items;
  CHECK(loads.size() == 11);
  for (const auto& load : loads) {
    CAPTURE(value(load, "id"));
    const auto& ours = product(value(load, "product")).canner_load;
    for (const std::string jars : {"7 quarts", "9 pints"}) {
      const auto found =
          std::find_if(ours.begin(), ours.end(), [&](const auto& pair) { return pair.first == jars; });
      REQUIRE(found != ours.end());
      CHECK(same(amount(found->second), amount(value(load, jars))));
    }
  }
}

TEST_CASE("acid for each jar of tomatoes") {
  const auto& examples = charts().find("acid-per-jar")->items;
  CHECK(examples.size() == 4);
  std::size_t compared = 0;
  for (const auto& example : examples)
    for (const std::string id : {"tomatoes-crushed", "tomato-juice", "tomatoes-whole-or-halved-in-water"}) {
      CAPTURE(value(example, "id"));
      const auto& jars = rules().tables().jars();
      for (const auto& acid : product(id).acid_per_jar) {
        if (jars[static_cast<std::size_t>(acid.jar)].id != value(example, "jar")) continue;
        for (const auto& entry : example.find("amounts")->entries) {
          const auto choice = std::find_if(acid.one_of.begin(), acid.one_of.end(),
                                           [&](const auto& one) { return one.food == entry.key; });
          REQUIRE(choice != acid.one_of.end());
          CHECK(same(choice->amount, amount(entry.value.text)));
          ++compared;
        }
      }
    }
  CHECK(compared == 18);  // six amounts of three products
}

TEST_CASE("batches: what goes in and what comes out") {
  const auto& batches = charts().find("batches")->items;
  CHECK(batches.size() == 6);
  for (const auto& batch : batches) {
    CAPTURE(value(batch, "id"));
    const auto& ours = product(value(batch, "product"));
    REQUIRE(ours.formula.has_value());
    CHECK(ours.formula->yields == value(batch, "yields"));
    for (const auto& entry : batch.find("lines")->entries) {
      CAPTURE(entry.key);
      const auto* line = line_of(ours, entry.key);
      REQUIRE(line != nullptr);
      const auto printed = amount(entry.value.text);
      CHECK(std::any_of(line->amounts.begin(), line->amounts.end(),
                        [&](const quantity::Amount& one) { return same(one, printed); }));
    }
    if (const auto* without = batch.find("without"))
      for (const auto& food : without->items) CHECK(line_of(ours, food.text) == nullptr);
  }
}
