#include <array>

#include "recipe/fields.hpp"
#include "text/nearest.hpp"

namespace sealworthy::recipe {
namespace {

constexpr std::string_view each = "each ";

bool begins_with_each(std::string_view text) { return lowered(text.substr(0, each.size())) == each; }

/// `{food: onion, amount: 2 cups, state: [chopped]}`
void read_food(IngredientLine& line, const yaml::Entry& entry, Context& /*context*/) {
  line.food = text_of(entry.value, entry.key);
}

void refuse_negative(std::string_view amount, Position at) {
  if (amount.size() > 1 && amount[0] == '-' && amount[1] >= '0' && amount[1] <= '9')
    refuse(at, "An amount can't be less than nothing.", "Write the amount without the minus sign.");
}

void read_amount(IngredientLine& line, const yaml::Entry& entry, Context& /*context*/) {
  line.amount = text_of(entry.value, entry.key);
  refuse_negative(line.amount, entry.value.at);
}

void add_states(std::vector<std::string_view>& states, std::string_view words) {
  while (!words.empty()) {
    const std::size_t comma = words.find(',');
    if (const auto state = trimmed(words.substr(0, comma)); !state.empty()) states.push_back(state);
    words = comma == std::string_view::npos ? std::string_view() : words.substr(comma + 1);
  }
}

void read_state(IngredientLine& line, const yaml::Entry& entry, Context& /*context*/) {
  for (const yaml::Node* item : one_or_several(entry)) add_states(line.states, text_of(*item, entry.key));
}

constexpr std::array<Field<IngredientLine>, 3> spelled_out{
    {{"food", read_food}, {"amount", read_amount}, {"state", read_state}}};

IngredientLine read_spelled_out(const yaml::Node& map, Context& context) {
  IngredientLine line;
  line.at = map.at;
  read_fields<IngredientLine>(map, spelled_out, "an ingredient spelled out", line, context);
  if (line.food.empty())
    refuse(map.at, "This ingredient does not say which food it is.",
           "Write it as {food: onion, amount: 2 cups}.");
  std::string words(line.amount);
  words.append(words.empty() ? "" : " ").append(line.food);
  for (const std::string_view state : line.states) words.append(", ").append(state);
  line.text = context.kept->compose(std::move(words));
  return line;
}

/// `jar: quart`, or the size in `each quart:`.
Placed<quantity::JarText> read_size(std::string_view text, Position at, const Context& context) {
  auto size = quantity::read_jar(text, context.units);
  if (auto* error = std::get_if<quantity::FigureError>(&size)) refuse(at, *error);
  return {std::get<quantity::JarText>(std::move(size)), at, text};
}

/// What "each jar" or "each quart" says goes into every jar, or into those of a size.
void set_per_jar(IngredientLine& line, std::string_view key, Position at, const Context& context) {
  line.per_jar = true;
  const std::string_view size = trimmed(key.substr(each.size()));
  if (lowered(size) != "jar") line.per_jar_of = read_size(size, at, context);
}

IngredientLine plain_line(std::string_view text, Position at) {
  IngredientLine line;
  line.text = trimmed(text);
  line.at = at;
  if (line.text.empty())
    refuse(at, "This line of `ingredients:` is empty.", "Write the ingredient, or delete the dash.");
  refuse_negative(line.text, at);
  return line;
}

/// A line in quotes may say "each jar: 1 teaspoon salt" as well.
IngredientLine read_text(const yaml::Node& item, const Context& context) {
  const std::string_view text = trimmed(item.text);
  const std::size_t colon = text.find(": ");
  if (!begins_with_each(text) || colon == std::string_view::npos) return plain_line(text, item.at);
  IngredientLine line = plain_line(text.substr(colon + 1), item.at);
  set_per_jar(line, text.substr(0, colon), item.at, context);
  return line;
}

/// `each jar: 1 teaspoon salt`, `{each jar: {food: salt, amount: 1 teaspoon}, jar: quart}`
IngredientLine read_per_jar(const yaml::Node& map, Context& context) {
  const yaml::Entry& first = map.entries.front();
  if (first.value.is_sequence() || first.value.is_null())
    refuse(first.value.at,
           colon_key(first.key) + " takes one ingredient, but holds " + std::string(kind_words(first.value)) +
               ".",
           "Write one line for each ingredient: - each jar: 1 teaspoon canning salt");
  IngredientLine line = first.value.is_map() ? read_spelled_out(first.value, context)
                                             : plain_line(first.value.text, first.value.at);
  line.at = map.at;
  set_per_jar(line, first.key, first.key_at, context);
  for (const yaml::Entry& entry : map.entries.subspan(1)) {
    constexpr std::array<std::string_view, 1> known{"jar"};
    if (entry.key != "jar") refuse_key(entry, known, "an ingredient for each jar");
    if (line.per_jar_of)
      refuse(entry.key_at, "The size of jar is given twice, here and in " + colon_key(first.key) + ".",
             "Keep one of them.");
    if (!entry.value.is_null())
      line.per_jar_of = read_size(text_of(entry.value, entry.key), entry.value.at, context);
  }
  return line;
}

/// Whether a map was meant as one, with a slip in a key, rather than being a line with a colon in it.
bool meant_as_map(const yaml::Node& map) {
  constexpr std::array<std::string_view, 3> keys{"food", "amount", "state"};
  if (map.entries.size() == 1) return map.entries.front().key == "food";
  for (const yaml::Entry& entry : map.entries)
    if (text::nearest(entry.key, keys)) return true;
  return false;
}

IngredientLine read_item(const yaml::Node& item, Context& context) {
  if (item.is_scalar()) return read_text(item, context);
  if (item.is_null()) return plain_line({}, item.at);
  if (item.is_sequence())
    refuse(item.at, "A line of `ingredients:` is one text, but this one is a list.",
           "Write one dash for each ingredient; a line that begins with a bracket goes in quotes.");
  if (item.entries.empty())
    refuse(item.at, "This ingredient says nothing.", "Write it as {food: onion, amount: 2 cups}.");
  const std::string_view key = item.entries.front().key;
  if (begins_with_each(key)) return read_per_jar(item, context);
  for (const std::string_view other : {"per jar", "every jar", "in each jar", "to each jar"})
    if (key == other) refuse(item.at, "`" + std::string(key) + ":` is not known.", "Write `each jar:`.");
  if (meant_as_map(item)) return read_spelled_out(item, context);
  refuse_accidental_map(item, "ingredient");
}

}  // namespace

std::vector<IngredientLine> read_ingredients(const yaml::Entry& entry, Context& context) {
  const yaml::Node& list = entry.value;
  if (!list.is_sequence())
    refuse(list.at, "`ingredients:` is a list, but here it holds " + std::string(kind_words(list)) + ".",
           "Write each ingredient on a line of its own, after a dash: - 2 lb carrots");
  if (list.items.empty())
    refuse(list.at, "`ingredients:` holds no ingredient.", "Write each on a line of its own, after a dash.");
  std::vector<IngredientLine> lines;
  lines.reserve(list.items.size());
  for (const yaml::Node& item : list.items) lines.push_back(read_item(item, context));
  return lines;
}

}  // namespace sealworthy::recipe
