#include "reading/jars.hpp"

#include <doctest/doctest.h>

#include "card.hpp"

namespace sealworthy::reading {
namespace {

constexpr auto head = "recipe: Pears\ningredients: [10 lb pears]\n";

ReadCard with(const std::string& rest, const Settings& settings = {}) {
  return read_card_text(head + rest, settings);
}

TEST_CASE("one size, one process") {
  auto card = with("jars: quart\nheadspace: 1/2 inch\nprocess: {method: water bath, time: 25 min}\n");
  REQUIRE(card->jars.size() == 1);
  const JarProcess& jar = card->jars[0];
  CHECK(jar.jar->name == "quart");
  CHECK(jar.jar_at == Position{3, 7});
  CHECK(jar.process == &card.recipe->processes[0]);
  CHECK(jar.method == MethodKind::boiling_water);
  CHECK(jar.method_id == "boiling-water");
  CHECK(in_inches(jar.headspace->value.low) == doctest::Approx(0.5));
  CHECK(card->tables->jars()[static_cast<std::size_t>(*jar.size)].id == "quart");
}

TEST_CASE("several sizes with a process each") {
  auto card = with(
      "jars: [pint, quart]\nprocess:\n  - {jars: quart, method: boiling water, time: 25 min}\n"
      "  - {jars: pint, method: boiling water, time: 20 min, headspace: 1 inch}\n");
  REQUIRE(card->jars.size() == 2);
  CHECK(card->jars[0].jar->name == "pint");
  CHECK(card->jars[0].process == &card.recipe->processes[1]);
  CHECK(card->jars[0].headspace.has_value());
  CHECK(card->jars[1].process == &card.recipe->processes[0]);
  CHECK_FALSE(card->jars[1].headspace.has_value());
}

TEST_CASE("a size without a process of its own takes the only one given, or those that name no size") {
  auto only = with("jars: [pint, quart]\nprocess: {jars: quart, method: boiling water, time: 25 min}\n");
  REQUIRE(only->jars.size() == 2);
  CHECK(only->jars[0].process == &only.recipe->processes[0]);
  auto open = with(
      "jars: [pint, quart]\nprocess:\n  - {jars: quart, method: boiling water, time: 25 min}\n"
      "  - {method: boiling water, time: 20 min}\n");
  CHECK(open->jars[0].process == &open.recipe->processes[1]);
  auto none = with(
      "jars: [half-pint, pint, quart]\nprocess:\n  - {jars: quart, method: boiling water, time: 25 min}\n"
      "  - {jars: pint, method: boiling water, time: 20 min}\n");
  CHECK(none->jars[0].process == nullptr);
}

TEST_CASE("a process that names no size is never passed over") {
  auto card = with(
      "process:\n  - {jars: pint, method: pressure canner, gauge: dial, pressure: 11 psi, time: 20 min}\n"
      "  - {method: boiling water, time: 10 min}\n");
  REQUIRE(card->jars.size() == 2);
  CHECK(card->jars[0].method == MethodKind::pressure);
  CHECK(card->jars[1].method == MethodKind::boiling_water);
  CHECK(card->jars[1].jar->name == "pint");
}

TEST_CASE("sizes may stand in the processes alone; no size at all leaves one open entry") {
  auto card = with("process: {jars: [pint, quart], method: boiling water, time: 25 min}\n");
  CHECK(card->jars.size() == 2);
  auto none = with("process: {method: boiling water, time: 25 min}\n");
  REQUIRE(none->jars.size() == 1);
  CHECK(none->jars[0].jar == nullptr);
  CHECK(none->jars[0].process != nullptr);
  auto bare = with("");
  REQUIRE(bare->jars.size() == 1);
  CHECK(bare->jars[0].process == nullptr);
}

TEST_CASE("several processes for one size are all judged") {
  auto card = with(
      "jars: pint\nprocess:\n  - {method: boiling water, time: 20 min}\n"
      "  - {method: pressure canner, gauge: dial, pressure: 6 psi, time: 10 min}\n");
  CHECK(card->jars.size() == 2);
}

TEST_CASE("the gauge: said, in the method's words, or the kitchen's only one") {
  CHECK(with("jars: pint\nprocess: {method: pressure canner, gauge: dial}\n")->jars[0].gauge ==
        recipe::Gauge::dial);
  CHECK(with("jars: pint\nprocess: {method: weighted-gauge pressure canner}\n")->jars[0].gauge ==
        recipe::Gauge::weighted);
  CHECK_FALSE(with("jars: pint\nprocess: {method: pressure canner}\n")->jars[0].gauge.has_value());
  recipe::Kitchen kitchen;
  recipe::Canner dial;
  dial.kind = {"pressure canner", {3, 4}, ""};
  dial.gauge = recipe::Placed<recipe::Gauge>{recipe::Gauge::dial, {3, 9}, "dial"};
  kitchen.canners.push_back(dial);
  Settings settings;
  settings.kitchen = &kitchen;
  CHECK(with("jars: pint\nprocess: {method: pressure canner}\n", settings)->jars[0].gauge ==
        recipe::Gauge::dial);
  recipe::Canner weighted;
  weighted.kind = {"weighted gauge pressure canner", {4, 4}, ""};
  kitchen.canners.push_back(weighted);
  CHECK_FALSE(with("jars: pint\nprocess: {method: pressure canner}\n", settings)->jars[0].gauge.has_value());
}

TEST_CASE("which tables a process may be judged by") {
  using tested::TableMethod;
  const auto methods = [](const char* process) {
    auto card = with(std::string("jars: pint\nprocess: ") + process + "\n");
    const TableMethods found = table_methods(card->jars[0]);
    std::string words;
    if (found.has(TableMethod::boiling_water)) words += "water ";
    if (found.has(TableMethod::pressure_dial)) words += "dial ";
    if (found.has(TableMethod::pressure_weighted)) words += "weighted ";
    return words;
  };
  CHECK(methods("{method: steam canner}") == "water ");
  CHECK(methods("{method: pressure canner, gauge: dial}") == "dial ");
  CHECK(methods("{method: pressure canner}") == "dial weighted ");
  CHECK(methods("{time: 10 min}") == "water dial weighted ");
  CHECK(methods("{time: 10 min, pressure: 10 psi}") == "dial weighted ");
  CHECK(methods("{method: oven}").empty());
}

TEST_CASE("a soup with seafood is judged by its own rows") {
  const auto minutes = [](const char* food) {
    auto card =
        read_card_text(std::string("recipe: Soup\nfollows: soups\ningredients: [2 quarts carrots, 1 quart ") +
                       food + "]\npack: hot\njars: pint\nprocess: {method: pressure canner, gauge: dial}\n");
    REQUIRE(card->jars[0].tabled.size() == 1);
    return card->jars[0].tabled[0].option->steps[0].time.si() / 60;
  };
  // USDA Complete Guide (2015), Guide 4, Soups.
  CHECK(minutes("potatoes") == 60);
  CHECK(minutes("clams") == 100);
}

}  // namespace
}  // namespace sealworthy::reading
