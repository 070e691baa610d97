#include <algorithm>

#include "prose/filling.hpp"

namespace sealworthy::prose {
namespace {

using Kind = Mark::Kind;

std::string_view text(const Sentence& s, std::size_t i) {
  return i < s.tokens.size() ? s.tokens[i].text : std::string_view();
}

/// "Reheat the broth to boiling" heats what a recipe for stock is about.
bool is_the_food(const Sentence* title, const Senses& liquid) {
  return title != nullptr && liquid.has(Sense::mixture) &&
         std::any_of(title->senses.begin(), title->senses.end(), [](const Senses& senses) {
           return senses.has(Sense::liquid) && senses.has(Sense::mixture);
         });
}

/// "Simmer the pears in the syrup", "cover the beans with fresh water and boil": the food is in it.
bool holds_the_food(const Sentence& s, std::size_t liquid) {
  if (liquid > 0 && text(s, liquid - 1) == "in") return true;
  if (liquid > 1 && text(s, liquid - 2) == "in" && one_of(text(s, liquid - 1), {"the", "hot", "this"}))
    return true;
  bool with = false;
  for (std::size_t i = liquid; i-- > 0;) {
    with = with || (text(s, i) == "with" && liquid - i <= 3);
    if (with && text(s, i) == "cover") return true;
  }
  return false;
}

bool any_liquid(const Sentence& s, const Sentence* title) {
  for (std::size_t i = 0; i < s.tokens.size(); ++i)
    if (s.senses[i].has(Sense::liquid) && !is_the_food(title, s.senses[i]) && !holds_the_food(s, i))
      return true;
  return false;
}

/// True if a word tells of raw food, or of a liquid that covers what is in the jars. `filled`: a sentence
/// before filled them; until then it is a pot or a bowl that is covered.
bool tells_of_cold_food(const Sentence& s, bool filled) {
  for (std::size_t i = 0; i < s.tokens.size(); ++i) {
    if (s.senses[i].has(Sense::raw) || s.senses[i].has(Sense::raw_pack)) return true;
    // "over high heat", "over 6,000 ft" cover nothing.
    const bool of_heat =
        i + 1 < s.tokens.size() &&
        (s.tokens[i + 1].number || one_of(text(s, i + 1), {"high", "medium", "low", "heat"}));
    const bool in_jars = filled || s.has(Sense::fill) || s.has(Sense::jar) || s.has(Kind::jar);
    const bool over = one_of(text(s, i), {"over", "cover", "covering"}) && !of_heat && in_jars;
    const bool liquid = std::any_of(s.senses.begin(), s.senses.end(),
                                    [](const Senses& senses) { return senses.has(Sense::liquid); });
    if (over && liquid) return true;
  }
  return false;
}

/// "the slices and cooking syrup"
bool cooking_liquid(const Sentence& s, std::size_t i) {
  return text(s, i) == "cooking" && i + 1 < s.tokens.size() && s.senses[i + 1].has(Sense::liquid);
}

/// Behind "fill" stand the jars and nothing that names another food: "fill hot pint jars at once", "pour it
/// into the hot sterile half pints", "ladle the jam into jars", "fill jars with mixture and pickling
/// solution"; or it says that the food was cooked: "fill jars with the slices and cooking syrup".
bool fills_what_was_heated(const Sentence& s, std::size_t fill, const Sentence* title) {
  const auto ends = [&](std::size_t i) {
    const bool to_height = text(s, i) == "to" && i + 1 < s.tokens.size() &&
                           (s.tokens[i + 1].number || one_of(text(s, i + 1), {"within", "a", "about"}));
    return s.tokens[i].before != 0 || to_height || one_of(text(s, i), {"leaving", "leave", "within"});
  };
  std::size_t end = fill + 1;
  bool jars = false, cooked = false, mixture = false;
  for (; end < s.tokens.size() && !ends(end); ++end) cooked = cooked || cooking_liquid(s, end);
  for (std::size_t i = fill + 1; i < end; ++i) {
    const bool liquid = s.senses[i].has(Sense::liquid) && !is_the_food(title, s.senses[i]);
    const bool jar =
        s.senses[i].has(Sense::jar) || std::any_of(s.marks.begin(), s.marks.end(), [&](const Mark& m) {
          return m.kind == Kind::jar && m.first <= i && i < m.last;
        });
    jars = jars || jar;
    const bool whole = s.senses[i].has(Sense::mixture) && !liquid;
    const bool with_it = mixture && (liquid || text(s, i) == "and");
    mixture = mixture || whole;
    const bool plain =
        s.senses[i].has(Sense::empty_jars) || s.senses[i].has(Sense::hot) || cooked || whole || with_it ||
        one_of(text(s, i),
               {"into",       "in",          "to",      "the",   "your", "clean", "warm", "sterile",
                "sterilized", "canning",     "mason",   "it",    "them", "at",    "once", "still",
                "while",      "immediately", "quickly", "right", "away", "with"});
    if (!jar && !plain) return false;
  }
  return jars;
}

}  // namespace

std::optional<recipe::Placed<recipe::Pack>> find_pack_by_heat(const std::vector<Sentence>& sentences,
                                                              const Sentence* title) {
  bool filled = false;
  for (const Sentence& s : sentences) {
    if (tells_of_cold_food(s, filled)) return std::nullopt;
    filled = filled || s.has(Sense::fill) || s.has(Sense::jar) || s.has(Kind::jar);
  }
  bool hot = false;
  for (const Sentence& s : sentences) {
    // Of empty jars, lids and the canner: nothing is done to the food.
    const auto filling = [&](std::size_t i) { return s.senses[i].has(Sense::fill) && !s.denied(i); };
    bool fills = false;
    for (std::size_t i = 0; i < s.tokens.size(); ++i) fills = fills || filling(i);
    const bool beside = !fills && (s.has(Sense::jar) || s.has(Kind::jar) || s.has(Sense::empty_jars) ||
                                   s.has(Sense::lids_alone));
    if (beside) continue;
    for (std::size_t i = 0; i < s.tokens.size(); ++i) {
      if (filling(i)) {
        if (hot && fills_what_was_heated(s, i, title))
          return recipe::Placed<recipe::Pack>{recipe::Pack::hot, s.at(i),
                                              s.words(i, std::min(i + 4, s.tokens.size()))};
        hot = false;
        continue;
      }
      const auto mark = std::find_if(s.marks.begin(), s.marks.end(),
                                     [&](const Mark& m) { return m.kind == Kind::work && m.first == i; });
      const bool adds = s.senses[i].has(Sense::put_in) && !s.senses[i].has(Sense::goes_on_hot);
      if (adds || one_of(text(s, i), {"fold", "mix", "combine"})) hot = false;
      if (mark == s.marks.end() || s.denied(i) || s.polarity.supposed[i]) continue;
      if (s.senses[i].has(Sense::heat_food)) {
        hot = !any_liquid(s, title);
      } else if (!s.senses[i].has(Sense::goes_on_hot)) {
        hot = false;
      }
    }
  }
  return std::nullopt;
}

}  // namespace sealworthy::prose
