#include "tested/compare.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "unit/reading/identities.hpp"

using namespace sealworthy;
using tested::FormulaComparison;
using tested::LineComparison;
using State = LineComparison::State;

namespace {

constexpr std::array state_words{"held", "free", "more", "less", "missing", "unknown", "allowed"};

std::string told(const FormulaComparison& comparison) {
  std::string out = "factor " + std::to_string(comparison.factor);
  for (const auto& line : comparison.lines)
    if (line.state != State::held && line.state != State::free)
      out += "\n  " + std::string(state_words[static_cast<std::size_t>(line.state)]) + ": " +
             line.line->text + " | found " + line.found + " | needed " + line.needed + " | " + line.reason;
  for (const auto& added : comparison.added) out += "\n  added " + added.name;
  return out;
}

const tested::Product& product(std::string_view id) {
  const auto* found = cards::known().tables.find(id);
  REQUIRE_MESSAGE(found != nullptr, id);
  return *found;
}

FormulaComparison compare(std::string_view id, const std::vector<std::string>& lines,
                          std::string_view more = {}) {
  const auto card = cards::write("Test", lines, more);
  return tested::compare(product(id), card->reading);
}

/// The line of a formula that a food stands in.
const LineComparison& line(const FormulaComparison& comparison, std::string_view food) {
  const auto found =
      std::find_if(comparison.lines.begin(), comparison.lines.end(), [&](const LineComparison& l) {
        return std::find(l.line->foods.begin(), l.line->foods.end(), food) != l.line->foods.end();
      });
  REQUIRE_MESSAGE(found != comparison.lines.end(), food);
  return *found;
}

/// Choice salsa (National Center for Home Food Preservation), as published.
const std::vector<std::string> choice_salsa{"6 cups tomatoes, peeled and chopped", "5 cups onions, diced",
                                            "4 cups bell peppers, diced", "1 1/2 cups bottled lemon juice",
                                            "3 tsp canning salt"};

std::vector<std::string> with(std::vector<std::string> lines, std::size_t at, std::string_view text) {
  lines[at] = text;
  return lines;
}

}  // namespace

TEST_CASE("a card in a formula's own words holds all its amounts") {
  for (const auto& one : cards::known().tables.products()) {
    std::vector<const tested::Formula*> formulas;
    if (one.formula) formulas.push_back(&*one.formula);
    for (const auto& version : one.versions) formulas.push_back(&version);
    for (const auto* formula : formulas) {
      const auto card = cards::write(one.title, cards::lines_of(*formula));
      const auto result = tested::compare(one, card->reading);
      // Its amounts are those of the pectin's package.
      if (one.id == "added-pectin-general") continue;
      CHECK_MESSAGE(result.held(), one.id, " ", formula->name, " ", told(result));
    }
  }
}

TEST_CASE("one factor holds for a whole batch") {
  const auto twice = compare("choice-salsa", {"12 cups tomatoes", "10 cups onions", "8 cups bell peppers",
                                              "3 cups bottled lime juice", "6 tsp canning salt"});
  CHECK(twice.factor == doctest::Approx(2));
  CHECK_MESSAGE(twice.held(), told(twice));

  // All doubled but the acid: the batch is a double one with half the acid, not a single one with all else
  // doubled.
  const auto short_acid =
      compare("choice-salsa", {"12 cups tomatoes", "10 cups onions", "8 cups bell peppers",
                               "1 1/2 cups bottled lemon juice", "6 tsp canning salt"});
  CHECK(short_acid.factor == doctest::Approx(2));
  const auto& acid = line(short_acid, "lemon-juice-bottled");
  CHECK(acid.state == State::less);
  CHECK(acid.percent == doctest::Approx(50));
  CHECK(acid.found == "1 1/2 cups");
  CHECK(acid.needed == "3 cups");
  CHECK(acid.line->role == "acid");
  CHECK(short_acid.differences() == 1);
}

TEST_CASE("equal means within 2 percent") {
  CHECK(compare("choice-salsa", with(choice_salsa, 3, "355 ml bottled lemon juice")).held());
  const auto more = compare("choice-salsa", with(choice_salsa, 0, "6 1/4 cups tomatoes"));
  CHECK(line(more, "tomato").state == State::more);
  CHECK(line(more, "tomato").percent > 2);
  const auto less = compare("choice-salsa", with(choice_salsa, 3, "1 cup bottled lemon juice"));
  CHECK(line(less, "lemon-juice-bottled").state == State::less);
}

TEST_CASE("an amount that may be right and may be wrong is unknown") {
  for (const auto* text : {"about 1 1/2 cups bottled lemon juice", "bottled lemon juice"}) {
    const auto open = compare("choice-salsa", with(choice_salsa, 3, text));
    CHECK_MESSAGE(line(open, "lemon-juice-bottled").state == State::unknown, text);
    CHECK_FALSE(line(open, "lemon-juice-bottled").reason.empty());
    CHECK_FALSE(open.held());
  }
  // A range that the card gives itself is judged at its worse end.
  for (const auto* text : {"1-2 cups bottled lemon juice", "1 1/2 cups bottled lemon juice, optional"})
    CHECK_MESSAGE(line(compare("choice-salsa", with(choice_salsa, 3, text)), "lemon-juice-bottled").state ==
                      State::less,
                  text);
  const auto wrong = compare("choice-salsa", with(choice_salsa, 3, "1/2-1 cup bottled lemon juice"));
  CHECK(line(wrong, "lemon-juice-bottled").state == State::less);
  CHECK(line(wrong, "lemon-juice-bottled").percent > 30);
}

TEST_CASE("a total over any mix of foods") {
  CHECK(compare("choice-salsa",
                {"6 cups tomatoes", "9 cups onions", "1 1/2 cups bottled lemon juice", "3 tsp canning salt"})
            .held());
  const auto more = compare("choice-salsa", with(choice_salsa, 1, "6 cups onions, diced"));
  CHECK(line(more, "onion").state == State::more);
  CHECK(line(more, "onion").percent == doctest::Approx(100.0 / 9));
  CHECK(line(more, "onion").found == "6 cups and 4 cups");
}

TEST_CASE("what is missing and what is added") {
  auto lines = choice_salsa;
  lines.erase(lines.begin() + 3);
  lines.emplace_back("2 cups corn");
  lines.emplace_back("1 tsp ground cumin");
  const auto result = compare("choice-salsa", lines);
  CHECK(line(result, "lemon-juice-bottled").state == State::missing);
  CHECK(line(result, "lemon-juice-bottled").needed == "1 1/2 cups");
  REQUIRE(result.added.size() == 2);
  CHECK(result.added[0].name == "corn");
  CHECK_FALSE(result.added[0].dry_spice);
  CHECK(result.added[0].at.line > 0);
  CHECK(result.added[1].dry_spice);
}

TEST_CASE("one food in place of another is one difference") {
  const auto replaced = [](std::size_t at, std::string_view text) {
    return compare("choice-salsa", with(choice_salsa, at, text));
  };
  const auto lime = replaced(3, "1 1/2 cups rice vinegar");  // of one kind
  CHECK(lime.added[line(lime, "lemon-juice-bottled").replaced_by].name == "rice vinegar");
  CHECK(lime.differences() == 1);
  const auto water = replaced(3, "1 1/2 cups water");  // pours, and as much of it
  CHECK(line(water, "lemon-juice-bottled").replaced_by == 0);
  const auto corn = replaced(3, "1 1/2 cups corn");
  CHECK(line(corn, "lemon-juice-bottled").replaced_by == LineComparison::none);
  CHECK(corn.differences() == 2);
}

TEST_CASE("weight beside volume goes by what a cup can weigh") {
  // USDA FoodData Central SR28: chopped onion 160 g a cup; 5 lb are about 14 cups, 1 lb is under 3.
  const auto far =
      compare("choice-salsa", {"6 cups tomatoes", "5 lb onions, diced", "1 1/2 cups bottled lemon juice"});
  CHECK(line(far, "onion").state != State::held);
  const auto sauce = compare("tomato-ketchup", {"24 lb tomatoes", "3 lb onions, chopped",
                                                "3 cups cider vinegar", "1 1/2 cups sugar", "1/4 cup salt"});
  CHECK(line(sauce, "onion").state == State::more);
  const auto near = compare("tomato-ketchup", {"24 lb tomatoes", "1 lb onions, chopped",
                                               "3 cups cider vinegar", "1 1/2 cups sugar", "1/4 cup salt"});
  CHECK(line(near, "onion").state == State::unknown);
}

TEST_CASE("packages count by what they hold") {
  const auto cans = compare("tomato-paste-salsa", {"24 oz tomato paste"});
  CHECK(line(cans, "tomato-paste").state == State::held);
}

TEST_CASE("what a formula leaves open may lack an amount") {
  const auto salsa = compare("choice-salsa", with(choice_salsa, 4, "salt to taste"));
  CHECK_MESSAGE(salsa.held(), told(salsa));
  // A ferment lives by its salt.
  const auto kraut = compare("sauerkraut", {"25 lb cabbage, shredded", "salt"});
  CHECK(line(kraut, "canning-salt").state == State::unknown);
  // Water thins the vinegar of a brine, and does nothing to a jam.
  const auto beets = compare("pickled-beets", {"7 lb beets", "4 cups vinegar", "2 cups sugar", "water"});
  CHECK(line(beets, "water").state == State::unknown);
  const auto jam =
      compare("blueberry-currant-jam", {"1 quart blueberries", "water", "2 cups currants", "3 cups sugar"});
  CHECK(line(jam, "water").state == State::free);
}

TEST_CASE("versions of a formula: the one that fits best") {
  const auto quart =
      compare("apple-pie-filling", {"3 1/2 cups apples, sliced", "3/4 cup plus 2 tablespoons sugar",
                                    "1/4 cup cook-type modified corn starch", "1/2 tsp cinnamon",
                                    "1/2 cup water", "3/4 cup apple juice", "2 tbsp bottled lemon juice"});
  CHECK_MESSAGE(quart.held(), told(quart));
  CHECK(quart.factor == doctest::Approx(1));
}

TEST_CASE("amounts per jar beside amounts per batch") {
  const auto jars =
      compare("tomatoes-with-okra-or-zucchini", {"12 lb tomatoes", "4 lb okra", "each quart: 1 tsp salt"},
              "makes: 7 quart jars\n");
  CHECK_MESSAGE(jars.held(), told(jars));
  const auto pints =
      compare("tomatoes-with-okra-or-zucchini", {"12 lb tomatoes", "4 lb okra", "each pint: 1 tsp salt"},
              "makes: 14 pint jars\n");
  CHECK(line(pints, "canning-salt").state == State::more);
}

TEST_CASE("white-fleshed peaches are no peaches here") {
  const auto salsa = compare("peach-salsa", {"6 cups white peaches"});
  CHECK(line(salsa, "peach").state == State::missing);
  REQUIRE(salsa.added.size() == 1);
}
TEST_CASE("the line that differs most does not set the size of the batch") {
  // No two lines agree on a size; the lemon juice, a sixth of the published, must not be the one.
  const auto comparison = compare("choice-salsa", {"5 cups tomatoes, peeled and chopped",
                                                   "4 cups onions, diced", "3 1/2 cups bell peppers, diced",
                                                   "1/4 cup bottled lemon juice", "2 tsp canning salt"});
  CHECK(comparison.factor > 0.5);
  CHECK(line(comparison, "lemon-juice-bottled").state == State::less);
}

TEST_CASE("a food that a line names beside the one it stands for leaves both untold") {
  // Pickled corn relish (USDA Complete Guide (2015), Guide 6, page 6-28).
  const auto relish = [](const std::string& peppers) {
    return compare("pickled-corn-relish",
                   {"10 cups fresh whole kernel corn", "2 1/2 cups " + peppers,
                    "2 1/2 cups diced sweet green peppers", "2 1/2 cups chopped celery",
                    "1 1/4 cups chopped onions", "1 3/4 cups sugar", "5 cups vinegar (5%)"});
  };
  CHECK(line(relish("diced sweet red peppers"), "bell-pepper").state == State::held);
  const auto beside = relish("diced sweet red peppers and corn");
  CHECK(line(beside, "bell-pepper").state == State::unknown);
  CHECK(line(beside, "bell-pepper").reason == "it does not say how much of each");
}

TEST_CASE("an ingredient that stands for two lines is told once, beside their sum") {
  // Pickled corn relish (USDA Complete Guide (2015), Guide 6, page 6-28): 2 1/2 cups of each pepper.
  const auto relish = [](const std::string& peppers) {
    return compare(
        "pickled-corn-relish",
        {"10 cups fresh whole kernel corn", peppers + " diced sweet peppers", "2 1/2 cups chopped celery",
         "1 1/4 cups chopped onions", "1 3/4 cups sugar", "5 cups vinegar (5%)"});
  };
  int of_peppers = 0, joined = 0;
  const auto fewer = relish("3 cups");
  for (const auto& one : fewer.lines) {
    if (one.found != "3 cups") continue;
    ++of_peppers;
    if (one.with_line_before)
      ++joined;
    else
      CHECK(one.needed == "5 cups");
  }
  INFO(told(fewer));
  CHECK(of_peppers == 2);
  CHECK(joined == 1);
  for (const auto& one : relish("5 cups").lines) CHECK(one.found != "5 cups");  // held: nothing to tell
}
