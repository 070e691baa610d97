// Every product of rules/processes.

#include <cmath>
#include <set>

#include "at_hand.hpp"

using namespace sealworthy;
using namespace sealworthy::tested;

namespace {

/// Rows as they stand in the files, before a row for two jars becomes two.
std::size_t printed_rows() {
  std::size_t rows = 0;
  each_document({"products"}, [&](auto, const auto& document) {
    for (const auto& node : document.root().find("products")->items)
      if (const auto* list = node.find("rows")) rows += list->items.size();
  });
  return rows;
}

}  // namespace

// The figures are those of the collection of process tables that rules/processes was made from: Guides 2 to 7
// of the USDA Complete Guide (2015), the National Center's and three extension bodies' products.
TEST_CASE("nothing is lost: 214 products, 546 rows, 154 formulas") {
  const auto all = tables().products();
  CHECK(all.size() == 214);
  CHECK(printed_rows() == 546);
  std::size_t rows = 0, formulas = 0;
  for (const auto& p : all) {
    rows += p.rows.size();
    formulas += p.formula ? 1 : 0;
  }
  CHECK(rows == 562);  // 16 rows are for two jars
  CHECK(formulas == 154);
}

TEST_CASE("no row of the tables is wrong") {
  for (const auto& [file, error] : rules_at_hand().errors)
    if (file.find("processes/") != std::string::npos || file.find("sources.yaml") != std::string::npos ||
        file.find("jars.yaml") != std::string::npos || file.find("altitude.yaml") != std::string::npos)
      FAIL_CHECK(file << ":" << error.at.line << ":" << error.at.column << ": " << error.message);
}

TEST_CASE("every product is whole") {
  std::set<std::string_view> ids;
  for (const auto& p : tables().products()) {
    CAPTURE(p.id);
    CHECK(ids.insert(p.id).second);
    CHECK(tables().find(p.id) == &p);
    CHECK(!p.title.empty());
    CHECK(!p.source.empty());
    CHECK(!p.foods.empty());
    CHECK(!p.headspace.empty());
    CHECK((p.rows.empty() == p.kept_cold));
    for (const auto& food : p.foods) CHECK_MESSAGE(rules_at_hand().catalogue().find(food) != nullptr, food);
    for (const auto& row : p.rows) {
      CHECK(!row.options.empty());
      for (const auto& option : row.options) {
        REQUIRE(!option.steps.empty());
        CHECK(option.steps.front().band.from == feet(0));
        for (const auto& step : option.steps)
          CHECK((step.pressure.has_value() ==
                 (row.method != TableMethod::boiling_water && !step.not_recommended)));
      }
    }
    if (!p.formula) continue;
    for (const auto& line : p.formula->lines) {
      CHECK(!line.text.empty());
      CHECK(!line.foods.empty());
    }
  }
}

TEST_CASE("borrowed processes are the lender's") {
  CHECK(product("tomatillos").same_process_as == "tomatoes-whole-or-halved-in-water");
  CHECK(product("tomatillos").rows.size() == 6);
  CHECK(product("squash-winter-cubed").same_process_as == "pumpkins-and-winter-squash-cubed");
  CHECK(product("blender-ketchup").same_process_as == "tomato-ketchup");
}

TEST_CASE("read marks: what rests on memory says so") {
  std::set<std::string_view> products;
  std::size_t rows = 0;
  for (const auto& p : tables().products())
    for (const auto& row : p.rows) {
      bool memory = false;
      for (const auto& option : row.options)
        for (const auto& step : option.steps) memory = memory || step.read == Read::memory;
      if (memory) {
        products.insert(p.id);
        ++rows;
      }
    }
  CHECK(products.size() == 20);
  CHECK(rows == 28);  // one of them for two jars
  const auto& kraut = product("sauerkraut");
  CHECK(kraut.rows[0].options[0].steps[0].read == Read::reprint);
  CHECK(kraut.rows[0].options[0].steps[1].read == Read::memory);
  CHECK(kraut.rows[2].options[0].steps[1].read == Read::reprint);
  CHECK(product("cantaloupe-pickles-no-sugar-added").formula->read == Read::memory);
}

TEST_CASE("what is said of single products") {
  CHECK(product("mango-sauce").no_tested_process);
  CHECK(!product("mango-sauce").why_no_process.empty());
  CHECK(product("pickled-horseradish-sauce").kept_cold);
  CHECK(product("refrigerated-apple-spread").kept_cold);
  CHECK(product("dill-pickles-fermented").low_temperature_pasteurization);
  CHECK(!product("sauerkraut").low_temperature_pasteurization);
  CHECK(product("apple-butter").sterile_jars_under == minutes(10));
  CHECK(product("fish-in-quart-jars").jar_kind == "straight-sided, wide-mouth");
  CHECK(product("smoked-fish").canner == "16 to 22 quarts");
  CHECK(product("potatoes-white-cubed-or-whole").largest_piece == piece_inches(2));
  CHECK(product("tomato-juice").acid_per_jar.size() == 2);
  CHECK(product("tomato-juice").acid_per_jar[0].one_of.size() == 3);
  CHECK(product("pears-asian-halved-or-sliced").acid_per_jar[0].one_of.size() == 1);
  const auto& pie = product("apple-pie-filling");
  REQUIRE(pie.versions.size() == 1);
  CHECK(pie.versions[0].yields == "1 quart");
  CHECK(pie.versions[0].lines.size() == pie.formula->lines.size());
  CHECK(product("beans-dry-with-tomato-or-molasses-sauce").versions.size() == 2);
  CHECK(product("pickled-asparagus").versions.size() == 1);
}

TEST_CASE("sources are cited with their page where it is known") {
  CHECK(product("beans-snap-and-italian-pieces").source == "USDA Complete Guide (2015), Guide 4, page 4-9");
  CHECK(product("carrots-sliced-or-diced").source == "USDA Complete Guide (2015), Guide 4");
  CHECK(product("choice-salsa").source == "National Center for Home Food Preservation");
}
