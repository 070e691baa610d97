#include "phrases/phrase_reader.hpp"

#include <algorithm>
#include <limits>

#include "text/nearest.hpp"

namespace sealworthy::phrases {
namespace {

constexpr std::string_view taken_back = "TAKEN-BACK";

std::string_view trimmed(std::string_view text) {
  while (text.starts_with(' ')) text.remove_prefix(1);
  while (text.ends_with(' ')) text.remove_suffix(1);
  return text;
}

/// A list's name: capitals, digits and hyphens, at least two.
bool is_name(std::string_view word) {
  return word.size() > 1 && word[0] >= 'A' && word[0] <= 'Z' &&
         std::all_of(word.begin(), word.end(),
                     [](char c) { return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-'; });
}

/// A word as text::Words would give it: small letters, digits, apostrophes; or a mark it keeps.
bool is_word(std::string_view word) {
  if (word == "%" || word == "&" || word == "+") return true;
  return !word.empty() && std::all_of(word.begin(), word.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '\'' || c == '/' || c == '.' || c == ',';
  });
}

bool yes(const yaml::Node& node) { return node.text == "yes" || node.text == "true"; }

}  // namespace

void PhraseReader::wrong(Position at, std::string message, std::string suggestion) {
  errors_.push_back({std::string(file_), {at, std::move(message), std::move(suggestion)}});
}

ListIndex PhraseReader::declare(std::string_view name) {
  const auto [place, fresh] = names_.try_emplace(name, static_cast<ListIndex>(into_.lists_.size()));
  if (fresh) into_.lists_.emplace_back();
  return place->second;
}

Term PhraseReader::term(std::string_view word) {
  const auto [place, fresh] = terms_.try_emplace(word, Term{0});
  if (fresh) {
    auto& lexicon = into_.lexicon_;
    place->second = word.starts_with('=') ? lexicon.exactly(word.substr(1)) : lexicon.any_form(word);
    into_.uses_.push_back(0);
  }
  ++into_.uses_[place->second];
  return place->second;
}

void PhraseReader::define(std::string_view file, const yaml::Node& vocabulary) {
  file_ = file;
  if (!vocabulary.is_map()) return wrong(vocabulary.at, "`vocabulary:` must be a map of lists of words.");
  for (const auto& entry : vocabulary.entries)
    if (is_name(entry.key)) declare(entry.key);
  for (const auto& entry : vocabulary.entries) {
    const auto key = std::string(entry.key);
    if (!is_name(entry.key))
      wrong(entry.key_at, "The name of a list of words stands in capitals; this is `" + key + "`.");
    else if (!entry.value.is_sequence() || entry.value.items.empty())
      wrong(entry.key_at, "The list " + key + " holds no words.");
    else if (const auto list = declare(entry.key); into_.lists_[list].count != 0)
      wrong(entry.key_at, "The list " + key + " is given twice.");
    else
      fill_list(entry, list);
  }
  for (const auto& entry : vocabulary.entries) {
    std::vector<ListIndex> path;
    if (!is_name(entry.key) || !circular(names_.at(entry.key), path)) continue;
    wrong(entry.key_at, "The list " + std::string(entry.key) + " uses itself.");
    into_.lists_[names_.at(entry.key)].count = 0;
  }
}

void PhraseReader::fill_list(const yaml::Entry& entry, ListIndex list) {
  const auto first = into_.alternatives_.size();
  for (const auto& item : entry.value.items) {
    if (item.is_scalar())
      read_alternative(item.text, item.at, false);
    else
      wrong(item.at, "A list holds words and phrases only.");
  }
  into_.lists_[list] = {static_cast<std::uint32_t>(first),
                        static_cast<std::uint32_t>(into_.alternatives_.size() - first)};
}

bool PhraseReader::circular(ListIndex list, std::vector<ListIndex>& path) const {
  if (std::find(path.begin(), path.end(), list) != path.end()) return true;
  path.push_back(list);
  for (const auto& alternative : into_.alternatives(list))
    for (const auto& element : into_.elements(alternative))
      if (element.kind == Element::Kind::list && circular(element.index, path)) return true;
  path.pop_back();
  return false;
}

/// Words between spaces; a hyphen parts words as it does in a text, but not in a list's name.
bool PhraseReader::words_of(std::string_view text, Words& out) {
  while (!(text = trimmed(text)).empty()) {
    auto word = text.substr(0, text.find(' '));
    text.remove_prefix(word.size());
    while (!word.empty()) {
      const auto part = is_name(word) ? word : word.substr(0, word.find('-'));
      if (out.count == Words::most) return false;
      out.all[out.count++] = part;
      word.remove_prefix(std::min(part.size() + 1, word.size()));
    }
  }
  return true;
}

/// "under 10 minutes", "over 75 F", "from 150 to 190 F", "any hours". False: not a figure.
bool PhraseReader::read_figure(Words& words, Position at, Element& out) {
  const auto kind = words.peek();
  const bool any = kind == "any";
  const bool range = kind == "from";
  if (!any && !range && kind != "under" && kind != "over") return false;
  if (range && words.peek(2) != "to") return false;
  const double first = any ? 0 : number(words.peek(1)).value_or(-1);
  const double second = range ? number(words.peek(3)).value_or(-1) : 0;
  const std::size_t unit_at = any ? 1 : range ? 4 : 2;
  const auto word = words.peek(unit_at);
  if (first < 0 || second < 0 || word.empty()) return false;
  const auto* unit = unit_word(word == "F" ? std::string_view("f") : word);
  if (unit == nullptr && any) return false;
  words.at += unit_at + 1;
  out.kind = Element::Kind::figure;
  out.index = static_cast<std::uint16_t>(into_.tests_.size());
  if (unit == nullptr) {
    wrong(at, "`" + std::string(word) + "` is no unit that a figure can have here.",
          "minutes, hours, days, weeks, months, years, F, inches, pounds, cups or feet");
    return true;
  }
  constexpr double infinity = std::numeric_limits<double>::infinity();
  FigureTest test{unit->dimension, -infinity, infinity};
  // Half a thousandth of slack keeps "from 1 to 2 inches" closed at both ends.
  if (kind == "under") test.below = first * unit->size;
  if (kind == "over") test.above = first * unit->size;
  if (range) test.above = first * unit->size - .0005;
  if (range) test.below = second * unit->size + .0005;
  into_.tests_.push_back(test);
  return true;
}

bool PhraseReader::read_name(std::string_view word, Position at, Element& out) {
  const auto found = names_.find(word);
  if (found != names_.end()) {
    out.kind = Element::Kind::list;
    out.index = found->second;
    return true;
  }
  std::vector<std::string_view> known;
  for (const auto& [name, index] : names_) known.push_back(name);
  std::sort(known.begin(), known.end());
  const auto near = text::nearest(word, known);
  wrong(at, "There is no list of words named " + std::string(word) + ".",
        near ? std::string(*near) : std::string());
  return false;
}

bool PhraseReader::read_element(Words& words, Position at, Element& out) {
  const auto errors = errors_.size();
  if (read_figure(words, at, out)) return errors_.size() == errors;
  const auto word = words.peek();
  ++words.at;
  if (is_name(word)) return read_name(word, at, out);
  if (is_word(word.starts_with('=') ? word.substr(1) : word)) {
    out.index = term(word);
    return true;
  }
  wrong(at, "`" + std::string(word) + "` can't be matched: words stand in small letters without marks.");
  return false;
}

bool PhraseReader::read_alternative(std::string_view text, Position at, bool may_deny) {
  Words words;
  Alternative alternative;
  alternative.first = static_cast<std::uint32_t>(into_.elements_.size());
  const auto fail = [&] {
    into_.elements_.resize(alternative.first);
    return false;
  };
  const bool fits = words_of(text, words);
  if (may_deny && words.peek() == "not") {
    alternative.denied = true;
    ++words.at;
  }
  while (!words.empty()) {
    Element element;
    if (words.peek() == "~") {
      element.loose = true;
      ++words.at;
      if (alternative.count == 0 || words.empty()) {
        wrong(at, "`~` stands between two words.");
        return fail();
      }
    }
    if (!read_element(words, at, element)) return fail();
    into_.elements_.push_back(element);
    ++alternative.count;
    if (element.kind == Element::Kind::word)
      alternative.term_bits |= std::uint64_t{1} << (element.index % 64U);
  }
  if (alternative.count == 0) {
    wrong(at, "A way of saying it is empty.");
    return fail();
  }
  if (alternative.count > 8 || !fits) {
    wrong(at, "A phrase has at most eight words.");
    return fail();
  }
  into_.alternatives_.push_back(alternative);
  return true;
}

bool PhraseReader::read_item(const yaml::Node& item, ListIndex& out, bool seldom) {
  const auto text = trimmed(item.text);
  if (!item.is_scalar() || text.empty()) {
    wrong(item.at, "An item of a pattern is a text such as `jar | bottle`.");
    return false;
  }
  if (const auto known = seldom ? items_.end() : items_.find(text); known != items_.end()) {
    out = known->second;
    return true;
  }
  if (const auto named = names_.find(text); named != names_.end()) {
    out = named->second;
    return true;
  }
  const auto first = static_cast<std::uint32_t>(into_.alternatives_.size());
  for (auto rest = text;;) {
    const auto bar = std::min(rest.find('|'), rest.size());
    if (!read_alternative(rest.substr(0, bar), item.at, true)) {
      into_.alternatives_.resize(first);
      return false;
    }
    if (bar == rest.size()) break;
    rest.remove_prefix(bar + 1);
  }
  out = static_cast<ListIndex>(into_.lists_.size());
  into_.lists_.push_back({first, static_cast<std::uint32_t>(into_.alternatives_.size()) - first});
  if (!seldom) items_.emplace(text, out);
  return true;
}

bool PhraseReader::read_items(const yaml::Node& node, Items& out) {
  if (!node.is_sequence() || node.items.empty()) {
    wrong(node.at, "A pattern is a list of items in brackets.");
    return false;
  }
  if (node.items.size() > Items::most) {
    wrong(node.at, "A pattern has at most eight items.");
    return false;
  }
  for (const auto& item : node.items)
    if (!read_item(item, out.lists[out.count++])) return false;
  return true;
}

bool PhraseReader::mentions(ListIndex list, Term term) const {
  const auto alternatives = into_.alternatives(list);
  return std::any_of(alternatives.begin(), alternatives.end(), [&](const Alternative& alternative) {
    const auto elements = into_.elements(alternative);
    return std::any_of(elements.begin(), elements.end(), [&](const Element& element) {
      return element.kind == Element::Kind::word && element.index == term;
    });
  });
}

bool PhraseReader::read_pattern(const yaml::Node& node, Pattern& out) {
  if (!node.is_map()) return read_items(node, out.items);
  static constexpr std::array<std::string_view, 4> keys{"words", "in-order", "reach", "unless"};
  for (const auto& [key, at, value] : node.entries) {
    if (key == "words") {
      if (!read_items(value, out.items)) return false;
    } else if (key == "in-order") {
      out.in_order = yes(value);
    } else if (key == "reach") {
      const auto reach = number(value.text).value_or(0);
      if (reach < 1 || reach > static_cast<double>(Line::longest)) {
        wrong(at, "`reach:` is a number of words from 1 to 96.");
        return false;
      }
      out.reach = static_cast<std::uint8_t>(reach);
    } else if (key == "unless") {
      out.unless = read_unless(file_, value);
    } else {
      const auto near = text::nearest(key, keys);
      wrong(at, "A pattern knows no key `" + std::string(key) + "`.", near ? std::string(*near) : "");
      return false;
    }
  }
  if (out.items.count == 0) wrong(node.at, "A pattern needs `words:`.");
  return out.items.count != 0;
}

void PhraseReader::read_patterns(std::string_view file, const yaml::Node& told, std::vector<Pattern>& out) {
  file_ = file;
  if (!told.is_sequence() || told.items.empty()) return wrong(told.at, "`told:` must be a list of patterns.");
  const auto condition_word = term("if");
  for (const auto& node : told.items) {
    Pattern pattern;
    if (!read_pattern(node, pattern)) continue;
    const auto items = pattern.items.all();
    pattern.on_condition = std::any_of(items.begin(), items.end(),
                                       [&](ListIndex list) { return mentions(list, condition_word); });
    out.push_back(std::move(pattern));
  }
}

std::vector<Items> PhraseReader::read_unless(std::string_view file, const yaml::Node& unless) {
  file_ = file;
  std::vector<Items> out;
  if (!unless.is_sequence() || unless.items.empty()) {
    wrong(unless.at, "`unless:` must be a list of words, phrases or patterns.");
    return out;
  }
  out.reserve(unless.items.size());
  for (const auto& node : unless.items) {
    Items items;
    if (node.is_sequence() ? read_items(node, items) : read_item(node, items.lists[items.count++], true))
      out.push_back(items);
  }
  return out;
}

void PhraseReader::finish() {
  into_.lexicon_.finish();
  const auto found = names_.find(taken_back);
  into_.has_taken_back_ = found != names_.end();
  if (into_.has_taken_back_) into_.taken_back_ = found->second;
}

}  // namespace sealworthy::phrases
