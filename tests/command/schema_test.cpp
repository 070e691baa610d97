#include <doctest/doctest.h>

#include "command/run.hpp"

using sealworthy::test::Folder;
using sealworthy::test::run;
using sealworthy::test::shell;

namespace {

/// Validates by the reference implementation of JSON Schema in Python (Debian's python3-jsonschema).
void validate(const std::string& schema, const std::string& json) {
  const Folder folder;
  const auto file = folder.write("report.json", json);
  const auto ran = shell(
      "/usr/bin/python3 -c 'import json, sys, jsonschema\n"
      "schema = json.load(open(sys.argv[1]))\n"
      "jsonschema.Draft202012Validator.check_schema(schema)\n"
      "jsonschema.Draft202012Validator(schema).validate(json.load(open(sys.argv[2])))' " SEALWORTHY_SOURCE_DIR
      "/tests/schema/" +
      schema + " " + file);
  CAPTURE(ran.err);
  CHECK(ran.status == 0);
}

}  // namespace

TEST_CASE("the reports of all sample recipes fit the schema of check") {
  validate("check.schema.json", run("check --format json " SEALWORTHY_SOURCE_DIR "/sample-recipes").out);
}

TEST_CASE("explained reports and studies fit their schemas") {
  validate("check.schema.json",
           run("check --explain --format json " SEALWORTHY_SOURCE_DIR "/sample-recipes").out);
  validate("study.schema.json", run("study --format json " SEALWORTHY_SOURCE_DIR
                                    "/sample-recipes/thistle-lane/crushed-tomatoes.yaml")
                                    .out);
}

TEST_CASE("what was read of all sample recipes fits the schema of read") {
  validate("read.schema.json", run("read --format json " SEALWORTHY_SOURCE_DIR "/sample-recipes").out);
}

TEST_CASE("answers of lookup fit their schema") {
  for (const auto* words : {"green beans", "crushed tomatoes", "salsa", "soup", "kraut", "strawberry jam"})
    for (const auto* altitude : {"", " --altitude 7200ft", " --altitude 9,500ft"})
      validate("lookup.schema.json", run("lookup --format json " + std::string(words) + altitude).out);
}

TEST_CASE("plans fit their schema") {
  const std::string samples = SEALWORTHY_SOURCE_DIR "/sample-recipes/thistle-lane/";
  validate("plan.schema.json",
           run("plan --today 2026-08-31 --format json --jars 20 " + samples + "green-beans.yaml " + samples +
               "crushed-tomatoes.yaml " + samples + "peach-halves.yaml")
               .out);
}
