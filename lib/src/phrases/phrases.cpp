#include "phrases/phrases.hpp"

#include <algorithm>
#include <array>
#include <limits>

#include "text/nearest.hpp"

namespace sealworthy::phrases {
namespace {

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

std::vector<std::string_view> split(std::string_view text, char at) {
  std::vector<std::string_view> parts;
  while (true) {
    const auto end = text.find(at);
    const auto part = trimmed(text.substr(0, end));
    if (at != ' ' || !part.empty()) parts.push_back(part);
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

/// A list's name: capitals, digits and hyphens, at least two.
bool is_name(std::string_view word) {
  return word.size() > 1 && word[0] >= 'A' && word[0] <= 'Z' &&
         std::all_of(word.begin(), word.end(),
                     [](char c) { return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-'; });
}

/// A word as text::Words would give it: small letters, digits, apostrophes; or a mark it keeps.
bool is_word(std::string_view word) {
  return word == "%" || word == "&" || word == "+" ||
         (!word.empty() && std::all_of(word.begin(), word.end(), [](char c) {
           return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '\'' || c == '/' || c == '.' || c == ',';
         }));
}

/// The words of a phrase; a hyphen parts words as it does in a text, but not in a list's name.
std::vector<std::string_view> phrase_words(std::string_view text) {
  std::vector<std::string_view> words;
  for (const auto word : split(text, ' ')) {
    if (is_name(word) || word.find('-') == std::string_view::npos)
      words.push_back(word);
    else
      for (const auto part : split(word, '-')) words.push_back(part);
  }
  return words;
}

bool yes(const yaml::Node& node) { return node.text == "yes" || node.text == "true"; }

}  // namespace

void Phrases::Place::wrong(std::string message, std::string suggestion) const {
  errors->push_back({std::string(file), {at, std::move(message), std::move(suggestion)}});
}

const std::uint16_t* Phrases::named(std::string_view name) const {
  const auto found = names_.find(name);
  return found == names_.end() ? nullptr : &found->second;
}

std::uint16_t Phrases::declare(std::string_view name) {
  const auto [place, fresh] = names_.try_emplace(std::string(name), static_cast<std::uint16_t>(lists_.size()));
  if (fresh) lists_.emplace_back();
  return place->second;
}

std::uint16_t Phrases::term(std::string_view word) {
  auto [place, fresh] = terms_.try_emplace(std::string(word), std::uint16_t{0});
  if (fresh) {
    place->second = word.starts_with('=') ? lexicon_.exactly(word.substr(1)) : lexicon_.any_form(word);
    uses_.push_back(0);
  }
  ++uses_[place->second];
  return place->second;
}

void Phrases::define(std::string_view file, const yaml::Node& vocabulary,
                     std::vector<foods::LoadError>& errors) {
  if (!vocabulary.is_map()) {
    Place{file, vocabulary.at, &errors}.wrong("`vocabulary:` must be a map of lists of words.");
    return;
  }
  for (const auto& entry : vocabulary.entries)
    if (is_name(entry.key)) declare(entry.key);
  for (const auto& entry : vocabulary.entries) {
    const Place place{file, entry.key_at, &errors};
    if (!is_name(entry.key)) {
      place.wrong("The name of a list of words stands in capitals; this is `" + std::string(entry.key) + "`.");
    } else if (!entry.value.is_sequence() || entry.value.items.empty()) {
      place.wrong("The list " + std::string(entry.key) + " holds no words.");
    } else if (const auto list = declare(entry.key); !lists_[list].alternatives.empty()) {
      place.wrong("The list " + std::string(entry.key) + " is given twice.");
    } else {
      for (const auto& item : entry.value.items) {
        Alternative alternative;
        const Place here{file, item.at, &errors};
        if (!item.is_scalar())
          here.wrong("A list holds words and phrases only.");
        else if (read_alternative(item.text, here, alternative, false))
          lists_[list].alternatives.push_back(std::move(alternative));
      }
    }
  }
  for (const auto& entry : vocabulary.entries) {
    std::vector<std::uint16_t> path;
    if (!is_name(entry.key) || !circular(*named(entry.key), path)) continue;
    Place{file, entry.key_at, &errors}.wrong("The list " + std::string(entry.key) + " uses itself.");
    lists_[*named(entry.key)].alternatives.clear();
  }
}

bool Phrases::circular(std::uint16_t list, std::vector<std::uint16_t>& path) const {
  if (std::find(path.begin(), path.end(), list) != path.end()) return true;
  path.push_back(list);
  for (const auto& alternative : lists_[list].alternatives)
    for (const auto& element : alternative.elements)
      if (element.kind == Element::Kind::list && circular(element.index, path)) return true;
  path.pop_back();
  return false;
}

bool Phrases::read_figure(std::vector<std::string_view>& words, const Place& place, Element& out) {
  const auto kind = words[0];
  FigureTest test;
  test.below = std::numeric_limits<double>::infinity();
  test.above = -test.below;
  std::size_t unit_at = 2;
  const auto figure_at = [&](std::size_t i) {
    return i < words.size() ? number(words[i]).value_or(-1) : -1;
  };
  const double first = figure_at(1);
  double second = 0;
  if (kind == "any") {
    unit_at = 1;
  } else if (kind == "from") {
    if (words.size() < 4 || words[2] != "to") return false;
    second = figure_at(3);
    unit_at = 4;
  }
  if (words.size() <= unit_at || (kind != "any" && (first < 0 || second < 0))) return false;
  const bool fahrenheit = words[unit_at] == "F";
  const auto* unit = unit_word(fahrenheit ? std::string_view("f") : words[unit_at]);
  if (unit == nullptr) {
    if (kind == "any") return false;
    place.wrong("`" + std::string(words[unit_at]) + "` is no unit that a figure can have here.",
                "minutes, hours, days, weeks, months, years, F, inches, pounds, cups or feet");
    return true;
  }
  test.dimension = unit->dimension;
  // Half a thousandth of slack keeps "from 1 to 2 inches" closed at both ends.
  if (kind == "under") test.below = first * unit->size;
  if (kind == "over") test.above = first * unit->size;
  if (kind == "from") {
    test.above = first * unit->size - .0005;
    test.below = second * unit->size + .0005;
  }
  words.erase(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(unit_at) + 1);
  out.kind = Element::Kind::figure;
  out.index = static_cast<std::uint16_t>(tests_.size());
  tests_.push_back(test);
  return true;
}

bool Phrases::read_alternative(std::string_view text, const Place& place, Alternative& out,
                               bool may_deny) {
  auto words = phrase_words(text);
  if (may_deny && !words.empty() && words[0] == "not") {
    out.denied = true;
    words.erase(words.begin());
  }
  bool loose = false;
  while (!words.empty()) {
    const auto word = words.front();
    Element element;
    element.loose = loose;
    loose = false;
    if (word == "~") {
      loose = true;
      words.erase(words.begin());
      if (out.elements.empty() || words.empty()) {
        place.wrong("`~` stands between two words.");
        return false;
      }
      continue;
    }
    const bool may_be_figure = word == "under" || word == "over" || word == "from" || word == "any";
    const auto before = place.errors->size();
    if (may_be_figure && read_figure(words, place, element)) {
      if (place.errors->size() != before) return false;
    } else if (is_name(word)) {
      const auto* list = named(word);
      if (list == nullptr) {
        std::vector<std::string_view> known;
        for (const auto& [name, index] : names_) known.push_back(name);
        const auto near = text::nearest(word, known);
        place.wrong("There is no list of words named " + std::string(word) + ".",
                    near ? std::string(*near) : std::string());
        return false;
      }
      element.kind = Element::Kind::list;
      element.index = *list;
      words.erase(words.begin());
    } else if (is_word(word.starts_with('=') ? word.substr(1) : word)) {
      element.index = term(word);
      words.erase(words.begin());
    } else {
      place.wrong("`" + std::string(word) + "` can't be matched: words stand in small letters without marks.");
      return false;
    }
    out.elements.push_back(element);
  }
  if (out.elements.empty()) {
    place.wrong("A way of saying it is empty.");
    return false;
  }
  if (out.elements.size() > 8) {
    place.wrong("A phrase has at most eight words.");
    return false;
  }
  return true;
}

bool Phrases::read_item(const yaml::Node& item, const Place& place, std::uint16_t& out) {
  if (!item.is_scalar() || trimmed(item.text).empty()) {
    place.wrong("An item of a pattern is a text such as `jar | bottle`.");
    return false;
  }
  const auto known = items_.find(item.text);
  if (known != items_.end()) {
    out = known->second;
    return true;
  }
  if (is_name(trimmed(item.text)) && named(trimmed(item.text)) != nullptr) {
    out = *named(trimmed(item.text));
    return true;
  }
  List list;
  for (const auto text : split(item.text, '|')) {
    Alternative alternative;
    if (!read_alternative(text, place, alternative, true)) return false;
    list.alternatives.push_back(std::move(alternative));
  }
  out = static_cast<std::uint16_t>(lists_.size());
  lists_.push_back(std::move(list));
  items_.emplace(std::string(item.text), out);
  return true;
}

bool Phrases::read_items(const yaml::Node& node, const Place& place, std::vector<std::uint16_t>& out) {
  if (!node.is_sequence() || node.items.empty()) {
    place.wrong("A pattern is a list of items in brackets.");
    return false;
  }
  if (node.items.size() > 8) {
    place.wrong("A pattern has at most eight items.");
    return false;
  }
  for (const auto& item : node.items) {
    std::uint16_t list = 0;
    if (!read_item(item, {place.file, item.at, place.errors}, list)) return false;
    out.push_back(list);
  }
  return true;
}

bool Phrases::mentions(std::uint16_t list, std::string_view word) const {
  const auto& alternatives = lists_[list].alternatives;
  return std::any_of(alternatives.begin(), alternatives.end(), [&](const Alternative& alternative) {
    return std::any_of(
        alternative.elements.begin(), alternative.elements.end(), [&](const Element& element) {
          if (element.kind == Element::Kind::list) return mentions(element.index, word);
          return element.kind == Element::Kind::word && lexicon_.name(element.index) == word;
        });
  });
}

bool Phrases::read_pattern(const yaml::Node& node, const Place& place, Pattern& out) {
  if (!node.is_map()) return read_items(node, place, out.items);
  static constexpr std::array<std::string_view, 4> keys{"words", "in-order", "reach", "unless"};
  for (const auto& [key, at, value] : node.entries) {
    const Place here{place.file, at, place.errors};
    if (key == "words") {
      if (!read_items(value, {place.file, value.at, place.errors}, out.items)) return false;
    } else if (key == "in-order") {
      out.in_order = yes(value);
    } else if (key == "reach") {
      const auto reach = number(value.text);
      if (!reach || *reach < 1 || *reach > 96) {
        here.wrong("`reach:` is a number of words from 1 to 96.");
        return false;
      }
      out.reach = static_cast<int>(*reach);
    } else if (key == "unless") {
      out.unless = read_unless(place.file, value, *place.errors);
    } else {
      const auto near = text::nearest(key, keys);
      here.wrong("A pattern knows no key `" + std::string(key) + "`.", near ? std::string(*near) : "");
      return false;
    }
  }
  if (out.items.empty()) place.wrong("A pattern needs `words:`.");
  return !out.items.empty();
}

void Phrases::read_patterns(std::string_view file, const yaml::Node& told, std::vector<Pattern>& out,
                            std::vector<foods::LoadError>& errors) {
  if (!told.is_sequence() || told.items.empty()) {
    Place{file, told.at, &errors}.wrong("`told:` must be a list of patterns.");
    return;
  }
  for (const auto& node : told.items) {
    Pattern pattern;
    if (!read_pattern(node, {file, node.at, &errors}, pattern)) continue;
    pattern.on_condition = std::any_of(pattern.items.begin(), pattern.items.end(),
                                       [&](std::uint16_t list) { return mentions(list, "if"); });
    out.push_back(std::move(pattern));
  }
}

std::vector<std::vector<std::uint16_t>> Phrases::read_unless(std::string_view file, const yaml::Node& unless,
                                                             std::vector<foods::LoadError>& errors) {
  std::vector<std::vector<std::uint16_t>> out;
  if (!unless.is_sequence() || unless.items.empty()) {
    Place{file, unless.at, &errors}.wrong("`unless:` must be a list of words, phrases or patterns.");
    return out;
  }
  for (const auto& node : unless.items) {
    const Place place{file, node.at, &errors};
    std::vector<std::uint16_t> items;
    if (node.is_sequence()) {
      if (!read_items(node, place, items)) continue;
    } else {
      std::uint16_t list = 0;
      if (!read_item(node, place, list)) continue;
      items.push_back(list);
    }
    out.push_back(std::move(items));
  }
  return out;
}

}  // namespace sealworthy::phrases
