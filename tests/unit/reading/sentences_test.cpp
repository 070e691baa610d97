#include "reading/sentences.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using sealworthy::reading::Sentences;

namespace {

/// The sentences of a text, their folded words with spaces between.
std::vector<std::string> split(std::string_view text) {
  const Sentences sentences(text);
  std::vector<std::string> out;
  for (const auto& sentence : sentences.all) {
    std::string words;
    for (auto i = sentence.first; i < sentence.last; ++i) {
      if (!words.empty()) words += ' ';
      words += sentences.words[i].text;
    }
    out.push_back(words);
  }
  return out;
}

using Split = std::vector<std::string>;

}  // namespace

TEST_CASE("sentences end at marks") {
  CHECK(split("Boil. Fill! Cool? Wipe; close") == Split{"boil", "fill", "cool", "wipe", "close"});
  CHECK(split("Boil, then fill: hot (but not over)") == Split{"boil then fill hot but not over"});
  CHECK(split("").empty());
  CHECK(split(" ... ").empty());
}

TEST_CASE("a dot in a figure or behind a short form does not end a sentence") {
  CHECK(split("Leave 1.5 in. of space") == Split{"leave 1.5 in of space"});
  CHECK(split("Add 2 tbsp. lemon juice per qt. jar.") == Split{"add 2 tbsp lemon juice per qt jar"});
  CHECK(split("Cook approx. 5 min. and fill") == Split{"cook approx 5 min and fill"});
  CHECK(split("a tart fruit, e.g. plums") == Split{"a tart fruit e g plums"});
}

TEST_CASE("a short form before a capital does end one") {
  CHECK(split("Leave 1/2 in. Wipe the rims.") == Split{"leave 1/2 in", "wipe the rims"});
  CHECK(split("Process 20 min. Cool.") == Split{"process 20 min", "cool"});
}

TEST_CASE("the number of a step is left out") {
  CHECK(split("1. Boil the jars. 2. Fill them.") == Split{"boil the jars", "fill them"});
  CHECK(split("10. Cool") == Split{"cool"});
  CHECK(split("Process 20. Cool") == Split{"process 20", "cool"});
}

TEST_CASE("a line that goes on with a small letter is the same sentence") {
  CHECK(split("Turn the jars\nupside down") == Split{"turn the jars upside down"});
  CHECK(split("Fill the jars\nWipe the rims") == Split{"fill the jars", "wipe the rims"});
  CHECK(split("fill the jars\n\nwipe the rims") == Split{"fill the jars", "wipe the rims"});
  CHECK(split("- fill\n- wipe") == Split{"fill", "wipe"});
}

TEST_CASE("a question is marked") {
  const Sentences sentences("Invert the jars? No.");
  REQUIRE(sentences.all.size() == 2);
  CHECK(sentences.all[0].question);
  CHECK_FALSE(sentences.all[1].question);
}

TEST_CASE("a run without marks is cut, so that no sentence is longer than a line of the matcher") {
  std::string text;
  for (int i = 0; i < 1000; ++i) text += "word ";
  const Sentences sentences(text);
  CHECK(sentences.all.size() == 11);
  for (const auto& sentence : sentences.all) CHECK(sentence.last - sentence.first <= 96);
}
