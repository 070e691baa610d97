#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <sealworthy/checker.hpp>
#include <set>

#include "knowledge/recipes.hpp"
#include "prose/publisher.hpp"

namespace sealworthy {
namespace {

const Checker& checker() {
  static const auto made = Checker::builtin();
  return made;
}

/// Notices speak of what a page leaves unsaid; a card and a page may differ there.
std::multiset<std::string> grave(const RecipeReport& report) {
  std::multiset<std::string> out;
  for (const auto& finding : report.findings)
    if (finding.severity > Severity::notice) out.insert(finding.rule);
  return out;
}

std::string listed(const std::multiset<std::string>& rules) {
  std::string out;
  for (const auto& rule : rules) out += rule + " ";
  return out;
}

}  // namespace

TEST_CASE("a recipe gets the same verdict in every form in which it is published") {
  const auto recipes = prose_test::invent(checker().knowledge().bases, 20260214, 8);
  REQUIRE(recipes.size() >= 150);
  std::array<int, 4> verdicts{};
  std::uint32_t number = 0;
  for (const auto& recipe : recipes) {
    const auto forms = prose_test::publish(recipe, number++);
    const auto card = checker().check_text(forms[0].path, forms[0].text);
    REQUIRE(card.size() == 1);
    ++verdicts[static_cast<std::size_t>(card[0].verdict)];
    for (const auto& form : forms) {
      INFO(form.path << "\n" << form.text);
      CHECK(checker().knowledge().directions.may_speak_of_canning(form.text));
      const auto reports = checker().check_text(form.path, form.text);
      REQUIRE(reports.size() == 1);
      CHECK(reports[0].verdict == card[0].verdict);
      CHECK(listed(grave(reports[0])) == listed(grave(card[0])));
      CHECK(reports[0].title == recipe.title);
    }
  }
  MESSAGE(recipes.size() << " recipes in eight forms: " << verdicts[0] << " tested, " << verdicts[1]
                         << " unproven, " << verdicts[2] << " hazard");
  CHECK(verdicts[0] > 20);
  CHECK(verdicts[2] > 20);
  CHECK(verdicts[static_cast<std::size_t>(Verdict::unreadable)] == 0);
}

TEST_CASE("what directions state is found") {
  const auto recipes = prose_test::invent(checker().knowledge().bases, 77, 8);
  int times = 0, jars = 0, headspaces = 0, stated_jars = 0;
  std::uint32_t number = 0;
  for (const auto& recipe : recipes) {
    const auto form = prose_test::publish(recipe, number++)[4];
    const auto found = knowledge::find_recipes(form.path, form.text, checker().knowledge(), {});
    REQUIRE(found.recipes.size() == 1);
    const auto& read = std::get<recipe::Recipe>(found.recipes[0].recipe);
    const bool time_found =
        !read.processes.empty() &&
        std::all_of(read.processes.begin(), read.processes.end(), [&](const auto& p) {
          return p.time && std::abs(in_minutes(p.time->value.low) - recipe.minutes) < 0.01;
        });
    times += time_found;
    if (!time_found) MESSAGE("not found: " << recipe.minutes << " minutes in: " << recipe.directions.back());
    headspaces +=
        read.headspace && std::abs(in_inches(read.headspace->value.low) - recipe.headspace_inches) < 0.001;
    for (const auto& name : recipe.jars) {
      ++stated_jars;
      const auto size = quantity::read_jar(name);
      const auto is = [&](const auto& jar) {
        return jar.value.volume == std::get<quantity::JarText>(size).volume;
      };
      jars += std::any_of(read.jars.begin(), read.jars.end(), is) ||
              std::any_of(read.processes.begin(), read.processes.end(),
                          [&](const auto& p) { return std::any_of(p.jars.begin(), p.jars.end(), is); });
    }
  }
  const auto all = static_cast<double>(recipes.size());
  MESSAGE("found of what is stated: times " << times / all << ", headspaces " << headspaces / all << ", jars "
                                            << jars / static_cast<double>(stated_jars) << " ("
                                            << recipes.size() << " recipes)");
  CHECK(times / all >= 0.97);
  CHECK(headspaces / all >= 0.97);
  CHECK(jars / static_cast<double>(stated_jars) >= 0.97);
}

}  // namespace sealworthy
