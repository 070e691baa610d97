#include "reading/match_doubt.hpp"

#include <algorithm>

#include "text/words.hpp"

namespace sealworthy::reading {
namespace {

std::vector<std::string> names_of(const std::vector<std::size_t>& ingredients, const Reading& reading) {
  std::vector<std::string> out;
  for (const auto i : ingredients) {
    const auto& read = reading.ingredients[i].read;
    std::string name = read.foods.empty() ? std::string() : read.foods.front().name;
    if (name.empty() && !read.unknown.empty()) name = read.unknown.front();
    if (!name.empty() && std::find(out.begin(), out.end(), name) == out.end()) out.push_back(std::move(name));
  }
  return out;
}

std::vector<std::string> unknown_of(const Reading& reading) {
  std::vector<std::string> out;
  for (const auto& ingredient : reading.ingredients)
    if (!ingredient.read.not_eaten)
      for (const auto& word : ingredient.read.unknown) out.push_back("\"" + word + "\"");
  return out;
}

std::vector<std::string> missing_of(const Candidate& candidate) {
  std::vector<std::string> out;
  const auto& names = candidate.entry->line_names;
  for (std::size_t i = 0; i < names.size(); ++i)
    if ((candidate.missing >> i & 1U) != 0 && !names[i].empty()) out.emplace_back(names[i]);
  return out;
}

/// One thing named in the plural counts as several: "peaches", but not "asparagus".
bool several(const std::vector<std::string>& items) {
  if (items.size() > 1) return true;
  const text::Words words(items.front());
  return !words.empty() && text::singular(words[words.size() - 1].text) != words[words.size() - 1].text;
}

void add(std::string& text, const std::string& clause) {
  if (clause.empty()) return;
  if (!text.empty()) text += "; ";
  text += clause;
}

/// ", which differs in 3 places": lines and foods of a formula that are not as published.
std::string how_far(std::size_t places) {
  if (places == 0) return {};
  return ", which differs in " + std::to_string(places) + (places == 1 ? " place" : " places");
}

}  // namespace

std::string listed(const std::vector<std::string>& items) {
  constexpr std::size_t most = 3;
  std::string out;
  const std::size_t shown = items.size() <= most ? items.size() : most - 1;
  for (std::size_t i = 0; i < shown; ++i) {
    if (i > 0) out += i + 1 == items.size() ? " and " : ", ";
    out += items[i];
  }
  if (shown < items.size()) out += " and " + std::to_string(items.size() - shown) + " more";
  return out;
}

std::string doubt_about(const Candidate& candidate, const Tally& tally, const Reading& reading,
                        const MatchIndex::Impl& index, std::size_t places) {
  const auto& product = *candidate.entry->product;
  std::string out;
  const auto foreign = names_of(tally.foreign(*candidate.entry), reading);
  const auto unknown = foreign.empty() ? unknown_of(reading) : std::vector<std::string>{};
  const auto missing = missing_of(candidate);
  if (!foreign.empty()) add(out, listed(foreign) + (several(foreign) ? " are not in it" : " is not in it"));
  if (!unknown.empty()) add(out, "no food is known by " + listed(unknown));
  if (!missing.empty()) add(out, "the tested process also has " + listed(missing));
  if (candidate.contradicted != 0)
    add(out, "the card says \"" + std::string(index.forms.words_for(candidate.contradicted)) +
                 "\", which it does not cover");
  if (candidate.unsaid)
    add(out,
        product.identity.asks.empty()
            ? "the card does not say \"" + std::string(index.forms.words_for(candidate.entry->any)) + "\""
            : "the card does not say " + product.identity.asks);
  return "nearest tested: " + product.title + how_far(places) + "; " + out;
}

std::string doubt_between(const std::vector<Candidate>& candidates) {
  for (const auto& candidate : candidates)
    if (!candidate.entry->product->identity.asks.empty())
      return "the card does not say " + candidate.entry->product->identity.asks;
  std::vector<std::string> titles;
  titles.reserve(candidates.size());
  for (const auto& candidate : candidates) titles.push_back("\"" + candidate.entry->product->title + "\"");
  return "it could be " + listed(titles);
}

}  // namespace sealworthy::reading
