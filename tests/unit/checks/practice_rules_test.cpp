// The rules of `practice-in-steps` on sentences alone: each rule's own examples, and sentences of careful
// directions on which none may speak.

#include <doctest/doctest.h>

#include <algorithm>
#include <bit>
#include <fstream>
#include <set>
#include <sstream>
#include <string_view>

#include "recipe/recipe.hpp"
#include "rules_at_hand.hpp"
#include "steps_by_hand.hpp"

using namespace sealworthy;
using test::Card;

namespace {

const test::Steps& all_rules() {
  static const auto steps = [] {
    auto made = std::make_unique<test::Steps>();
    each_document({"sources", "vocabulary", "rules"},
                  [&](std::string_view file, const yaml::Document& document) { made->add(file, document); });
    made->make();
    return made;
  }();
  return *steps;
}

/// The first word of an only-if set, as the enumerator that it stands for; `otherwise` where any will do.
template <class E>
E first_of(unsigned bits, std::initializer_list<E> words, E otherwise) {
  if (bits == 0) return otherwise;
  return *(words.begin() + std::countr_zero(bits));
}

reading::MethodKind method_of_base(std::string_view name) {
  for (const auto& base : rules_at_hand().knowledge->bases) {
    if (base.find("base")->text != name) continue;
    const auto* process = base.find("process");
    const auto* method = process == nullptr ? nullptr : process->find("method");
    if (method != nullptr && method->text.starts_with("boiling")) return reading::MethodKind::boiling_water;
  }
  return reading::MethodKind::pressure;
}

/// The base card of a sentence, as far as the rule asks. `product` keeps the product that the rule names.
Card card_for(const checks::Rule& rule, const checks::Example& example, tested::Product& product) {
  using J = reading::JarClass;
  using M = reading::MethodKind;
  const auto& only_if = rule.only_if;
  Card card;
  card.jar_class = first_of(only_if.jar_class,
                            {J::low_acid, J::acid, J::acidified, J::sugar_preserve, J::fermented, J::unknown},
                            J::low_acid);
  card.method = first_of(
      only_if.method,
      {M::boiling_water, M::steam, M::pressure, M::low_temperature, M::not_accepted, M::unknown, M::unknown},
      method_of_base(example.base));
  card.infant = only_if.infant.value_or(false);
  if (only_if.keep == checks::OnlyIf::Keep::cold) card.keep = reading::Keep::refrigerator;
  if (!only_if.product.empty()) {
    product.id = only_if.product.front();
    card.product = &product;
  }
  return card;
}

bool holds(const std::vector<std::string>& ids, std::string_view id) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

std::string joined(const std::vector<std::string>& ids) {
  std::string out;
  for (const auto& id : ids) out += id + " ";
  return out;
}

bool class_is(reading::JarClass jar_class, std::string_view word) {
  return word == (jar_class == reading::JarClass::low_acid    ? "low-acid"
                  : jar_class == reading::JarClass::acidified ? "acidified"
                                                              : "");
}

/// Every kind of card that `only-if:` tells apart, with and without a process.
std::vector<Card> every_card() {
  using J = reading::JarClass;
  using M = reading::MethodKind;
  std::vector<Card> cards;
  for (const auto jar_class :
       {J::low_acid, J::acid, J::acidified, J::sugar_preserve, J::fermented, J::unknown})
    for (const auto method : {M::pressure, M::boiling_water})
      for (const bool processed : {true, false}) {
        Card card;
        card.jar_class = jar_class;
        card.method = method;
        card.processed = processed;
        cards.push_back(card);
      }
  return cards;
}

}  // namespace

TEST_CASE("each rule speaks of its own sentences and leaves its near misses alone") {
  const auto& steps = all_rules();
  for (const auto& error : steps.errors()) FAIL_CHECK(error.file << ": " << error.error.message);
  int flags = 0;
  int silent = 0;
  for (const auto& rule : steps.rules()) {
    if (rule.check != "practice-in-steps") continue;
    for (const auto& example : rule.examples) {
      if (!example.change.is_scalar()) continue;
      tested::Product product;
      const auto card = card_for(rule, example, product);
      const auto ids = steps.flagged(example.change.text, card);
      CAPTURE(rule.id);
      CAPTURE(example.change.text);
      CAPTURE(joined(ids));
      CHECK(holds(ids, rule.id) == example.flags);
      ++(example.flags ? flags : silent);
    }
  }
  MESSAGE(flags << " sentences flagged, " << silent << " silent");
  CHECK(flags > 1000);
  CHECK(silent > 600);
}

TEST_CASE("a rule that reads none of its words says nothing of them") {
  const auto& steps = all_rules();
  CHECK(steps.flagged("Turn the jars upside down for five minutes") == std::vector<std::string>{"inversion"});
  CHECK(steps.flagged("").empty());
}

TEST_CASE("no rule speaks of the sentences of careful directions, whatever the card") {
  const auto& steps = all_rules();
  std::ifstream file(SEALWORTHY_SOURCE_DIR "/tests/rules/innocent-steps.yaml");
  std::stringstream text;
  text << file.rdbuf();
  const auto held = text.str();
  const auto documents = yaml::read_documents(held);
  REQUIRE(documents.size() == 1);
  const auto* document = std::get_if<yaml::Document>(&documents.front());
  REQUIRE(document != nullptr);
  const auto* innocent = document->root().find("innocent");
  REQUIRE(innocent != nullptr);
  CHECK(innocent->items.size() >= 250);
  for (const auto& item : innocent->items) {
    tested::Product product;
    const auto sentence = item.is_map() ? item.find("step")->text : item.text;
    if (item.is_map()) product.id = std::string(item.find("product")->text);
    for (auto card : every_card()) {
      if (item.is_map()) card.product = &product;
      if (item.is_map() && !class_is(card.jar_class, item.find("class")->text)) continue;
      const auto ids = steps.flagged(sentence, card);
      CAPTURE(sentence);
      CAPTURE(joined(ids));
      CHECK(ids.empty());
    }
  }
}

TEST_CASE("advice that names a key of a card says that it is for a card: a page has no keys") {
  const std::set<std::string_view> process_keys{"method", "gauge", "pressure", "time", "altitude"};
  const auto of_a_card = [&](std::string_view key) {
    const auto keys = recipe::card_keys();
    return process_keys.contains(key) || std::find(keys.begin(), keys.end(), key) != keys.end();
  };
  int naming = 0;
  for (const auto& rule : all_rules().rules()) {
    for (const std::string_view advice :
         {std::string_view(rule.instead), std::string_view(rule.instead_if_never_canned)}) {
      for (auto tick = advice.find('`'); tick != std::string_view::npos; tick = advice.find('`', tick + 1)) {
        const auto words = advice.substr(tick + 1);
        const auto colon = words.find(':');
        if (colon == std::string_view::npos || !of_a_card(words.substr(0, colon))) continue;
        ++naming;
        CAPTURE(rule.id);
        CAPTURE(advice);
        CHECK(advice.find("card") != std::string_view::npos);
        CHECK_FALSE(advice.starts_with("Write `"));
      }
    }
  }
  CHECK(naming >= 15);
}
