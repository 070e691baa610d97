#include "recipe/fields.hpp"

#include <algorithm>
#include <array>

#include "text/nearest.hpp"

namespace sealworthy::recipe {
namespace {

constexpr std::size_t longest_shown = 80;  // bytes of a line that a suggestion repeats

/// Keys that cooks may well write, with what to do. They are no synonyms: one key has one name.
struct Hint {
  std::string_view key;
  std::string_view suggestion;
};
// Notes may well change the recipe, so what they say has to stand where it is read.
constexpr std::string_view notes_hint =
    "Write the notes among the `steps:`: they are read there. A remark that nobody cans by goes after a `#`.";
constexpr std::array hints{
    Hint{"title", "Write `recipe:`."},
    Hint{"name", "Write `recipe:`."},
    Hint{"yield", "Write `makes:`."},
    Hint{"yields", "Write `makes:`."},
    Hint{"instructions", "Write `steps:`."},
    Hint{"directions", "Write `steps:`."},
    Hint{"method", "It belongs under `process:`, indented by two spaces."},
    Hint{"gauge", "It belongs under `process:`, indented by two spaces."},
    Hint{"pressure", "It belongs under `process:`, indented by two spaces."},
    Hint{"time", "It belongs under `process:`, indented by two spaces."},
    Hint{"altitude", "It belongs under `process:`, indented by two spaces."},
    Hint{"minutes", "Write `time:` under `process:`, as in `time: 25 minutes`."},
    Hint{"kitchen", "A kitchen has a file of its own, kitchen.yaml."},
    Hint{"canners", "Canners belong in the kitchen's file, kitchen.yaml."},
    Hint{"notes", notes_hint},
    Hint{"note", notes_hint},
};

std::string listed(std::span<const std::string_view> words) {
  std::string out;
  for (const std::string_view word : words) out.append(out.empty() ? "" : ", ").append(word);
  return out;
}

/// With a capital letter and a full stop.
std::string sentence(std::string text) {
  if (text.empty()) return text;
  if (text.front() >= 'a' && text.front() <= 'z') text.front() = static_cast<char>(text.front() - 'a' + 'A');
  if (text.back() != '.' && text.back() != '?') text += '.';
  return text;
}

std::string in_quotes(std::string_view text) {
  std::string quoted = "'";
  for (const char c : text) quoted.append(c == '\'' ? 2 : 1, c);
  return quoted + "'";
}

std::string shown(std::string_view text) {
  std::size_t end = std::min(text.size(), longest_shown);
  while (end < text.size() && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80) --end;
  return "`" + std::string(text.substr(0, end)) + (end < text.size() ? "...`" : "`");
}

}  // namespace

void refuse(Position at, std::string message, std::string suggestion) {
  throw Wrong{{at, std::move(message), std::move(suggestion)}};
}

void refuse(Position at, const quantity::FigureError& error) {
  refuse(at, sentence(error.message), sentence(error.suggestion));
}

void refuse_key(const yaml::Entry& entry, std::span<const std::string_view> known, std::string_view holder) {
  const std::string message = shown(entry.key) + " is not a key of " + std::string(holder) + ".";
  // "{time: 15 minutes, altitude: 0-1,000 ft}": the comma of a figure ends the entry before it.
  const auto digits = entry.key.find_first_not_of("0123456789");
  if (digits == 3)
    refuse(entry.key_at, message,
           "Inside { } and [ ] a figure with a comma stands in quotes, or without the comma.");
  if (const auto near = text::nearest(lowered(entry.key), known))
    refuse(entry.key_at, message, "Did you mean " + colon_key(*near) + "?");
  const auto* const hint =
      std::find_if(hints.begin(), hints.end(), [&](const Hint& h) { return h.key == lowered(entry.key); });
  const bool useful =
      hint != hints.end() && std::find(known.begin(), known.end(), "ingredients") != known.end();
  refuse(entry.key_at, message,
         useful ? std::string(hint->suggestion) : "Known here: " + listed(known) + ".");
}

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\n");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\n") - first + 1);
}

std::string colon_key(std::string_view key) { return "`" + std::string(key) + ":`"; }

std::string_view kind_words(const yaml::Node& node) {
  switch (node.kind) {
    case yaml::Node::Kind::null:
      return "nothing";
    case yaml::Node::Kind::scalar:
      return "a text";
    case yaml::Node::Kind::sequence:
      return "a list";
    case yaml::Node::Kind::map:
      return node.entries.empty() ? "nothing" : "names and values";
  }
  return "";
}

std::string_view text_of(const yaml::Node& value, std::string_view key) {
  if (!value.is_scalar())
    refuse(value.at, colon_key(key) + " takes one text, but holds " + std::string(kind_words(value)) + ".",
           "Write the text on the same line; one that begins with a bracket goes in quotes.");
  const std::string_view text = trimmed(value.text);
  if (text.empty())
    refuse(value.at, colon_key(key) + " is empty.", "Write its value, or leave the line out.");
  return text;
}

Placed<std::string_view> placed_text(const yaml::Entry& entry) {
  const std::string_view text = text_of(entry.value, entry.key);
  return {text, entry.value.at, text};
}

std::vector<const yaml::Node*> one_or_several(const yaml::Entry& entry) {
  if (!entry.value.is_sequence()) return {&entry.value};
  std::vector<const yaml::Node*> items;
  for (const yaml::Node& item : entry.value.items)
    if (!item.is_null()) items.push_back(&item);
  if (items.empty())
    refuse(entry.value.at, "The list of " + colon_key(entry.key) + " is empty.", "Fill it, or leave it out.");
  return items;
}

void refuse_accidental_map(const yaml::Node& item, std::string_view what) {
  const yaml::Entry& first = item.entries.front();
  std::string line(first.key);
  line += ':';
  if (first.value.is_scalar()) line.append(" ").append(first.value.text);
  refuse(item.at,
         "Because of its colon, YAML takes this " + std::string(what) +
             " for a name and a value: " + shown(line) + ".",
         line.size() > longest_shown || item.entries.size() > 1
             ? "Put the whole line in quotes, after the dash."
             : "Put the line in quotes: - " + in_quotes(line));
}

std::string lowered(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == '-') c = ' ';
  }
  return out;
}

void refuse_choice(const yaml::Entry& entry, std::string_view text, std::span<const std::string_view> words) {
  const std::string message = colon_key(entry.key) + " can't be " + shown(text) + ".";
  const auto near = text::nearest(lowered(text), words);
  refuse(entry.value.at, message,
         near ? "Did you mean `" + std::string(*near) + "`?" : "It is one of: " + listed(words) + ".");
}

Placed<Gauge> read_gauge(const yaml::Entry& entry) {
  static constexpr std::array<Choice<Gauge>, 4> choices{{{"dial", Gauge::dial},
                                                         {"weighted", Gauge::weighted},
                                                         {"dial gauge", Gauge::dial},
                                                         {"weighted gauge", Gauge::weighted}}};
  return choose<Gauge>(entry, choices);
}

}  // namespace sealworthy::recipe
