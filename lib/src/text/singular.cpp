#include <algorithm>
#include <array>
#include <utility>

#include "text/words.hpp"

namespace sealworthy::text {
namespace {

using Pair = std::pair<std::string_view, std::string_view>;

/// Plurals that no rule below makes singular.
constexpr std::array odd{
    Pair{"leaves", "leaf"},      Pair{"loaves", "loaf"},        Pair{"halves", "half"},
    Pair{"calves", "calf"},      Pair{"knives", "knife"},       Pair{"shelves", "shelf"},
    Pair{"geese", "goose"},      Pair{"feet", "foot"},          Pair{"cookies", "cookie"},
    Pair{"brownies", "brownie"}, Pair{"smoothies", "smoothie"}, Pair{"veggies", "veggie"},
    Pair{"calories", "calorie"}, Pair{"chilies", "chili"},      Pair{"chillies", "chilli"},
    Pair{"quiches", "quiche"},   Pair{"brioches", "brioche"},   Pair{"ceviches", "ceviche"},
    Pair{"ganaches", "ganache"}, Pair{"shoes", "shoe"}};

/// Words that end like a plural and are none.
constexpr std::array<std::string_view, 12> same{"molasses", "lens", "was",  "species", "series", "cassis",
                                                "pastis",   "anis", "iris", "this",    "basis",  "pancreas"};

bool ends(std::string_view word, std::string_view tail) {
  return word.size() > tail.size() && word.ends_with(tail);
}
bool vowel(char c) { return c == 'a' || c == 'e' || c == 'i' || c == 'o' || c == 'u'; }

/// Letters to take from the end of a plural by rule; 0: it is no plural.
std::size_t ending(std::string_view word) {
  static constexpr std::array<std::string_view, 6> es{"sses", "shes", "ches", "xes", "zzes", "oes"};
  const auto size = word.size();
  if (ends(word, "oes") && size <= 4) return 1;  // toes
  if (std::any_of(es.begin(), es.end(), [&](std::string_view tail) { return ends(word, tail); })) return 2;
  if (ends(word, "ss") || ends(word, "us")) return 0;
  return size > 3 || (size == 3 && !vowel(word[1])) ? 1 : 0;  // gas, ribs, but also "lbs"
}

}  // namespace

std::string singular(std::string_view word) {
  if (word.size() < 3) return std::string(word);
  const auto found =
      std::find_if(odd.begin(), odd.end(), [&](const Pair& pair) { return pair.first == word; });
  if (found != odd.end()) return std::string(found->second);
  if (word.back() != 's' || std::find(same.begin(), same.end(), word) != same.end()) return std::string(word);
  if (ends(word, "ies") && word.size() > 4) return std::string(word.substr(0, word.size() - 3)) + "y";
  return std::string(word.substr(0, word.size() - ending(word)));
}

}  // namespace sealworthy::text
