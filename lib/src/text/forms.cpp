#include "text/forms.hpp"

#include <algorithm>
#include <array>

namespace sealworthy::text {
namespace {

/// Words whose past, participle or plural no ending gives, sorted by base; other forms between spaces.
struct Irregular {
  std::string_view base;
  std::string_view others;
};
constexpr std::array irregulars{
    Irregular{"be", "is are was were been being am"},
    Irregular{"begin", "began begun"},
    Irregular{"bend", "bent"},
    Irregular{"bind", "bound"},
    Irregular{"bite", "bit bitten"},
    Irregular{"bleed", "bled"},
    Irregular{"blow", "blew blown"},
    Irregular{"break", "broke broken"},
    Irregular{"bring", "brought"},
    Irregular{"build", "built"},
    Irregular{"buy", "bought"},
    Irregular{"calf", "calves"},
    Irregular{"catch", "caught"},
    Irregular{"choose", "chose chosen"},
    Irregular{"cling", "clung"},
    Irregular{"come", "came"},
    Irregular{"do", "does did done doing"},
    Irregular{"draw", "drew drawn"},
    Irregular{"drink", "drank drunk"},
    Irregular{"drive", "drove driven"},
    Irregular{"eat", "ate eaten"},
    Irregular{"fall", "fell fallen"},
    Irregular{"feed", "fed"},
    Irregular{"feel", "felt"},
    Irregular{"find", "found"},
    Irregular{"fly", "flew flown flies"},
    Irregular{"foot", "feet"},
    Irregular{"forget", "forgot forgotten"},
    Irregular{"freeze", "froze frozen"},
    Irregular{"get", "got gotten"},
    Irregular{"give", "gave given"},
    Irregular{"go", "goes went gone going"},
    Irregular{"goose", "geese"},
    Irregular{"grind", "ground"},
    Irregular{"grow", "grew grown"},
    Irregular{"half", "halves"},
    Irregular{"hang", "hung"},
    Irregular{"have", "has had having"},
    Irregular{"hear", "heard"},
    Irregular{"hold", "held"},
    Irregular{"keep", "kept"},
    Irregular{"knife", "knives"},
    Irregular{"know", "knew known"},
    Irregular{"lay", "laid lain"},
    Irregular{"lead", "led"},
    Irregular{"leaf", "leaves"},
    Irregular{"leave", "left"},
    Irregular{"lie", "lay lain lying"},
    Irregular{"loaf", "loaves"},
    Irregular{"lose", "lost"},
    Irregular{"make", "made"},
    Irregular{"mean", "meant"},
    Irregular{"pay", "paid"},
    Irregular{"ride", "rode ridden"},
    Irregular{"rise", "rose risen"},
    Irregular{"run", "ran"},
    Irregular{"say", "said"},
    Irregular{"see", "saw seen"},
    Irregular{"sell", "sold"},
    Irregular{"shake", "shook shaken"},
    Irregular{"shelf", "shelves"},
    Irregular{"shine", "shone"},
    Irregular{"show", "shown"},
    Irregular{"shrink", "shrank shrunk"},
    Irregular{"sink", "sank sunk"},
    Irregular{"sit", "sat"},
    Irregular{"slide", "slid"},
    Irregular{"speed", "sped"},
    Irregular{"spend", "spent"},
    Irregular{"spin", "spun"},
    Irregular{"spring", "sprang sprung"},
    Irregular{"stand", "stood"},
    Irregular{"steal", "stole stolen"},
    Irregular{"stick", "stuck"},
    Irregular{"sweep", "swept"},
    Irregular{"swell", "swollen"},
    Irregular{"swing", "swung"},
    Irregular{"take", "took taken"},
    Irregular{"tell", "told"},
    Irregular{"think", "thought"},
    Irregular{"throw", "threw thrown"},
    Irregular{"wind", "wound"},
    Irregular{"wring", "wrung"},
    Irregular{"write", "wrote written"},
};

bool vowel(char c) { return c == 'a' || c == 'e' || c == 'i' || c == 'o' || c == 'u'; }

/// "stop" -> "stopp": a last consonant after a single vowel may double before an ending.
bool doubles(std::string_view w) {
  const auto n = w.size();
  if (n < 3) return false;
  const char last = w[n - 1];
  return !vowel(last) && last != 'w' && last != 'x' && last != 'y' && last != 's' && vowel(w[n - 2]) &&
         (!vowel(w[n - 3]) || w[n - 3] == 'u');
}

/// Puts endings behind a stem in a buffer of its own; words too long for it have no other forms.
class Endings {
 public:
  explicit Endings(const std::function<void(std::string_view)>& take) : take_(take) {}
  void add(std::string_view stem, std::initializer_list<std::string_view> endings) {
    for (const auto ending : endings) {
      if (stem.size() + ending.size() > buffer_.size()) return;
      const auto end = std::copy(stem.begin(), stem.end(), buffer_.begin());
      std::copy(ending.begin(), ending.end(), end);
      take_({buffer_.data(), stem.size() + ending.size()});
    }
  }

 private:
  const std::function<void(std::string_view)>& take_;
  std::array<char, 32> buffer_{};
};

void irregular_forms(std::string_view word, const std::function<void(std::string_view)>& take) {
  const auto found = std::lower_bound(irregulars.begin(), irregulars.end(), word,
                                      [](const Irregular& i, std::string_view w) { return i.base < w; });
  if (found == irregulars.end() || found->base != word) return;
  std::string_view rest = found->others;
  while (!rest.empty()) {
    const auto space = std::min(rest.find(' '), rest.size());
    take(rest.substr(0, space));
    rest.remove_prefix(std::min(space + 1, rest.size()));
  }
}

void regular_forms(std::string_view word, Endings& forms) {
  const char last = word.back();
  const auto stem = word.substr(0, word.size() - 1);
  if (last == 'e') {
    forms.add(word, {"s", "d", "ly"});
    forms.add(stem, {"ing"});
    if (word.ends_with("le")) forms.add(stem, {"y"});
  } else if (last == 'y' && !vowel(word[word.size() - 2])) {
    forms.add(stem, {"ies", "ied", "ily"});
    forms.add(word, {"ing"});
  } else {
    const bool hiss = last == 's' || last == 'x' || last == 'z' || last == 'o' || word.ends_with("ch") ||
                      word.ends_with("sh");
    forms.add(word, {"s", "ed", "ing"});
    if (hiss) forms.add(word, {"es"});
    if (last != 'y') forms.add(word, {"ly"});
    if (doubles(word)) {
      std::array<char, 32> twice{};
      if (word.size() >= twice.size()) return;
      *std::copy(word.begin(), word.end(), twice.begin()) = last;
      forms.add({twice.data(), word.size() + 1}, {"ed", "ing"});
    }
  }
}

}  // namespace

void each_form(std::string_view word, const std::function<void(std::string_view)>& take) {
  take(word);
  irregular_forms(word, take);
  const bool plain = std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
  if (word.size() < 2 || word.size() > 24 || !plain) return;
  Endings forms(take);
  regular_forms(word, forms);
  // British spelling of the same: sterilize, sterilise.
  const auto z = word.rfind("iz");
  if (z == std::string_view::npos || word.size() < 6) return;
  std::array<char, 32> british{};
  std::copy(word.begin(), word.end(), british.begin());
  british[z + 1] = 's';
  const std::string_view spelled(british.data(), word.size());
  take(spelled);
  regular_forms(spelled, forms);
}

}  // namespace sealworthy::text
