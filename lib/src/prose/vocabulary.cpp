#include "prose/vocabulary.hpp"

#include <algorithm>

#include "checks/fields.hpp"
#include "text/forms.hpp"
#include "text/words.hpp"

namespace sealworthy::prose {
namespace {

constexpr std::array<std::string_view, senses> keys{"process",
                                                    "other-work",
                                                    "heat-jars",
                                                    "after",
                                                    "increase",
                                                    "fill",
                                                    "liquid",
                                                    "raw",
                                                    "hot",
                                                    "raw-pack",
                                                    "hot-pack",
                                                    "headspace",
                                                    "leave",
                                                    "top",
                                                    "jar",
                                                    "each",
                                                    "put-in",
                                                    "empty-jars",
                                                    "lids-alone",
                                                    "closed",
                                                    "gauge-dial",
                                                    "gauge-weighted",
                                                    "pressure",
                                                    "above",
                                                    "below",
                                                    "and-up",
                                                    "higher",
                                                    "at-home",
                                                    "filled-jars",
                                                    "mixture",
                                                    "in-water",
                                                    "altitude",
                                                    "canning",
                                                    "heading-ingredients",
                                                    "heading-directions",
                                                    "heading-notes",
                                                    "heading-other",
                                                    "yield",
                                                    "taken-back",
                                                    "aside",
                                                    "shorten",
                                                    "if-liked",
                                                    "seal",
                                                    "glasses",
                                                    "stored",
                                                    "oven-work",
                                                    "heat-food",
                                                    "goes-on-hot"};

std::vector<std::string> split(std::string_view text) {
  const text::Words words(text);
  std::vector<std::string> out;
  for (const auto& word : words) out.emplace_back(word.text);
  return out;
}

bool stands_at(std::span<const phrases::Token> tokens, std::size_t place,
               const std::vector<std::string>& words) {
  if (words.size() > tokens.size() - place) return false;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const auto& token = tokens[place + i];
    if (token.text != words[i]) return false;
    if (i > 0 && token.before != 0) return false;
  }
  return true;
}

/// Words of a method's name that are used of canning alone.
bool speaks_of_canning(const std::vector<std::string>& words, const reading::MethodWord& method) {
  static constexpr std::array<std::string_view, 12> sure{
      "canner", "canning",        "canned",         "can",       "bath",          "bathing", "waterbath",
      "wb",     "pasteurization", "pasteurisation", "inversion", "pressurecanner"};
  if (method.kind == reading::MethodKind::not_accepted && words.size() == 1) return false;
  return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
    return std::find(sure.begin(), sure.end(), word) != sure.end();
  });
}

}  // namespace

void Vocabulary::add(std::string_view text, Sense sense) {
  auto words = split(text);
  if (words.empty()) return;
  if (words.size() > 1) {
    auto& list = phrases_[words.front()];
    list.push_back({std::move(words), sense});
    return;
  }
  text::each_form(words.front(), [&](std::string_view form) {
    auto& list = phrases_[std::string(form)];
    const bool known = std::any_of(list.begin(), list.end(), [&](const Phrase& phrase) {
      return phrase.words.size() == 1 && phrase.sense == sense;
    });
    if (!known) list.push_back({{std::string(form)}, sense});
  });
}

void Vocabulary::load(std::string_view file, const yaml::Document& document,
                      std::vector<foods::LoadError>& errors) {
  const checks::ErrorSink sink{file, errors};
  checks::Fields top(document.root(), "directions file", sink);
  const yaml::Node* words = top.find("directions");
  top.done();
  if (words == nullptr) return;
  checks::Fields fields(*words, "directions", sink);
  if (const auto psi = fields.number("largest-psi")) largest_psi_ = *psi;
  if (const auto hours = fields.number("longest-hours")) longest_minutes_ = *hours * 60;
  for (std::size_t i = 0; i < keys.size(); ++i)
    for (const std::string& text : fields.list(keys[i])) add(text, static_cast<Sense>(i));
  for (const std::string& text : fields.list("page-words")) canning_.add(text);
  fields.done();
}

void Vocabulary::finish(const reading::Methods& methods) {
  for (const auto& method : methods.all()) {
    if (boiling_water_ == nullptr && method.kind == reading::MethodKind::boiling_water)
      boiling_water_ = &method;
    for (const auto& name : method.names) {
      Name entry{split(name), &method, false};
      entry.sure = speaks_of_canning(entry.words, method);
      auto& list = names_[entry.words.front()];
      list.push_back(std::move(entry));
    }
  }
  lexicon_.finish();
}

Senses Vocabulary::at(std::span<const phrases::Token> tokens, std::size_t place) const {
  Senses out;
  const auto found = phrases_.find(std::string(tokens[place].text));
  if (found == phrases_.end()) return out;
  for (const Phrase& phrase : found->second) {
    auto& length = out.length[static_cast<std::size_t>(phrase.sense)];
    if (phrase.words.size() > length && stands_at(tokens, place, phrase.words))
      length = static_cast<std::uint8_t>(phrase.words.size());
  }
  return out;
}

MethodAt Vocabulary::method_at(std::span<const phrases::Token> tokens, std::size_t place) const {
  MethodAt best;
  const auto found = names_.find(std::string(tokens[place].text));
  if (found == names_.end()) return best;
  for (const Name& name : found->second)
    if (name.words.size() > best.words && stands_at(tokens, place, name.words))
      best = {name.method, name.words.size(), name.sure};
  return best;
}

bool Vocabulary::is(std::string_view text, Sense sense) const {
  const auto words = split(text);
  if (words.empty()) return false;
  const auto found = phrases_.find(words.front());
  if (found == phrases_.end()) return false;
  return std::any_of(found->second.begin(), found->second.end(),
                     [&](const Phrase& phrase) { return phrase.sense == sense && phrase.words == words; });
}

bool Vocabulary::begins_with(std::string_view text, Sense sense) const {
  const text::Words words(text.substr(0, 64));
  if (words.empty()) return false;
  const auto found = phrases_.find(std::string(words[0].text));
  return found != phrases_.end() &&
         std::any_of(found->second.begin(), found->second.end(),
                     [&](const Phrase& phrase) { return phrase.sense == sense && phrase.words.size() == 1; });
}

}  // namespace sealworthy::prose
