#include "reading.hpp"

using namespace sealworthy;
using namespace sealworthy::yaml;

namespace {

struct Case {
  std::string text;
  Position at;
  const char* says;           // part of the message
  const char* suggests = "";  // part of the suggestion
};

}  // namespace

TEST_CASE("each mistake is told at its place, in words") {
  const Case cases[] = {
      {"recipe: 'tis\nsteps: a\n", {1, 9}, "never closed"},
      {"a:\n  - \"1 cup beans\n  - 2 cups water\n", {2, 5}, "never closed", "other kind of quotes"},
      {"a: &x \"b\nc: d\n", {1, 7}, "never closed"},
      {"a:\n  - \"1 cup beans\n  - \"2 cups\nb: c\n", {2, 5}, "closes only on a later line"},
      {"a:\n  - \"Grandma's\" beans\n", {2, 17}, "after the closing quote"},
      {"a: \"b\" \"c\"\n", {1, 8}, "after the closing quote"},
      {"a: [b, \"c\" d]\n", {1, 12}, "after the closing quote"},
      {"recipe: Beans: and peas\n", {1, 14}, "A colon followed by a space", "'Beans: and peas'"},
      {"steps:\n  - Boil: it's done: fill\n",
       {2, 20},
       "A colon followed by a space",
       "'Boil: it''s done: fill'"},
      {"recipe: Béans: peas\n", {1, 14}, "A colon followed by a space"},
      {"recipe:Beans\nsteps: a\n", {1, 7}, "no space after this colon", "recipe: Beans"},
      {"recipe: Beans\ntime:25\nsteps: a\n", {2, 5}, "no space after this colon"},
      {"recipe: Beans\ntime:25\n", {2, 5}, "no space after this colon"},
      {"recipe: Beans\nsteps\n  - a\nlids: b\n", {2, 1}, "no colon after `steps`"},
      {"recipe: Beans\nsteps\n", {2, 1}, "no colon after `steps`"},
      {"a:\n- b\n-c\n- d\n", {3, 1}, "no space after the dash"},
      {"a:\n- b\n-c\n", {3, 1}, "no space after the dash"},
      {"recipe: x\n  makes: 7\n", {2, 3}, "`makes` is indented as if", "same column"},
      {"a:\n  - b\n - c\n", {3, 2}, "does not line up", "same column"},
      {"a:\n    b: 1\n  c: 2\n", {3, 3}, "does not line up"},
      {"a:\n  - b\n   - c\n", {3, 4}, "begins with a dash, but is indented"},
      {"a:\n\t- b\n", {2, 1}, "indented with a tab", "spaces"},
      {"a:\n  b: 1\n\tc: 2\n", {3, 1}, "indented with a tab"},
      {"a:\n  \tb\n", {2, 3}, "indented with a tab"},
      {"a:\n  - *optional* salt\n", {2, 5}, "`*` or `&`", "quotes"},
      {"a: *salt\n", {1, 4}, "`*` or `&`"},
      {"a: & salt\n", {1, 5}, "`*` or `&`"},
      {"a: &x [*x]\n", {1, 8}, "contains it"},
      {"a:\n  - @home\n", {2, 5}, "can't begin with `@`"},
      {"a: `b`\n", {1, 4}, "can't begin with ``"},
      {"a: % b\n", {1, 4}, "can't begin with `%`"},
      {"a: > 5 lb\n", {1, 4}, "`|` or `>`"},
      {"a: !important b\n", {1, 4}, "begins with `!`"},
      {"a: ! b\n", {1, 4}, "begins with `!`"},
      {"a: !x [b]\n", {1, 4}, "begins with `!`"},
      {"a: \"1\\q\"\n", {1, 6}, "backslash"},
      {"a: [b, c\nd: e\n", {1, 4}, "bracket is opened here", "`]`"},
      {"a: {b: c\n", {1, 4}, "bracket is opened here", "`}`"},
      {"a: [b c}\n", {1, 8}, "does not match"},
      {"a: [b]]\n", {1, 7}, "does not match"},
      {"a: [b] c\n", {1, 8}, "can't follow"},
      {"a: 1\nb: 2\na: 3\n", {3, 1}, "`a` is given twice; the first is on line 1"},
      {"a: {b: 1, \"b\": 2}\n", {1, 11}, "`b` is given twice"},
      {": 4\n", {1, 1}, "no name before this colon"},
      {"~: 4\n", {1, 1}, "no name before this colon"},
      {"[a]: 4\n", {1, 1}, "list or map stands here"},
      {"? {a: b}\n: 4\n", {1, 3}, "list or map stands here"},
      {"- a\nb: c\n", {2, 1}, "at its end here"},
      {"[a]\n[b]\n", {2, 1}, "at its end here"},
      {"a: b\n... c\n", {2, 5}, "at its end here"},
      {"a: b\n%c\n", {2, 1}, "instruction to YAML readers"},
      {"a:\n  - 1 #10 can tomatoes\n", {2, 7}, "would end before `#10 can tomatoes`", "quotes"},
      {"a: \x01\n", {1, 4}, "control character (U+0001)"},
      {"a: b\xC2\x85\n  \xC2\x9F\n", {2, 3}, "control character (U+009F)"},
      {"½: \xC3\x28\n", {1, 4}, "not UTF-8", "UTF-8"},
      {"a: \xED\xA0\x80\n", {1, 4}, "not UTF-8"},
      {"a: 1\nb: \xC3", {2, 4}, "not UTF-8"},
      {"\xFF\xFE"
       "a",
       {1, 1},
       "UTF-16",
       "UTF-8"},
      {"\xFE\xFF"
       "a",
       {1, 1},
       "UTF-16"},
  };
  for (const Case& c : cases) {
    CAPTURE(c.text);
    const Error error = bad(c.text);
    CHECK(error.at == c.at);
    CHECK_MESSAGE(error.message.find(c.says) != std::string::npos, error.message);
    CHECK_MESSAGE(error.suggestion.find(c.suggests) != std::string::npos, error.suggestion);
    CHECK_FALSE(error.suggestion.empty());
    CHECK_MESSAGE(error.message.find("yaml-cpp") == std::string::npos, error.message);
  }
}

TEST_CASE("what looks like a mistake but is none") {
  const std::pair<std::string, std::string> cases[] = {
      {"a: water  # 2 cups\n", R"({a: "water"})"},
      {"a: '#10 can'  #10\n", R"({a: "#10 can"})"},
      {"a: {b: c, \"d #1\": e}\n", R"({a: {b: "c", d #1: "e"}})"},
      {"a: 1\" pieces\n", R"({a: "1" pieces"})"},
      {"a: it's 5:15 o'clock\n", R"({a: "it's 5:15 o'clock"})"},
      {"a: b\n  c - d\n", R"({a: "b c - d"})"},
      {"a: \"b\n  - c\"\n", R"({a: "b - c"})"},
      {"a: |\n  b\n  \tc: d\n", "{a: \"b\n\tc: d\n\"}"},
      {"{\n\t\"a\": [\n\t\t1\n\t]\n}\n", R"({a: ["1"]})"},
      {"a:\tb\n", R"({a: "b"})"},
      {"a: b\n\t# remark\n", R"({a: "b"})"},
      {"a: b\n \t\n\t\r\nc: d\n\t", R"({a: "b", c: "d"})"},
      {"a: \"x\\\"y\"\n", R"({a: "x"y"})"},
      {"a: &x \"b\"\n", R"({a: "b"})"},
      {"? a\n? b\n", "{a: ~, b: ~}"},
      {"a: 100% cider\n", R"({a: "100% cider"})"},
  };
  for (const auto& c : cases) {
    CAPTURE(c.first);
    CHECK(flow(good(c.first).root()) == c.second);
  }
}

TEST_CASE("a zero byte makes the whole file no text") {
  using namespace std::string_literals;
  const Error error = bad("a: 1\n---\nb: \0\n"s);
  CHECK(error.at == Position{3, 4});
  CHECK(error.message.find("not a text file") != std::string::npos);
}
