#include "yaml/shorten.hpp"

#include "reading.hpp"

using namespace sealworthy;
using namespace sealworthy::yaml;

TEST_CASE("long texts at the end of a line are stood in for, the rest stays") {
  ShortText out;
  shorten(
      "recipe: Ridge road beans  \r\n- note: boil it well\nfew: words\na: b: c and more\n  - ½ cup of salt",
      out);
  CHECK(out.text == "recipe: x\n- note: x\nfew: words\na: b: c and more\n  - x");
  REQUIRE(out.stand_ins.size() == 3);
  CHECK(out.stand_ins[0].text == "Ridge road beans");
  CHECK(out.stand_ins[0].dropped == 18);
  CHECK(out.stand_ins[1].line == 1);
  CHECK(out.stand_ins[1].column == 8);
  CHECK(out.stand_ins[2].text == "½ cup of salt");
}

TEST_CASE("what may be more than one line of plain text is left alone") {
  ShortText out;
  for (const std::string_view text :
       {"a: some words\n  and more\n", "a: some words\n\n\n   and more\n",
        "a: |\n  b: some words\n\n  c: some words\n", "- >-\n  some words: more words\n", "a: 'some words'\n",
        "a: some words # remark\n", "a: see: words\n", "a: \"some words\n", "a: [some words]\n",
        "# a: some words\n", "a:some words\n", "-some words\n", "a: &x some words\n", "a: some\twords\n",
        "some words\n", "--- some words\n"}) {
    CAPTURE(std::string(text));
    shorten(text, out);
    CHECK(out.text == text);
    CHECK(out.stand_ins.empty());
  }
}

TEST_CASE("a stand-in that is not read as what it stands for is not taken") {
  const std::pair<std::string, std::string> cases[] = {
      {"{a: [\n  b, c: 1,\nd: many words, of them\n]}\n",
       R"({a: ["b", {c: "1"}, {d: "many words"}, "of them"]})"},
      {"a: &x |-\n  b: many words\n", R"({a: "b: many words"})"},
      {"a: !!str >-\n  - many words\n  - more words\n", R"({a: "- many words - more words"})"},
      {"a: 'quoted\n  b: many words\n  '\n", R"({a: "quoted b: many words "})"},
      {"? |\n  - many words\n: value of it\n", "{- many words\n: \"value of it\"}"},
  };
  for (const auto& c : cases) {
    CAPTURE(c.first);
    CHECK(flow(good(c.first).root()) == c.second);
  }
}

// A remark after a text keeps it from being stood in for, and means nothing.
TEST_CASE("values and places are the same with and without stand-ins") {
  const std::string_view lines[] = {"recipe: Ridge road béans and ½ more",
                                    "ingredients:",
                                    "  - 14 lb green beans, cut",
                                    "  - each jar: 1 teaspoon canning salt",
                                    "  -",
                                    "  - {food: onion, amount: 2 cups}",
                                    "process:",
                                    "  - method: pressure canner",
                                    "    time: 25 minutes",
                                    "notes:",
                                    "makes: 7 quart jars",
                                    "last: the last of the words"};
  std::string bare;
  std::string remarked;
  for (const std::string_view line : lines) {
    bare += std::string(line) + "\n";
    remarked += std::string(line) + "  # remark\n";
  }
  const Document a = good(bare);
  const Document b = good(remarked);
  CHECK(flow(a.root()) == flow(b.root()));
  CHECK(places(a.root()) == places(b.root()));
}
