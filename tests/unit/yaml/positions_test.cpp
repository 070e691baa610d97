#include "reading.hpp"

using namespace sealworthy;
using namespace sealworthy::yaml;

TEST_CASE("keys and values stand where they are written") {
  const Document document = good(
      "recipe: Ridge road beans\n"
      "ingredients:\n"
      "  - 14 lb beans\n"
      "  - {food: onion, amount: \"2 cups\"}\n"
      "\n"
      "steps: |\n"
      "  Boil.\n");
  const Node& root = document.root();
  CHECK(root.at == Position{1, 1});
  CHECK(root.entry("recipe")->key_at == Position{1, 1});
  CHECK(root.find("recipe")->at == Position{1, 9});
  const Node& items = *root.find("ingredients");
  CHECK(items.at == Position{3, 3});
  CHECK(items.items[0].at == Position{3, 5});
  CHECK(items.items[1].at == Position{4, 5});
  CHECK(items.items[1].entry("food")->key_at == Position{4, 6});
  CHECK(items.items[1].entry("amount")->key_at == Position{4, 19});
  CHECK(items.items[1].find("amount")->at == Position{4, 27});
  CHECK(items.items[1].find("amount")->quoted);
  CHECK_FALSE(items.items[1].find("food")->quoted);
  CHECK(root.find("steps")->at == Position{6, 8});
  CHECK(root.find("steps")->quoted);
  CHECK(root.find("steps")->text == "Boil.\n");
  CHECK(root.find("nothing") == nullptr);
}

// The parser's own columns count bytes; ours count code points.
TEST_CASE("columns count code points, also on lines read out of order") {
  const Document document = good("crème: {jalapeño: ½, 日本: 梅干し, 🍅: z}\nend: ½\n");
  const Node& map = *document.root().find("crème");
  CHECK(map.at == Position{1, 8});
  CHECK(map.entries[0].key_at == Position{1, 9});
  CHECK(map.entries[0].value.at == Position{1, 19});
  CHECK(map.entries[1].key_at == Position{1, 22});
  CHECK(map.entries[1].value.at == Position{1, 26});
  CHECK(map.entries[2].key_at == Position{1, 31});
  CHECK(map.entries[2].value.at == Position{1, 34});
  CHECK(document.root().find("end")->at == Position{2, 6});
  CHECK(bad("½ ½: x\nñé: a: b\n").at == Position{2, 6});
}

TEST_CASE("a byte order mark, CRLF and CR alone change no place") {
  for (const std::string text : {"\xEF\xBB\xBF"
                                 "a: 1\r\nb:\r\n  - x\r\n  - \"y\r\n    z\"\r\n",
                                 "\xEF\xBB\xBF"
                                 "a: 1\rb:\r  - x\r  - \"y\r    z\"\r",
                                 "a: 1\nb:\n  - x\n  - \"y\n    z\"\n"}) {
    CAPTURE(text);
    const Document document = good(text);
    CHECK(flow(document.root()) == R"({a: "1", b: ["x", "y z"]})");
    CHECK(document.root().at == Position{1, 1});
    CHECK(document.root().find("b")->items[1].at == Position{4, 5});
  }
}

TEST_CASE("an empty value stands where it would be written") {
  const Document document = good(
      "recipe:\n"
      "\"follows\":   # later\n"
      "ingredients:\n"
      "  -\n"
      "  - a\n"
      "  -  # none\n"
      "\n"
      "  - ~\n"
      "notes: null\n"
      "jars: {a, b: , c: ~}\n"
      "last:");
  const Node& root = document.root();
  CHECK(
      flow(root) ==
      R"({recipe: ~, follows: ~, ingredients: [~, "a", ~, ~], notes: ~, jars: {a: ~, b: ~, c: ~}, last: ~})");
  CHECK(root.find("recipe")->at == Position{1, 9});
  CHECK(root.find("follows")->at == Position{2, 12});
  CHECK(root.find("ingredients")->items[0].at == Position{4, 5});
  CHECK(root.find("ingredients")->items[2].at == Position{6, 5});
  CHECK(root.find("ingredients")->items[3].at == Position{8, 5});
  CHECK(root.find("notes")->at == Position{9, 8});
  CHECK(root.find("jars")->find("a")->at == Position{10, 9});
  CHECK(root.find("jars")->find("c")->at == Position{10, 19});
  CHECK(root.find("last")->at == Position{11, 7});
}

TEST_CASE("an alias stands at its own place and shares what it repeats") {
  const Document document = good("a: &x {k: v}\nb: *x\n");
  const Node& b = *document.root().find("b");
  CHECK(b.at == Position{2, 4});
  CHECK(b.entries.data() == document.root().find("a")->entries.data());
  CHECK(b.find("k")->at == Position{1, 11});
}

TEST_CASE("a merge key is a key like any other, and !!tags say nothing") {
  CHECK(flow(good("a: &x {k: v}\nb: {<<: *x}\n").root()) == R"({a: {k: "v"}, b: {<<: {k: "v"}}})");
  const Document document = good("a: !!str 5\nb: !!int 5\nc: !!str null\nd: !!seq [1]\n");
  CHECK(flow(document.root()) == R"({a: "5", b: "5", c: "null", d: ["1"]})");
  CHECK(document.root().find("a")->quoted);
  CHECK_FALSE(document.root().find("b")->quoted);
}
