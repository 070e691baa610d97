#include "text/words.hpp"

#include <doctest/doctest.h>

#include <string>
#include <utility>

using namespace sealworthy::text;

TEST_CASE("words are folded, numbers stay whole, hyphens split") {
  CHECK(fold("Black-Eyed  Peas, jalapeño") == "black eyed peas jalapeno");
  const Words words("1 1/2 cups (5,280 ft) 4lbs 2–3\" don't ½");
  REQUIRE(words.size() == 12);
  CHECK(words[1].text == "1/2");
  CHECK(words[1].number);
  CHECK(words[3].text == "5,280");
  CHECK(words[3].depth == 1);
  CHECK(words[5].text == "4");
  CHECK(words[6].text == "lbs");
  CHECK(words[8].hyphened);
  CHECK(words[9].text == "\"");
  CHECK(words[10].text == "don't");
  CHECK(words[11].number);
}

TEST_CASE("a sentence end is stronger than a comma") {
  const Words words("boil, then fill. Cool");
  CHECK(words[1].before == ',');
  CHECK(words[3].before == '.');
}

TEST_CASE("accents, invisible marks, symbols and other alphabets") {
  CHECK(fold("crème fraîche, piñón, Žižka łosoś œufs ßtraße") ==
        "creme fraiche pinon zizka losos oeufs sstrasse");
  CHECK(fold("cre\xCC\x80me") == "creme");                    // a combining accent
  CHECK(fold("to\xC2\xADma\xE2\x80\x8Btoes") == "tomatoes");  // soft hyphen, zero-width space
  CHECK(fold("\xEF\xBB\xBFsalt") == "salt");                  // byte order mark
  CHECK(fold("\xCC\x80") == "");
  CHECK(fold("\xF0\x9F\x8D\x85 tomatoes\xE2\x84\xA2 \xE2\x80\xA2 2") ==
        "tomatoes 2");  // picture, trade mark, bullet
  CHECK(fold("\xD0\xBF\xD0\xB5\xD1\x80\xD0\xB5\xD1\x86 red") ==
        "\xD0\xBF\xD0\xB5\xD1\x80\xD0\xB5\xD1\x86 red");
}

TEST_CASE("bytes that are no UTF-8 part words and are dropped") {
  CHECK(fold("sa\xFFlt") == "sa lt");
  CHECK(fold("salt\xC3") == "salt");
  CHECK(fold("salt\xE2\x80") == "salt");
  CHECK(fold("\xED\xA0\x80salt") == "salt");  // a surrogate
  CHECK(fold("\xF8\x88\x80\x80\x80salt") == "salt");
  CHECK(fold("\xC0\xAFsalt") == "salt");  // an overlong slash
}

TEST_CASE("numbers keep their marks, words their place") {
  const std::string_view line = "2½ cups (1⁄2 jalapeño's), 1.5-2 °F 3/4\"";
  const Words words(line);
  std::string texts;
  for (const auto& word : words) {
    texts += std::string(word.text) + "|";
    CHECK(word.begin < word.end);
    CHECK(word.end <= line.size());
  }
  CHECK(texts == "2½|cups|1/2|jalapeno's|1.5|2|°|f|3/4|\"|");
  CHECK(line.substr(words[3].begin, words[3].end - words[3].begin) == "jalapeño's");
  CHECK(words[2].depth == 1);
  CHECK(words[2].before == '(');
  CHECK(words[4].before == ',');
  CHECK(words[4].depth == 0);
  CHECK_FALSE(words[4].hyphened);
  CHECK(words[5].hyphened);
}

TEST_CASE("hyphens join only what they touch") {
  const Words words("black-eyed peas - dried low–acid");
  CHECK(words[1].hyphened);
  CHECK_FALSE(words[2].hyphened);
  CHECK_FALSE(words[3].hyphened);
  CHECK(words[5].hyphened);
}

TEST_CASE("words stay valid when moved") {
  Words words("salt");  // a short text: a std::string would keep it inside itself
  const Words moved = std::move(words);
  CHECK(moved[0].text == "salt");
  CHECK(Words("").empty());
  CHECK(Words(" ,.;- ").empty());
}

TEST_CASE("singulars of kitchen nouns") {
  struct Noun {
    std::string_view many, one;
  };
  constexpr Noun nouns[] = {{"tomatoes", "tomato"},
                            {"potatoes", "potato"},
                            {"mangoes", "mango"},
                            {"berries", "berry"},
                            {"cherries", "cherry"},
                            {"leaves", "leaf"},
                            {"loaves", "loaf"},
                            {"halves", "half"},
                            {"peaches", "peach"},
                            {"radishes", "radish"},
                            {"squashes", "squash"},
                            {"boxes", "box"},
                            {"glasses", "glass"},
                            {"olives", "olive"},
                            {"chives", "chive"},
                            {"cloves", "clove"},
                            {"endives", "endive"},
                            {"cookies", "cookie"},
                            {"chilies", "chili"},
                            {"chillies", "chilli"},
                            {"chilis", "chili"},
                            {"zucchinis", "zucchini"},
                            {"kiwis", "kiwi"},
                            {"quiches", "quiche"},
                            {"peas", "pea"},
                            {"lbs", "lb"},
                            {"toes", "toe"},
                            {"pies", "pie"},
                            {"turkeys", "turkey"},
                            {"cheeses", "cheese"},
                            {"beans", "bean"},
                            {"geese", "goose"},
                            {"asparagus", "asparagus"},
                            {"molasses", "molasses"},
                            {"couscous", "couscous"},
                            {"hummus", "hummus"},
                            {"swiss", "swiss"},
                            {"bass", "bass"},
                            {"watercress", "watercress"},
                            {"gas", "gas"},
                            {"citrus", "citrus"},
                            {"salt", "salt"},
                            {"s", "s"},
                            {"", ""}};
  for (const auto& noun : nouns) {
    CAPTURE(noun.many);
    CHECK(singular(noun.many) == noun.one);
    CHECK(singular(noun.one) == noun.one);  // a singular stays
  }
}
