#include "phrases/negation.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace sealworthy;
using phrases::Line;

namespace {

/// The words of the first sentence that are denied, with spaces between.
std::string denied(std::string_view text) {
  static const phrases::Lexicon lexicon = [] {
    phrases::Lexicon made;
    made.finish();
    return made;
  }();
  const reading::Sentences sentences(text);
  Line line;
  line.read(lexicon, sentences.words, sentences.all.front());
  phrases::Polarity polarity;
  phrases::analyse(line.all(), polarity);
  std::string out;
  for (std::size_t i = 0; i < line.size; ++i) {
    if (!polarity.denied(i, 0) || polarity.own[i] != 0) continue;
    if (!out.empty()) out += ' ';
    out += line.tokens[i].text;
  }
  return out;
}

bool says(std::string_view text, std::string_view word) {
  return (" " + denied(text) + " ").find(" " + std::string(word) + " ") == std::string::npos;
}

}  // namespace

TEST_CASE("negation reaches to the end of its clause, not into the next") {
  CHECK(denied("do not invert the jars, but process them") == "do invert the jars");
  CHECK(says("process the jars but do not invert them", "process"));
  CHECK_FALSE(says("process the jars but do not invert them", "invert"));
  CHECK(says("Never open the lid until the needle drops", "drops"));
  CHECK(says("do not wait: process at once", "process"));
}

TEST_CASE("a list after a negation is denied as a whole") {
  for (const auto* word : {"shake", "tilt", "invert"})
    CHECK_FALSE(says("Do not shake, tilt or invert the jars", word));
  CHECK(says("If you have no rack, use a cake rack or a ring", "cake"));
}

TEST_CASE("no and without deny the thing after them") {
  CHECK_FALSE(says("there is no need to wipe the rims", "wipe"));
  CHECK_FALSE(says("close the jars without wiping the rims", "wiping"));
  CHECK(says("close the jars without wiping the rims", "close"));
  CHECK(says("Without a rack you can turn the jars", "turn"));
  CHECK(says("no-cook jam on the shelf", "jam"));
  CHECK_FALSE(says("no rice or pasta in the jars", "pasta"));
}

TEST_CASE("verbs that deny, and words behind") {
  CHECK_FALSE(says("skip the venting", "venting"));
  CHECK_FALSE(says("avoid inverting the jars", "inverting"));
  CHECK_FALSE(says("wiping the rims is unnecessary", "wiping"));
  CHECK_FALSE(says("the rims need not be wiped", "rims"));
  CHECK_FALSE(says("venting can be skipped", "venting"));
  CHECK_FALSE(says("leave out the salt", "salt"));
  CHECK(says("leave the meat out overnight", "meat"));
  CHECK_FALSE(says("spare yourself the trouble of wiping the rims", "wiping"));
}

TEST_CASE("instead of, rather than") {
  CHECK_FALSE(says("process them instead of inverting the jars", "inverting"));
  CHECK_FALSE(says("rather than invert the jars, process them", "invert"));
  CHECK(says("rather than invert the jars, process them", "process"));
}

TEST_CASE("two negations make none") {
  CHECK(says("never skip venting", "venting"));
  CHECK(says("do not forget to wipe the rims", "wipe"));
  CHECK(says("venting should never be skipped", "venting"));
  CHECK(says("it is not unnecessary to vent", "vent"));
  CHECK_FALSE(says("neither shake nor invert the jars", "invert"));
}

TEST_CASE("words that look like negation and are none") {
  CHECK(says("no more than half of the solids", "solids"));
  CHECK(says("cook to 220 F no matter the height", "height"));
  CHECK(says("not only the rims", "rims"));
  CHECK(says("no, process the jars", "process"));
  CHECK(says("lids that are not bent are good for another round", "good"));
}

TEST_CASE("what stands in an if-clause is only supposed") {
  static const phrases::Lexicon lexicon = [] {
    phrases::Lexicon made;
    made.finish();
    return made;
  }();
  const reading::Sentences sentences("If the boil stops, start the time again");
  Line line;
  line.read(lexicon, sentences.words, sentences.all.front());
  phrases::Polarity polarity;
  phrases::analyse(line.all(), polarity);
  CHECK(polarity.supposed[2]);
  CHECK_FALSE(polarity.supposed[4]);
}

TEST_CASE("a hundred negations stay within bounds") {
  std::string text;
  for (int i = 0; i < 90; ++i) text += "not never ";
  CHECK_NOTHROW(denied(text));
}
