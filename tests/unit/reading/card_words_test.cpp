#include "reading/card_words.hpp"

#include <doctest/doctest.h>

#include "card.hpp"

namespace sealworthy::reading {
namespace {

ReadCard card(const std::string& title, const std::string& step, bool processed = false) {
  std::string text = "recipe: \"" + title + "\"\ningredients: [2 lb cucumbers]\n";
  if (processed) text += "process: {method: boiling water, time: 10 min}\n";
  text += "steps:\n  - \"" + step + "\"\n";
  return read_card_text(text);
}

Keep keep(const std::string& title, const std::string& step, bool processed = false) {
  return card(title, step, processed)->keep;
}

TEST_CASE("a title says it alone") {
  CHECK(keep("Refrigerator dills", "Fill the jars.") == Keep::refrigerator);
  CHECK(keep("Freezer jam", "Fill the jars.") == Keep::freezer);
  CHECK(keep("Ridge road dills", "Fill the jars.") == Keep::shelf);
}

TEST_CASE("steps that tell where jars are kept") {
  for (const char* step : {"Keep the jars in the refrigerator.", "Store in the fridge up to a month.",
                           "Cover and refrigerate.", "Let stand 24 hours, then keep in the refrigerator."})
    CHECK(keep("Dills", step) == Keep::refrigerator);
  for (const char* step :
       {"Freeze the jars.", "Store in the freezer.", "Let stand overnight; then put up in the freezer."})
    CHECK(keep("Jam", step) != Keep::refrigerator);
  CHECK(keep("Jam", "Freeze the jars.") == Keep::freezer);
}

TEST_CASE("steps that speak of something else") {
  for (const char* step :
       {"Refrigerate after opening.", "After opening, store in the refrigerator.",
        "Refrigerate any jar that did not seal.", "If a lid fails, keep that jar in the refrigerator.",
        "Do not refrigerate.", "Chill 12 hours in the refrigerator.", "Thaw the berries in the refrigerator.",
        "Let the brine stand in the refrigerator overnight."})
    CHECK(keep("Dills", step) == Keep::shelf);
}

TEST_CASE("the shelf wins over a title, and a process over everything") {
  CHECK(keep("Freezer jam", "Store in the pantry.") == Keep::shelf);
  CHECK(keep("Freezer jam", "Do not store in the pantry.") == Keep::freezer);
  CHECK(keep("Refrigerator dills", "Keep them in the refrigerator.", true) == Keep::shelf);
}

TEST_CASE("food for a baby") {
  CHECK(card("Pear puree for a baby", "Mash.")->infant);
  CHECK(card("Baby food: pears", "Mash.")->infant);
  CHECK_FALSE(card("Baby carrots", "Trim the baby carrots.")->infant);
  CHECK_FALSE(card("Honey pears", "Do not feed it to infants.")->infant);
}

TEST_CASE("where it was said") {
  CHECK(card("Dills", "Keep in the fridge.")->keep_at == Position{4, 5});
  CHECK(card("Refrigerator dills", "Fill.")->keep_at.line == 1);
}

}  // namespace
}  // namespace sealworthy::reading
