#include "text/forms.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>

using sealworthy::text::each_form;

namespace {

std::set<std::string> forms(std::string_view word) {
  std::set<std::string> all;
  each_form(word, [&](std::string_view form) { all.emplace(form); });
  return all;
}

bool has(std::string_view word, std::string_view form) { return forms(word).count(std::string(form)) > 0; }

}  // namespace

TEST_CASE("a base word gives its regular forms") {
  CHECK(has("turn", "turns"));
  CHECK(has("turn", "turned"));
  CHECK(has("turn", "turning"));
  CHECK(has("wipe", "wiping"));
  CHECK(has("wipe", "wiped"));
  CHECK(has("process", "processes"));
  CHECK(has("tight", "tightly"));
  CHECK(has("dry", "dried"));
  CHECK(has("berry", "berries"));
  CHECK(has("loose", "loosely"));
  CHECK(has("simple", "simply"));
}

TEST_CASE("a last consonant doubles after one vowel") {
  CHECK(has("skip", "skipping"));
  CHECK(has("can", "canned"));
  CHECK(has("equip", "equipping"));
  CHECK_FALSE(has("steam", "steamming"));
  CHECK_FALSE(has("boil", "boilled"));
}

TEST_CASE("irregular forms are listed") {
  CHECK(has("leave", "left"));
  CHECK(has("stand", "stood"));
  CHECK(has("knife", "knives"));
  CHECK(has("write", "written"));  // last of the sorted table
  CHECK(has("be", "is"));          // first
}

TEST_CASE("British spelling is another form") {
  CHECK(has("sterilize", "sterilise"));
  CHECK(has("sterilize", "sterilising"));
  CHECK_FALSE(has("size", "sise"));
}

TEST_CASE("odd words are only themselves") {
  CHECK(forms("1/2") == std::set<std::string>{"1/2"});
  CHECK(forms("a") == std::set<std::string>{"a"});
  CHECK(forms("supercalifragilisticexpialidocious").size() == 1);
}
