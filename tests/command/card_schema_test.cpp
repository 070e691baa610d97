#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "command/cards.hpp"
#include "command/run.hpp"

using sealworthy::test::beans;
using sealworthy::test::Folder;
using sealworthy::test::replaced;
using sealworthy::test::run;
using sealworthy::test::shell;

namespace {

/// Whether each card fits the editors' schema, by the reference implementation in Python (python3-jsonschema,
/// python3-yaml): "fits" or the place of the first error, one a line.
std::string fits(const std::string& paths) {
  const auto ran = shell(
      "/usr/bin/python3 -c 'import json, sys, jsonschema, yaml\n"
      "schema = json.load(open(sys.argv[1]))\n"
      "jsonschema.Draft7Validator.check_schema(schema)\n"
      "validator = jsonschema.Draft7Validator(schema)\n"
      "for path in sys.argv[2:]:\n"
      "  for card in yaml.safe_load_all(open(path)):\n"
      "    card = json.loads(json.dumps(card, default=str))\n"
      "    error = jsonschema.exceptions.best_match(validator.iter_errors(card))\n"
      "    print(\"fits\" if error is None else path + \" \" + error.message[:200])' " SEALWORTHY_CARD_SCHEMA
      " " +
      paths);
  CHECK(ran.err.empty());
  return ran.out;
}

std::string fits_text(const std::string& card) {
  const Folder folder;
  return fits(folder.write("card.yaml", card));
}

}  // namespace

TEST_CASE("every sample card that can be read fits the schema of the card") {
  const auto all = fits("$(find " SEALWORTHY_SOURCE_DIR
                        "/sample-recipes -name '*.yaml' ! -name kitchen.yaml ! -name slipped.yaml | sort)");
  CAPTURE(all);
  CHECK(all.size() > 10 * 5);
  CHECK(all.find_first_not_of("fits\n") == std::string::npos);
  CHECK(fits(SEALWORTHY_SOURCE_DIR "/sample-recipes/larder-site/recipes/suppers/slipped.yaml")
            .find("headspce") != std::string::npos);
}

TEST_CASE("the schema takes every form of a card that the program takes, and no other") {
  struct Form {
    std::string from, to;
    bool good;
  };
  const std::vector<Form> forms = {
      {"jars: pint", "jars: [pint, {size: quart, mouth: wide}]", true},
      {"jars: pint", "jars: {mouth: wide}", false},
      {"jars: pint", "jar: pint", false},
      {"pack: raw", "pack: Raw pack", true},
      {"pack: raw", "pack: cold", false},
      {"pack: raw", "units: Metric", true},
      {"pack: raw", "units: stone", false},
      {"  - boiling water\n", "  - {food: onion, amount: 2 cups, state: [chopped]}\n", true},
      {"  - boiling water\n", "  - {food: onion, amont: 2 cups}\n", false},
      {"  - boiling water\n", "  - {amount: 2 cups}\n", false},
      {"  - boiling water\n", "  - each jar: 1 teaspoon canning salt\n", true},
      {"  - boiling water\n", "  - each quart: {food: salt, amount: 1 teaspoon}\n", true},
      {"  - boiling water\n", "  - {each jar: 1 teaspoon salt, jar: quart}\n", true},
      {"  - boiling water\n", "  - {each jar: 1 teaspoon salt, lid: new}\n", false},
      {"  - boiling water\n", "  - [water]\n", false},
      {"recipe: Hollow Farm beans\n", "", false},
      {"recipe: Hollow Farm beans", "recipe: [a, b]", false},
      {"headspace: 1 inch", "headspce: 1 inch", false},
      {"headspace: 1 inch", "headspace: {inches: 1}", false},
      {"headspace: 1 inch", "lids:", true},
      {"headspace: 1 inch", "steps: Fill the jars.", true},
      {"headspace: 1 inch", "steps: [{fill: jars, cover: them}]", false},
      {"headspace: 1 inch", "follows: beans-snap-and-italian-pieces", true},
      {"headspace: 1 inch",
       "accept: {rule: headspace-unsaid, because: it is on the label, until: 2999-12-31}", true},
      {"headspace: 1 inch", "accept: {rule: headspace-unsaid}", false},
      {"headspace: 1 inch", "accept: {because: it is on the label}", false},
      {"headspace: 1 inch", "accept: {rule: headspace-unsaid, because: so, until: tomorrow}", false},
      {"process:\n", "process:\n  minutes: 20\n", false},
  };
  for (const auto& form : forms) {
    CAPTURE(form.to);
    const auto card = replaced(beans, form.from, form.to);
    CHECK((fits_text(card) == "fits\n") == form.good);
    // The program is the measure: it reads the card just where the schema takes it.
    CHECK((run("check --fail-on never -", card).status == 0) == form.good);
  }
}

TEST_CASE("the schema offers the ids of processes and rules, and takes those of other rule files") {
  const auto ran = shell(
      "/usr/bin/python3 -c 'import json, sys\n"
      "d = json.load(open(sys.argv[1]))[\"definitions\"]\n"
      "ids = lambda name: d[name][\"anyOf\"][0][\"enum\"]\n"
      "print(\"beans-snap-and-italian-pieces\" in ids(\"process_id\"), \"headspace-too-little\" in "
      "ids(\"rule_id\"))\n"
      "missing = [k for k, v in json.load(open(sys.argv[1]))[\"properties\"].items() if \"description\" not "
      "in "
      "json.dumps(v) and \"headspace\" not in k]\n"
      "print(missing)' " SEALWORTHY_CARD_SCHEMA);
  CHECK(ran.out == "True True\n[]\n");
  CHECK(fits_text(replaced(beans, "pack: raw", "pack: raw\nfollows: a-process-of-the-house")) == "fits\n");
}
