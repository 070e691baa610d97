#include "reading.hpp"

using namespace sealworthy;
using namespace sealworthy::recipe;

namespace {

// What a mistake is put after or before, to make a whole card.
constexpr const char* head = "recipe: Beans\n";
constexpr const char* body = "ingredients: [beans]\n";

}  // namespace

TEST_CASE("keys") {
  const Mistake mistakes[] = {
      {"headspce: 1 inch\n", {3, 1}, "`headspce` is not a key of a recipe card", "`headspace:`"},
      {"ingrediants: [a]\n", {3, 1}, "`ingrediants`", "`ingredients:`"},
      {"Jars: pint\n", {3, 1}, "`Jars`", "`jars:`"},
      {"title: Beans\n", {3, 1}, "`title`", "`recipe:`"},
      {"time: 25 minutes\n", {3, 1}, "`time`", "under `process:`"},
      {"canners: []\n", {3, 1}, "`canners`", "kitchen.yaml"},
      {"zucchini: 5\n", {3, 1}, "`zucchini`", "Known here: recipe, follows"},
      {"<<: {jars: pint}\n", {3, 1}, "`<<`", "Known here"},
      {"process: {methd: oven}\n", {3, 11}, "`methd` is not a key of `process:`", "`method:`"},
      {"process: {altitude: 0-1,000 ft}\n", {3, 25}, "`000 ft` is not a key of `process:`", "in quotes"},
      {"process: {title: oven}\n", {3, 11}, "`title`", "Known here: method, gauge"},
      {"jars: {sze: quart}\n", {3, 8}, "not a key of a jar", "`size:`"},
      {"accept: [{rul: a, because: b}]\n", {3, 11}, "not a key of `accept:`", "`rule:`"},
      {"headspce: ~\n", {3, 1}, "`headspce`", "`headspace:`"},
  };
  for (const Mistake& m : mistakes) check(m, card_error(head + std::string(body) + m.text));
}

TEST_CASE("values of the wrong kind, and empty ones") {
  const Mistake mistakes[] = {
      {"follows: [a, b]\n", {3, 10}, "`follows:` takes one text, but holds a list", ""},
      {"lids: {a: b}\n", {3, 7}, "holds names and values", ""},
      {"makes: ''\n", {3, 8}, "`makes:` is empty", ""},
      {"jars: []\n", {3, 7}, "list of `jars:` is empty", ""},
      {"jars: [[quart]]\n", {3, 8}, "takes one text", ""},
      {"jars: {mouth: wide}\n", {3, 7}, "no size", ""},
      {"jars: {size: quart, mouth: narrow}\n", {3, 28}, "`mouth:` can't be `narrow`", "one of: wide"},
      {"jars: {size: wide-mouth quart, mouth: regular}\n", {3, 7}, "both wide and regular", ""},
      {"jars: pints with lids\n", {3, 7}, "", "[pint, quart]"},
      {"process: boiling water, 35 minutes\n", {3, 10}, "`process:` holds a text", "`method:`"},
      {"process: []\n", {3, 10}, "list of `process:` is empty", ""},
      {"process: {}\n", {3, 10}, "says nothing", ""},
      {"process:\n  - oven\n", {4, 5}, "holds a text", ""},
      {"process:\n  time: [25 minutes]\n", {4, 9}, "`time:` takes one text", ""},
      {"steps: {a: b}\n", {3, 8}, "takes this step for a name and a value: `a: b`", "- 'a: b'"},
      {"steps:\n  - Boil it.\n  - Then: it's done\n", {5, 5}, "`Then: it's done`", "- 'Then: it''s done'"},
      {"steps:\n  - [boil]\n", {4, 5}, "`steps:` takes one text", ""},
      {"accept: sugar-changed\n", {3, 9}, "holds a text", "because: the reason"},
      {"accept: [{rule: a}]\n", {3, 10}, "no reason for a", "`because:`"},
      {"accept: [{because: a}]\n", {3, 10}, "which rule", ""},
      {"accept: [{rule: a, because: ' '}]\n", {3, 29}, "`because:` is empty", ""},
      {"pack: hott\n", {3, 7}, "`pack:` can't be `hott`", "`hot`"},
      {"pack: cold\n", {3, 7}, "can't be `cold`", "hot, raw"},
      {"units: american\n", {3, 8}, "`units:` can't be `american`", "us, metric, imperial"},
      {"process: {gauge: dail}\n", {3, 18}, "`gauge:` can't be `dail`", "`dial`"},
  };
  for (const Mistake& m : mistakes) check(m, card_error(head + std::string(body) + m.text));
}

TEST_CASE("figures that can't be read, or are absurd") {
  const Mistake mistakes[] = {
      {"makes: plenty\n", {3, 8}, "", ""},
      {"headspace: a thumb\n", {3, 12}, "", ""},
      {"headspace: 40 inches\n", {3, 12}, "", ""},
      {"process:\n  time: 25 parsecs\n", {4, 9}, "", ""},
      {"process:\n  time: -5 minutes\n", {4, 9}, "", ""},
      {"process:\n  pressure: 1100 psi\n", {4, 13}, "", ""},
      {"process:\n  altitude: 90,000 ft\n", {4, 13}, "", ""},
      {"process:\n  - {time: 5 min, jars: bucket}\n", {4, 25}, "", ""},
  };
  for (const Mistake& m : mistakes) check(m, card_error(head + std::string(body) + m.text));
}

TEST_CASE("ingredients") {
  const Mistake mistakes[] = {
      {"ingredients: 2 lb beans\n", {2, 14}, "is a list, but here it holds a text", "after a dash"},
      {"ingredients: {beans: 2 lb}\n", {2, 14}, "holds names and values", ""},
      {"ingredients: []\n", {2, 14}, "holds no ingredient", ""},
      {"ingredients:\n", {2, 1}, "no ingredients", ""},
      {"ingredients:\n  - beans\n  -\n", {4, 5}, "is empty", "delete the dash"},
      {"ingredients:\n  - ' '\n", {3, 5}, "is empty", ""},
      {"ingredients:\n  - salt: 1 teaspoon\n", {3, 5}, "`salt: 1 teaspoon`", "quotes: - 'salt: 1 teaspoon'"},
      {"ingredients:\n  - 2 lb tomatoes: peeled\n",
       {3, 5},
       "Because of its colon",
       "quotes: - '2 lb tomatoes: peeled'"},
      {"ingredients:\n  - 1\" pieces: carrots\n", {3, 5}, "`1\" pieces: carrots`", "- '1\" pieces: carrots'"},
      {"ingredients:\n  - 2 lb tomatoes:\n", {3, 5}, "`2 lb tomatoes:`", "quotes"},
      {"ingredients:\n  - a: b\n    c: d\n", {3, 5}, "`a: b`", "whole line in quotes"},
      {"ingredients:\n  - [1 lb beans]\n", {3, 5}, "this one is a list", ""},
      {"ingredients:\n  - - beans\n", {3, 5}, "this one is a list", ""},
      {"ingredients:\n  - {}\n", {3, 5}, "says nothing", ""},
      {"ingredients:\n  - {amount: 2 cups, state: cut}\n", {3, 5}, "which food", ""},
      {"ingredients:\n  - {fod: beans, amount: 2 cups}\n",
       {3, 6},
       "`fod` is not a key of an ingredient",
       "`food:`"},
      {"ingredients:\n  - {food: beans, amuont: 2 cups}\n", {3, 19}, "`amuont`", "`amount:`"},
      {"ingredients:\n  - {food: [beans]}\n", {3, 12}, "`food:` takes one text", ""},
      {"ingredients:\n  - {food: beans, state: []}\n", {3, 26}, "list of `state:` is empty", ""},
      {"ingredients:\n  - {food: beans, amount: -2 cups}\n", {3, 27}, "less than nothing", ""},
      {"ingredients:\n  - -2 cups beans\n", {3, 5}, "less than nothing", "minus"},
      {"ingredients:\n  - each jar:\n", {3, 15}, "holds nothing", "each jar: 1 teaspoon"},
      {"ingredients:\n  - each jar: [salt, dill]\n", {3, 15}, "holds a list", ""},
      {"ingredients:\n  - each bucket: salt\n", {3, 5}, "", ""},
      {"ingredients:\n  - {each quart: salt, jar: pint}\n", {3, 24}, "given twice", ""},
      {"ingredients:\n  - {each jar: salt, size: pint}\n", {3, 22}, "`size` is not a key", "jar"},
      {"ingredients:\n  - per jar: salt\n", {3, 5}, "`per jar:` is not known", "`each jar:`"},
  };
  for (const Mistake& m : mistakes) check(m, card_error(head + m.text));
}

TEST_CASE("what is no card") {
  const Mistake mistakes[] = {
      {"beans\n", {1, 1}, "not a recipe card: it holds a text", "`recipe:`"},
      {"- beans\n", {1, 1}, "not a recipe card: it holds a list", ""},
      {"ingredients: [beans]\n", {1, 1}, "no name", "recipe: "},
      {"\nrecipe:\ningredients: [beans]\n", {2, 1}, "no name", ""},
      {"recipe: Beans\n", {1, 1}, "no ingredients", ""},
      {"--- ~\n", {1, 5}, "it holds nothing", ""},
      {"kitchen: Ridge road\n", {1, 1}, "`kitchen` is not a key", "kitchen.yaml"},
      {"recipe: Beans\nnotes: [Ours take 5 minutes less.]\ningredients: [beans]\n",
       {2, 1},
       "`notes` is not a key",
       "among the `steps:`"},
  };
  for (const Mistake& m : mistakes) check(m, card_error(m.text));
}

TEST_CASE("the first wrong thing in the card is the one that is told") {
  CHECK(card_error("recipe: Beans\npack: hott\njars: bucket\nzz: 1\n").at == Position{2, 7});
}
