#pragma once

/// Reading the fields of a map by a table of the keys it may have: what read_card and read_kitchen share.

#include <deque>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "quantity/amount.hpp"
#include "recipe/date.hpp"
#include "recipe/recipe.hpp"
#include "yaml/document.hpp"

namespace sealworthy::recipe {

/// Thrown within the room at the first wrong thing; read_card and read_kitchen return its error.
struct Wrong {
  yaml::Error error;
};
[[noreturn]] void refuse(Position at, std::string message, std::string suggestion);
[[noreturn]] void refuse(Position at, const quantity::FigureError& error);

/// What keeps the views of a Recipe or Kitchen alive: its document, and texts put together from several
/// values.
struct Kept {
  std::shared_ptr<const void> document;
  std::deque<std::string> composed;  // a deque: adding does not move the others

  std::string_view compose(std::string text) { return composed.emplace_back(std::move(text)); }
};

/// What the reading of one value may depend on.
struct Context {
  quantity::Units units = quantity::Units::us;
  std::shared_ptr<Kept> kept;
  std::optional<Date> today{};  ///< of a kitchen file: no date in it may be later
};

template <class Target>
struct Field {
  std::string_view key;
  void (*read)(Target&, const yaml::Entry&, Context&);
};

/// An unknown key, with the nearest known one or all of them. `holder`: what the keys are of ("a recipe
/// card").
[[noreturn]] void refuse_key(const yaml::Entry& entry, std::span<const std::string_view> known,
                             std::string_view holder);

/// Reads each entry of a map by its field, in the order written. A null counts as not given.
template <class Target>
void read_fields(const yaml::Node& map, std::span<const Field<Target>> fields, std::string_view holder,
                 Target& target, Context& context) {
  for (const yaml::Entry& entry : map.entries) {
    const Field<Target>* field = nullptr;
    for (const Field<Target>& known : fields)
      if (known.key == entry.key) field = &known;
    if (field == nullptr) {
      std::vector<std::string_view> keys;
      for (const Field<Target>& known : fields) keys.push_back(known.key);
      refuse_key(entry, keys, holder);
    }
    if (!entry.value.is_null()) field->read(target, entry, context);
  }
}

/// The value under a key, with its outer blanks taken off: refuses a list, a map and an empty text.
std::string_view text_of(const yaml::Node& value, std::string_view key);
Placed<std::string_view> placed_text(const yaml::Entry& entry);
std::string_view trimmed(std::string_view text);

/// Each item of a list, or the value itself where it is none: `jars: quart` and `jars: [pint, quart]`. Nulls
/// are left out; a list without items is refused.
std::vector<const yaml::Node*> one_or_several(const yaml::Entry& entry);

/// `key` as it is written in messages: `key:`
std::string colon_key(std::string_view key);

/// "a text", "a list", "names and values", "nothing".
std::string_view kind_words(const yaml::Node& node);

/// A list item that YAML took for a map because of a colon in it: `- salt: 1 teaspoon`.
[[noreturn]] void refuse_accidental_map(const yaml::Node& item, std::string_view what);

/// A figure of a card, or the error at its place.
template <class T, class... Args>
Placed<T> figure(const yaml::Entry& entry, quantity::Figure<T> (*read)(std::string_view, Args...),
                 Args... args) {
  const std::string_view text = text_of(entry.value, entry.key);
  quantity::Figure<T> result = read(text, args...);
  if (auto* error = std::get_if<quantity::FigureError>(&result)) refuse(entry.value.at, *error);
  return {std::get<T>(std::move(result)), entry.value.at, text};
}

template <class Value>
struct Choice {
  std::string_view word;  // folded
  Value value;
};
[[noreturn]] void refuse_choice(const yaml::Entry& entry, std::string_view text,
                                std::span<const std::string_view> words);
/// The text with ASCII letters in lower case and hyphens as spaces.
std::string lowered(std::string_view text);

/// One of a few words.
template <class Value>
Placed<Value> choose(const yaml::Entry& entry, std::span<const Choice<Value>> choices) {
  const std::string_view text = text_of(entry.value, entry.key);
  const std::string word = lowered(text);
  for (const Choice<Value>& choice : choices)
    if (choice.word == word) return {choice.value, entry.value.at, text};
  std::vector<std::string_view> words;
  for (const Choice<Value>& choice : choices) words.push_back(choice.word);
  refuse_choice(entry, text, words);
}

Placed<Gauge> read_gauge(const yaml::Entry& entry);
/// A jar size, with how many there are of it where the card says so.
struct JarsSaid {
  Placed<quantity::JarText> jar;
  std::optional<Interval<Count>> count;
};
/// `jars: quart`, `jars: 7 quarts`, `jars: [pint, {size: quart, mouth: wide}]`
std::vector<JarsSaid> read_jars(const yaml::Entry& entry, Context& context);
/// The same where only the sizes matter.
std::vector<Placed<quantity::JarText>> read_jar_sizes(const yaml::Entry& entry, Context& context);
/// `ingredients:`
std::vector<IngredientLine> read_ingredients(const yaml::Entry& entry, Context& context);
/// `process:`, one map or a list of them.
std::vector<Process> read_processes(const yaml::Entry& entry, Context& context);

}  // namespace sealworthy::recipe
