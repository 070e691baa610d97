#include "checks/phrases.hpp"

#include <algorithm>
#include <array>

namespace sealworthy::checks {
namespace {

bool denied(const text::Words& words, std::size_t at) {
  static constexpr std::array<std::string_view, 4> denials{"no", "not", "never", "without"};
  return at > 0 && std::find(denials.begin(), denials.end(), words[at - 1].text) != denials.end();
}

bool stands_at(const text::Words& words, std::size_t at, const std::vector<std::string>& phrase) {
  if (at + phrase.size() > words.size()) return false;
  for (std::size_t i = 0; i < phrase.size(); ++i)
    if (words[at + i].text != phrase[i]) return false;
  return true;
}

}  // namespace

Phrases::Phrases(const std::vector<std::string>& phrases) {
  for (const auto& text : phrases) {
    Phrase phrase;
    for (const auto& word : text::Words(text)) {
      if (!phrase.text.empty()) phrase.text += ' ';
      phrase.text += word.text;
      phrase.words.emplace_back(word.text);
    }
    if (!phrase.words.empty()) phrases_.push_back(std::move(phrase));
  }
}

std::string_view Phrases::in(const text::Words& words) const {
  for (std::size_t at = 0; at < words.size(); ++at)
    for (const auto& phrase : phrases_)
      if (stands_at(words, at, phrase.words) && !denied(words, at)) return phrase.text;
  return {};
}

bool Phrases::is(std::string_view state) const {
  const auto same = [](char a, char b) { return a == b || (a == ' ' && b == '-'); };
  return std::any_of(phrases_.begin(), phrases_.end(), [&](const Phrase& phrase) {
    return std::equal(phrase.text.begin(), phrase.text.end(), state.begin(), state.end(), same);
  });
}

}  // namespace sealworthy::checks
