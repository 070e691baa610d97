#include "checks/phrases.hpp"

#include <doctest/doctest.h>

using sealworthy::checks::Phrases;
using sealworthy::text::Words;

TEST_CASE("a phrase stands in a text as whole words, whatever the case, hyphens and accents") {
  const Phrases phrases({"pie filling", "puree"});
  CHECK(phrases.in(Words("Pumpkin pie filling")) == "pie filling");
  CHECK(phrases.in(Words("PIE-FILLING")) == "pie filling");
  CHECK(phrases.in(Words("Carrot purée")) == "puree");
  CHECK(phrases.in(Words("pie with filling")).empty());
  CHECK(phrases.in(Words("pureed")).empty());
  CHECK(phrases.in(Words("")).empty());
}

TEST_CASE("a phrase that is denied just before it does not stand there") {
  const Phrases phrases({"reused"});
  CHECK(phrases.in(Words("new, not reused")).empty());
  CHECK(phrases.in(Words("never reused")).empty());
  CHECK(phrases.in(Words("reused, not new")) == "reused");
}

TEST_CASE("a state is a phrase with hyphens for its spaces") {
  const Phrases phrases({"on the cob", "canned"});
  CHECK(phrases.is("on-the-cob"));
  CHECK(phrases.is("canned"));
  CHECK_FALSE(phrases.is("can"));
  CHECK_FALSE(phrases.is("on-the"));
  CHECK_FALSE(phrases.is("on-the-cob-too"));
}

TEST_CASE("no phrases are found in nothing and find nothing") {
  CHECK(Phrases().empty());
  CHECK(Phrases().in(Words("anything")).empty());
  CHECK(Phrases({""}).empty());
}
