#include "reading/match.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <set>

#include "identities.hpp"

using namespace sealworthy;
using cards::known;
using cards::lines_of;
using cards::list;
using cards::read_node;
using cards::title_of;
using reading::Match;

namespace {

std::string told(const Match& match) {
  if (match.product == nullptr) return "none";
  std::string out = match.product->id + (match.doubtful ? " (doubtful: " + match.doubt + ")" : "");
  for (const auto* also : match.also) out += ", also " + also->id;
  return out;
}

bool is_found(const Match& match, std::string_view id) {
  return match.product != nullptr && match.product->id == id && !match.doubtful &&
         match.by == Match::By::found;
}

/// Every formula of the tables with its product.
std::vector<std::pair<const tested::Product*, const tested::Formula*>> formulas() {
  std::vector<std::pair<const tested::Product*, const tested::Formula*>> out;
  for (const auto& product : known().tables.products()) {
    if (product.formula) out.emplace_back(&product, &*product.formula);
    for (const auto& version : product.versions) out.emplace_back(&product, &version);
  }
  return out;
}

/// Products that nothing but a word on the card tells from another dish of the same foods.
bool asks_for_a_word(const tested::Product& product) { return !product.identity.form_any.empty(); }

}  // namespace

TEST_CASE("cards of plain products are found, however they are put") {
  for (const auto& group : list("found")) {
    const auto id = group.find("product")->text;
    for (const auto& node : group.find("cards")->items) {
      const auto card = read_node(node);
      const auto match = reading::match(card->reading);
      CAPTURE(card->recipe.title.value);
      CAPTURE(told(match));
      // The process of squash and pumpkin is printed twice, in the same figures.
      const bool twin = id == "squash-winter-cubed" && is_found(match, "pumpkins-and-winter-squash-cubed");
      CHECK_MESSAGE((twin || is_found(match, id)), id);
    }
  }
}

TEST_CASE("cards of published formulas are found by their own title") {
  for (const auto& pair : formulas()) {
    const auto* product = pair.first;
    const auto* formula = pair.second;
    const auto card = cards::write(title_of(*product), lines_of(*formula));
    const auto match = reading::match(card->reading);
    CAPTURE(told(match));
    CHECK_MESSAGE(is_found(match, product->id), product->id, " ", formula->name);
  }
}

TEST_CASE("formulas that no word has to tell apart are found under any title") {
  for (const auto& pair : formulas()) {
    const auto* product = pair.first;
    const auto* formula = pair.second;
    if (asks_for_a_word(*product)) continue;
    const auto card = cards::write("What we put up in September", lines_of(*formula));
    const auto match = reading::match(card->reading);
    CAPTURE(told(match));
    CHECK_MESSAGE(is_found(match, product->id), product->id, " ", formula->name);
  }
}

TEST_CASE("every product is found by some card") {
  std::set<std::string_view> found;
  for (const auto& group : list("found")) found.insert(group.find("product")->text);
  for (const auto& [product, formula] : formulas()) found.insert(product->id);
  for (const auto& product : known().tables.products()) CHECK_MESSAGE(found.contains(product.id), product.id);
}

TEST_CASE("cards that leave a form open are doubtful and tell the other products") {
  for (const auto& node : list("open")) {
    const auto card = read_node(node);
    const auto match = reading::match(card->reading);
    CAPTURE(card->recipe.title.value);
    CAPTURE(told(match));
    REQUIRE(match.product != nullptr);
    CHECK(match.doubtful);
    std::set<std::string_view> all{match.product->id};
    for (const auto* also : match.also) all.insert(also->id);
    for (const auto& id : node.find("products")->items) CHECK_MESSAGE(all.contains(id.text), id.text);
    CHECK(match.doubt.find("does not say") != std::string::npos);
  }
}

TEST_CASE("an open form is no doubt where the card's figures meet every product it could be") {
  for (const auto& node : list("settled")) {
    const auto card = read_node(node);
    const auto match = reading::match(card->reading);
    CAPTURE(card->recipe.title.value);
    CAPTURE(told(match));
    REQUIRE(match.product != nullptr);
    CHECK_FALSE(match.doubtful);
    const auto& ids = node.find("products")->items;
    CHECK(std::any_of(ids.begin(), ids.end(),
                      [&](const yaml::Node& id) { return id.text == match.product->id; }));
  }
}

TEST_CASE("near misses are not matched without doubt") {
  for (const auto& node : list("misses")) {
    const auto card = read_node(node);
    const auto match = reading::match(card->reading);
    CAPTURE(card->recipe.title.value);
    CAPTURE(told(match));
    CHECK((match.product == nullptr || match.doubtful));
    if (match.product != nullptr) CHECK(match.doubt.size() > 20);
    if (const auto* nearest = node.find("nearest"))
      CHECK((nearest->text == "none" ? match.product == nullptr
                                     : match.product != nullptr && match.product->id == nearest->text));
  }
}

TEST_CASE("follows names the product, whatever the title says") {
  const auto card = cards::write("Jars of the week", {"14 lb green beans", "water"},
                                 "follows: beans-snap-and-italian-pieces\n");
  const auto match = reading::match(card->reading);
  REQUIRE(match.product != nullptr);
  CHECK(match.product->id == "beans-snap-and-italian-pieces");
  CHECK(match.by == Match::By::follows);
  CHECK_FALSE(match.doubtful);
}

TEST_CASE("follows keeps a formula that the card changes, without doubt: the amounts tell the difference") {
  const auto card = cards::write(
      "Our salsa", {"6 cups tomatoes", "9 cups onions", "2 cups corn", "1 1/2 cups bottled lime juice"},
      "follows: choice-salsa\n");
  const auto match = reading::match(card->reading);
  REQUIRE(match.product != nullptr);
  CHECK(match.product->id == "choice-salsa");
  CHECK_FALSE(match.doubtful);
}

TEST_CASE("follows does not make one food another, nor clear what is added to a plain product") {
  const auto strange = cards::write("Beets", {"10 lb beets", "water"}, "follows: carrots-sliced-or-diced\n");
  const auto first = reading::match(strange->reading);
  CHECK(first.product->id == "carrots-sliced-or-diced");
  CHECK(first.doubtful);
  CHECK(first.doubt.find("none of the foods") != std::string::npos);

  const auto bacon = cards::write("Beans", {"14 lb green beans", "1 lb bacon", "water"},
                                  "follows: beans-snap-and-italian-pieces\n");
  const auto second = reading::match(bacon->reading);
  CHECK(second.doubtful);
  CHECK(second.doubt.find("bacon is not in it") != std::string::npos);

  const auto mash = cards::write("Pumpkin", {"10 lb pumpkin, mashed", "water"},
                                 "follows: pumpkins-and-winter-squash-cubed\n");
  const auto third = reading::match(mash->reading);
  CHECK(third.doubtful);
  CHECK(third.doubt.find("mashed") != std::string::npos);
}

TEST_CASE("an unknown id in follows is told, and the card is matched by its foods") {
  const auto card = cards::write("Green beans", {"14 lb green beans", "water"}, "follows: green-bean-jars\n");
  const auto match = reading::match(card->reading);
  CHECK(match.unknown_follows == "green-bean-jars");
  REQUIRE(match.product != nullptr);
  CHECK(match.product->id == "beans-snap-and-italian-pieces");
  CHECK(match.by == Match::By::found);
}

TEST_CASE("the doubt says what differs in words for a cook") {
  const auto salsa = cards::write("Choice salsa", {"6 cups tomatoes", "9 cups onions", "2 cups corn",
                                                   "1 1/2 cups bottled lime juice", "3 tsp salt"});
  const auto match = reading::match(salsa->reading);
  REQUIRE(match.product != nullptr);
  CHECK(match.product->id == "choice-salsa");
  CHECK(match.doubt == "nearest tested: Choice salsa, which differs in 1 place; corn is not in it");
}

TEST_CASE("the doubt counts what is named in the plural") {
  const auto plural = cards::write("Beans", {"14 lb green beans", "2 lb parsnips"},
                                   "follows: beans-snap-and-italian-pieces\n");
  CHECK(reading::match(plural->reading).doubt.find("parsnips are not in it") != std::string::npos);
  const auto single = cards::write("Beans", {"14 lb green beans", "2 lb asparagus"},
                                   "follows: beans-snap-and-italian-pieces\n");
  CHECK(reading::match(single->reading).doubt.find("asparagus is not in it") != std::string::npos);
}

TEST_CASE("a step that denies a form does not say it") {
  const auto denied = cards::write("Pumpkin", {"10 lb pumpkin, cubed", "water"},
                                   "steps: [Boil the cubes 2 minutes. Do not mash or puree them.]\n");
  CHECK_FALSE(reading::match(denied->reading).doubtful);
  const auto done = cards::write("Pumpkin", {"10 lb pumpkin, cubed", "water"},
                                 "steps: [Boil the cubes 20 minutes and mash them.]\n");
  CHECK(reading::match(done->reading).doubtful);
}

TEST_CASE("alternatives of a line must all be covered") {
  const auto either = cards::write("Peaches in syrup", {"10 lb peaches or white peaches", "light syrup"});
  const auto match = reading::match(either->reading);
  CHECK((match.product == nullptr || match.doubtful));
  const auto both = cards::write("Berries", {"10 lb blackberries or raspberries", "light syrup"});
  CHECK(is_found(reading::match(both->reading), "berries-whole"));
}

TEST_CASE("an empty reading has no match") {
  const auto card = cards::write("Nothing yet", {"water"});
  CHECK(reading::match(card->reading).product == nullptr);
}
