#include "reading/sentences.hpp"

#include <algorithm>
#include <array>

namespace sealworthy::reading {
namespace {

/// A run longer than this is cut, so that no check's cost grows faster than the text.
constexpr std::size_t longest = 96;

/// Words that a dot shortens: a small letter or a figure after the dot goes on with the sentence.
constexpr std::array<std::string_view, 38> shortened{
    "approx", "c",   "cm",   "dia", "doz", "deg", "e",   "eg", "etc", "fahr", "fl",   "ft", "g",
    "gal",    "h",   "hr",   "hrs", "ie",  "in",  "inc", "kg", "l",   "lb",   "lbs",  "lg", "max",
    "med",    "min", "mins", "no",  "oz",  "pkg", "pt",  "qt", "sec", "tbsp", "temp", "tsp"};

bool has(std::string_view text, std::string_view marks) {
  return text.find_first_of(marks) != std::string_view::npos;
}
bool upper(char c) { return c >= 'A' && c <= 'Z'; }
bool lower(char c) { return c >= 'a' && c <= 'z'; }

/// Does the text between two words end a sentence? `start` says that `before` is the first word of it.
bool ends_sentence(std::string_view between, const text::Word& before, char next, bool start) {
  if (has(between, "!?;")) return true;
  if (has(between, "\n")) {  // a wrapped line goes on with a small letter; an item starts with a mark
    if (!lower(next) || has(between, ".*-\xE2")) return true;
    return std::count(between.begin(), between.end(), '\n') > 1;
  }
  if (!has(between, ".")) return false;
  if (before.number && start) return false;  // "1. Boil"
  const bool spaced = has(between, " \t\r");
  if (!spaced && !upper(next)) return false;                                   // "e.g", "approx.10"
  if (before.text.size() == 1 && !before.number && lower(next)) return false;  // "i.e. the"
  if (between.find("..") != std::string_view::npos) return upper(next);
  const bool short_form = std::find(shortened.begin(), shortened.end(), before.text) != shortened.end();
  return !short_form || upper(next);
}

}  // namespace

Sentences::Sentences(std::string_view text) : words(text) {
  const auto count = words.size();
  if (count == 0) return;
  std::size_t first = 0;
  const auto close = [&](std::size_t last, std::string_view after) {
    // The number of a numbered step is no figure of the sentence.
    const bool numbered = last - first > 1 && words[first].number && words[first + 1].before == '.';
    if (last > first) all.push_back({first + (numbered ? 1 : 0), last, has(after, "?")});
    first = last;
  };
  for (std::size_t i = 1; i < count; ++i) {
    const auto& before = words[i - 1];
    const auto& word = words[i];
    if (word.before == 0 && i - first < longest && word.begin - before.end < 3) continue;
    const auto between = text.substr(before.end, word.begin - before.end);
    if (i - first >= longest || ends_sentence(between, before, text[word.begin], i - 1 == first))
      close(i, between);
  }
  close(count, text.substr(words[count - 1].end));
}

}  // namespace sealworthy::reading
