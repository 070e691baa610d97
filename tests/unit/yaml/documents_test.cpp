#include "reading.hpp"

using namespace sealworthy;
using namespace sealworthy::yaml;

namespace {

/// "1 {..} | 2 bad 3:4 | ..." for the documents of a text.
std::string outline(std::string_view text) {
  std::string out;
  for (const DocumentOrError& d : read_documents(text)) {
    out += out.empty() ? "" : " | ";
    if (const auto* document = std::get_if<Document>(&d)) {
      out += std::to_string(document->number()) + " " + flow(document->root());
    } else {
      const auto& bad = std::get<BadDocument>(d);
      out += std::to_string(bad.number) + " bad " + std::to_string(bad.error.at.line) + ":" +
             std::to_string(bad.error.at.column);
    }
  }
  return out;
}

}  // namespace

TEST_CASE("nothing written is no document") {
  for (const std::string_view text :
       {"", "\n", "  \n# only a remark\n", "---\n", "---\n---\n...\n", "--- # remark\n\n...\n# end\n",
        "\xEF\xBB\xBF", "%YAML 1.2\n---\n# nothing\n"}) {
    CAPTURE(text);
    CHECK(outline(text).empty());
  }
}

TEST_CASE("documents are counted as written, and markers with nothing between are not") {
  CHECK(outline("a: 1\n---\na: 2\n") == R"(1 {a: "1"} | 2 {a: "2"})");
  CHECK(outline("---\na: 1\n---\n# remark\n---\na: 2\n...\n") == R"(1 {a: "1"} | 2 {a: "2"})");
  CHECK(outline("--- a\n---\tb\n---\r\nc\r\n") == R"(1 "a" | 2 "b" | 3 "c")");
  CHECK(outline("a: 1\n...\nb: 2\n") == R"(1 {a: "1"} | 2 {b: "2"})");
  CHECK(outline("--- ~\n--- null\n") == "1 ~ | 2 ~");
  CHECK(outline("a: ---\nb: x --- y\n----: 1\n") == R"(1 {a: "---", b: "x --- y", ----: "1"})");
}

TEST_CASE("a bad document does not stop those after it, and lines stay those of the file") {
  CHECK(outline("recipe: a\n---\nrecipe: \"b\nsteps: c\n---\nrecipe: d: e\n---\n  recipe: f\n") ==
        R"(1 {recipe: "a"} | 2 bad 3:9 | 3 bad 6:10 | 4 {recipe: "f"})");
  CHECK(outline("a: [1\n---\nb: 2\n...\n}\n---\nc: \xFF\n---\nd: 4\n---\n\te: 5\n") ==
        R"(1 bad 1:4 | 2 {b: "2"} | 3 bad 5:1 | 4 bad 7:4 | 5 {d: "4"} | 6 bad 11:1)");
}

TEST_CASE("a document can be dropped, and its copies live on") {
  auto documents = read_documents("a: first\n---\nb: second\n");
  Document kept = std::get<Document>(documents[1]);
  documents.clear();
  CHECK(kept.root().find("b")->text == "second");
  const Document copy = kept;
  kept = {};
  CHECK(copy.root().find("b")->text == "second");
}

TEST_CASE("nothing is kept of the bytes that were read") {
  std::string text = "recipe: beans\n";
  const Document document = good(text);
  text.assign(text.size(), 'x');
  CHECK(flow(document.root()) == R"({recipe: "beans"})");
}

// Source of the texts and of what they mean: YAML Ain't Markup Language, version 1.2, revision 1.2.2
// (2021-10-01), the examples of the numbers given.
TEST_CASE("examples of the YAML 1.2.2 specification") {
  SUBCASE("2.3, 2.4: mappings and sequences") {
    CHECK(
        outline(
            "american:\n- Boston Red Sox\n- Detroit Tigers\nnational:\n- New York Mets\n- Chicago Cubs\n") ==
        R"(1 {american: ["Boston Red Sox", "Detroit Tigers"], national: ["New York Mets", "Chicago Cubs"]})");
    CHECK(outline("-\n  name: Mark McGwire\n  hr:   65\n-\n  name: Sammy Sosa\n  hr:   63\n") ==
          R"(1 [{name: "Mark McGwire", hr: "65"}, {name: "Sammy Sosa", hr: "63"}])");
  }
  SUBCASE("2.5, 2.6: flow style") {
    CHECK(outline("- [name        , hr, avg  ]\n- [Mark McGwire, 65, 0.278]\n") ==
          R"(1 [["name", "hr", "avg"], ["Mark McGwire", "65", "0.278"]])");
    CHECK(outline("Mark McGwire: {hr: 65, avg: 0.278}\nSammy Sosa: {\n    hr: 63,\n    avg: 0.288,\n }\n") ==
          R"(1 {Mark McGwire: {hr: "65", avg: "0.278"}, Sammy Sosa: {hr: "63", avg: "0.288"}})");
  }
  SUBCASE("2.7: two documents") {
    CHECK(outline("# Ranking of 1998 home runs\n---\n- Mark McGwire\n- Sammy Sosa\n- Ken Griffey\n\n# Team "
                  "ranking\n"
                  "---\n- Chicago Cubs\n- St Louis Cardinals\n") ==
          R"(1 ["Mark McGwire", "Sammy Sosa", "Ken Griffey"] | 2 ["Chicago Cubs", "St Louis Cardinals"])");
  }
  SUBCASE("2.10: an anchor and its alias") {
    const Document document = good(
        "---\nhr:\n- Mark McGwire\n# Following node labeled SS\n- &SS Sammy Sosa\nrbi:\n- *SS\n- Ken "
        "Griffey\n");
    CHECK(flow(document.root()) ==
          R"({hr: ["Mark McGwire", "Sammy Sosa"], rbi: ["Sammy Sosa", "Ken Griffey"]})");
    CHECK(document.root().find("rbi")->items[0].at == Position{7, 3});
  }
  SUBCASE("2.13, 2.15, 2.17, 2.18: scalars") {
    CHECK(outline("--- |\n  \\//||\\/||\n  // ||  ||__\n") == "1 \"\\//||\\/||\n// ||  ||__\n\"");
    CHECK(outline("--- >\n  Mark McGwire's\n  year was crippled\n  by a knee injury.\n") ==
          "1 \"Mark McGwire's year was crippled by a knee injury.\n\"");
    CHECK(
        outline("unicode: \"Sosa did fine.\\u263A\"\nsingle: '\"Howdy!\" he cried.'\n"
                "quoted: ' # Not a ''comment''.'\ntie-fighter: '|\\-*-/|'\n") ==
        R"(1 {unicode: "Sosa did fine.☺", single: ""Howdy!" he cried.", quoted: " # Not a 'comment'.", tie-fighter: "|\-*-/|"})");
    CHECK(outline("plain:\n  This unquoted scalar\n  spans many lines.\n\nquoted: \"So does this\n  quoted "
                  "scalar.\\n\"\n") ==
          "1 {plain: \"This unquoted scalar spans many lines.\", quoted: \"So does this quoted scalar.\n\"}");
  }
  SUBCASE("8.4: chomping of the last line break") {
    CHECK(outline("strip: |-\n  text\nclip: |\n  text\nkeep: |+\n  text\n") ==
          "1 {strip: \"text\", clip: \"text\n\", keep: \"text\n\"}");
  }
  SUBCASE("9.2, 9.3: document markers") {
    CHECK(outline("%YAML 1.2\n---\nDocument\n... # Suffix\n") == R"(1 "Document")");
    CHECK(outline("Bare\ndocument\n...\n# No document\n...\n") == R"(1 "Bare document")");
  }
}
