// Two corpora of ingredient lines as people write them.
//
// labelled-lines.tsv: general cooking (its sources and licences stand at its top), with the name as labelled.
// A name is right when LineReading::name, or the name of the first alternative, has the words of the label:
// folded, in the singular, and without the qualifiers and counting nouns that the labels put now in the name,
// now in the comment (KNOWN LABEL NOISE at the top of the file; words are those found in both places).
// Stricter, for comparison: the same words in the same order.
//
// canning-lines.txt: lines of home-canning recipes, without labels: the share in which every food is
// recognised. canning-lines-labelled.tsv: every fifth of them, with the foods by hand.

#include <doctest/doctest.h>

#include <set>

#include "loaded.hpp"
#include "text/words.hpp"

using namespace foods_test;
namespace text = sealworthy::text;

namespace {

const std::set<std::string, std::less<>> noise{
    "fresh",    "freshly",  "dried",     "dry",      "ripe",     "boneless", "skinless", "cooked",
    "whole",    "ground",   "frozen",    "canned",   "raw",      "small",    "medium",   "large",
    "size",     "sized",    "baby",      "very",     "slightly", "finely",   "extra",    "good",
    "quality",  "best",     "excellent", "premium",  "young",    "lean",     "cold",     "warm",
    "hot",      "homemade", "roasted",   "unsalted", "smoked",   "crushed",  "pitted",   "shelled",
    "blanched", "shucked",  "squeezed",  "stewed",   "of",       "the",      "a",        "plus",
    "clove",    "leaf",     "stalk",     "sprig",    "stick",    "head",     "slice",    "piece",
    "rib",      "bunch",    "can",       "half",     "wedge",    "cube",     "top",      "fillet"};

std::vector<std::string> words_that_count(std::string_view name) {
  std::vector<std::string> out;
  const text::Words words(name);
  for (const auto& word : words) {
    auto one = text::singular(word.text);
    if (!word.number && !noise.contains(one)) out.push_back(std::move(one));
  }
  return out;
}

std::set<std::string> word_set(std::string_view name) {
  const auto words = words_that_count(name);
  std::set<std::string> out(words.begin(), words.end());
  out.erase("or");
  out.erase("and");
  return out;
}

}  // namespace

TEST_CASE("names in labelled lines of general cooking") {
  auto rows = data_rows("labelled-lines.tsv");
  REQUIRE(rows.size() > 2000);
  rows.erase(rows.begin());  // the names of the columns
  double names = 0, in_order = 0;
  for (const auto& row : rows) {
    REQUIRE(row.size() >= 5);
    const auto reading = read(row[0]);
    const auto label = word_set(row[4]);
    const bool first = !reading.foods.empty() && word_set(reading.foods[0].name) == label;
    if (first || word_set(reading.name) == label) ++names;
    if (words_that_count(reading.name) == words_that_count(row[4])) ++in_order;
  }
  const auto count = static_cast<double>(rows.size());
  MESSAGE("labelled lines: name right " << names / count << ", in the same order " << in_order / count);
  CHECK(names / count >= 0.94);
  CHECK(in_order / count >= 0.925);
}

TEST_CASE("foods in lines of home-canning recipes") {
  const auto rows = data_rows("canning-lines.txt");
  REQUIRE(rows.size() > 700);
  double known = 0;
  for (const auto& row : rows) {
    const auto reading = read(row[0]);
    if (!reading.foods.empty() && reading.unknown.empty()) ++known;
  }
  const double share = known / static_cast<double>(rows.size());
  MESSAGE("canning lines: every food recognised in " << share);
  CHECK(share >= 0.985);
}

TEST_CASE("foods in canning lines as labelled by hand") {
  const auto rows = data_rows("canning-lines-labelled.tsv");
  REQUIRE(rows.size() > 140);
  for (const auto& row : rows) {
    REQUIRE(row.size() == 2);
    CAPTURE(row[0]);
    CHECK(ids(read(row[0])) == row[1]);
  }
}
