#include "checks/check.hpp"

#include <doctest/doctest.h>

using namespace sealworthy;

TEST_CASE("figures fill the names of a text; a name without a figure stays") {
  CHECK(checks::fill("{found} of vinegar, {needed} wanted", {{"found", "1 cup"}, {"needed", "2 cups"}}) ==
        "1 cup of vinegar, 2 cups wanted");
  CHECK(checks::fill("{food} {other}", {{"food", "eggs"}}) == "eggs {other}");
  CHECK(checks::fill("no names", {}) == "no names");
  CHECK(checks::fill("an open { brace", {{"food", "eggs"}}) == "an open { brace");
}

TEST_CASE("a finding carries the rule's words, its figures and says what rests on memory") {
  checks::Rule rule;
  rule.id = "r";
  rule.severity = Severity::warning;
  rule.topic = Topic::acid;
  rule.says = "{found} found";
  rule.instead = "{needed}, please";
  rule.source = "A book";
  rule.read = Read::memory;
  checks::Results results;
  results.add(rule, {3, 5}, {{"found", "1 cup"}, {"needed", "2 cups"}});
  REQUIRE(results.findings.size() == 1);
  const auto& finding = results.findings[0];
  CHECK(finding.message == "1 cup found");
  CHECK(finding.instead == "2 cups, please");
  CHECK(finding.found == "1 cup");
  CHECK(finding.needed == "2 cups");
  CHECK(finding.at == Position{3, 5});
  CHECK(finding.sources == std::vector<std::string>{"A book (from memory)"});
}

TEST_CASE("a rule applies to the cards that it speaks of") {
  recipe::Recipe recipe;
  recipe::Process process;
  reading::Reading reading;
  reading.recipe = &recipe;
  reading.jars.resize(1);
  checks::OnlyIf any;
  CHECK(checks::applies(any, reading));

  SUBCASE("shelf unless said otherwise") {
    reading.keep = reading::Keep::freezer;
    CHECK_FALSE(checks::applies(any, reading));
    any.keep = checks::OnlyIf::Keep::cold;
    CHECK(checks::applies(any, reading));
    any.keep = checks::OnlyIf::Keep::any;
    CHECK(checks::applies(any, reading));
  }
  SUBCASE("jar class: each word has its own bit") {
    using reading::JarClass;
    const std::vector<JarClass> in_order{JarClass::low_acid,       JarClass::acid,      JarClass::acidified,
                                         JarClass::sugar_preserve, JarClass::fermented, JarClass::unknown};
    for (std::size_t i = 0; i < in_order.size(); ++i)
      for (std::size_t j = 0; j < in_order.size(); ++j) {
        any.jar_class = 1U << i;
        reading.jar_class = in_order[j];
        CHECK(checks::applies(any, reading) == (i == j));
      }
  }
  SUBCASE("method of any jar; none where there is no process") {
    any.method = 1U << 6U;
    CHECK(checks::applies(any, reading));
    reading.jars[0].process = &process;
    CHECK_FALSE(checks::applies(any, reading));
    using reading::MethodKind;
    const std::vector<MethodKind> in_order{MethodKind::boiling_water, MethodKind::steam,
                                           MethodKind::pressure,      MethodKind::low_temperature,
                                           MethodKind::not_accepted,  MethodKind::unknown};
    for (std::size_t i = 0; i < in_order.size(); ++i)
      for (std::size_t j = 0; j < in_order.size(); ++j) {
        any.method = 1U << i;
        reading.jars[0].method = in_order[j];
        CHECK(checks::applies(any, reading) == (i == j));
      }
  }
  SUBCASE("product and match") {
    tested::Product product;
    product.id = "choice-salsa";
    any.product = {"choice-salsa"};
    CHECK_FALSE(checks::applies(any, reading));
    reading.match.product = &product;
    CHECK(checks::applies(any, reading));
    any.not_product = {"choice-salsa"};
    CHECK_FALSE(checks::applies(any, reading));
    any = {};
    any.matched = true;
    reading.match.by = reading::Match::By::found;
    CHECK(checks::applies(any, reading));
    reading.match.doubtful = true;
    CHECK_FALSE(checks::applies(any, reading));
    any.matched = false;
    CHECK(checks::applies(any, reading));
  }
  SUBCASE("pack, process and infant") {
    any.pack = 1U << 2U;
    CHECK(checks::applies(any, reading));
    recipe.pack = recipe::Placed<recipe::Pack>{recipe::Pack::raw, {}, {}};
    CHECK_FALSE(checks::applies(any, reading));
    any.pack = 1U << 1U;
    CHECK(checks::applies(any, reading));
    any.process = true;
    CHECK_FALSE(checks::applies(any, reading));
    recipe.processes.emplace_back();
    CHECK(checks::applies(any, reading));
    any.infant = true;
    CHECK_FALSE(checks::applies(any, reading));
  }
}
