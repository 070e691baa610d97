#include <array>

#include "recipe/fields.hpp"

namespace sealworthy::recipe {
namespace {

constexpr std::string_view holder = "a recipe card";

Placed<quantity::Units> read_units(const yaml::Entry& entry) {
  using quantity::Units;
  static constexpr std::array<Choice<Units>, 3> choices{
      {{"us", Units::us}, {"metric", Units::metric}, {"imperial", Units::imperial}}};
  return choose<Units>(entry, choices);
}

void read_pack(Recipe& recipe, const yaml::Entry& entry, Context& /*context*/) {
  static constexpr std::array<Choice<Pack>, 4> choices{
      {{"hot", Pack::hot}, {"raw", Pack::raw}, {"hot pack", Pack::hot}, {"raw pack", Pack::raw}}};
  recipe.pack = choose<Pack>(entry, choices);
}

void read_steps(Recipe& recipe, const yaml::Entry& entry, Context& /*context*/) {
  for (const yaml::Node* item : one_or_several(entry)) {
    if (item->is_map() && !item->entries.empty()) refuse_accidental_map(*item, "step");
    const std::string_view text = text_of(*item, entry.key);
    recipe.steps.push_back({text, item->at, text});
  }
}

void read_until(Accept& accept, const yaml::Entry& entry, Context& /*context*/) {
  const std::string_view text = text_of(entry.value, entry.key);
  const auto date = read_date(text);
  if (!date)
    refuse(entry.value.at, "`until:` is not a date: `" + std::string(text) + "`.",
           "Write the year, month and day: 2026-08-31");
  accept.until = Placed<Date>{*date, entry.value.at, text};
}

constexpr std::array<Field<Accept>, 3> accept_fields{{
    {"rule", [](Accept& a, const yaml::Entry& e, Context&) { a.rule = placed_text(e); }},
    {"because", [](Accept& a, const yaml::Entry& e, Context&) { a.because = text_of(e.value, e.key); }},
    {"until", read_until},
}};

void read_accept(Recipe& recipe, const yaml::Entry& entry, Context& context) {
  constexpr const char* form = "Write it as {rule: sugar-changed, because: the reason}.";
  for (const yaml::Node* item : one_or_several(entry)) {
    if (!item->is_map())
      refuse(item->at,
             "`accept:` takes rules with reasons, but here it holds " + std::string(kind_words(*item)) + ".",
             form);
    Accept accept;
    read_fields<Accept>(*item, accept_fields, "`accept:`", accept, context);
    if (accept.rule.value.empty()) refuse(item->at, "`accept:` does not say which rule.", form);
    if (accept.because.empty())
      refuse(item->at, "`accept:` gives no reason for " + std::string(accept.rule.value) + ".",
             "Add `because:` with the reason in a few words.");
    recipe.accept.push_back(accept);
  }
}

/// "7 quarts" tells how many jars it makes as well; `makes:` goes before it.
void read_card_jars(Recipe& recipe, const yaml::Entry& entry, Context& context) {
  std::vector<JarsSaid> jars = read_jars(entry, context);
  if (jars.size() == 1 && jars.front().count && !recipe.makes) {
    const auto& jar = jars.front().jar;
    recipe.makes = Placed<quantity::Yield>{{*jars.front().count, jar.value}, jar.at, jar.text};
  }
  for (JarsSaid& said : jars) recipe.jars.push_back(std::move(said.jar));
}

constexpr std::array<Field<Recipe>, 12> card_fields{{
    {"recipe", [](Recipe& r, const yaml::Entry& e, Context&) { r.title = placed_text(e); }},
    {"follows", [](Recipe& r, const yaml::Entry& e, Context&) { r.follows = placed_text(e); }},
    {"units", [](Recipe& r, const yaml::Entry& e, Context&) { r.units = read_units(e).value; }},
    {"makes",
     [](Recipe& r, const yaml::Entry& e, Context& c) { r.makes = figure(e, quantity::read_yield, c.units); }},
    {"ingredients",
     [](Recipe& r, const yaml::Entry& e, Context& c) { r.ingredients = read_ingredients(e, c); }},
    {"pack", read_pack},
    {"jars", read_card_jars},
    {"headspace",
     [](Recipe& r, const yaml::Entry& e, Context&) { r.headspace = figure(e, quantity::read_headspace); }},
    {"process",
     [](Recipe& r, const yaml::Entry& e, Context& c) {
       r.process_at = e.key_at;
       r.processes = read_processes(e, c);
     }},
    {"steps", read_steps},
    {"lids", [](Recipe& r, const yaml::Entry& e, Context&) { r.lids = placed_text(e); }},
    {"accept", read_accept},
}};

/// Where a required key stands without a value, or where the card begins.
Position place_of_missing(const yaml::Node& root, std::string_view key) {
  const yaml::Entry* entry = root.entry(key);
  return entry != nullptr ? entry->key_at : root.at;
}

Recipe read_root(const yaml::Document& document) {
  const yaml::Node& root = document.root();
  if (!root.is_map())
    refuse(root.at, "This is not a recipe card: it holds " + std::string(kind_words(root)) + ".",
           "A card begins with a line `recipe:` and the name of the recipe.");
  Context context{.units = quantity::Units::us, .kept = std::make_shared<Kept>()};
  context.kept->document = document.arena();
  // What a cup and a pint are must be known before the first of them is read.
  if (const yaml::Entry* units = root.entry("units"); units != nullptr && !units->value.is_null())
    context.units = read_units(*units).value;
  Recipe recipe;
  recipe.document = document.number();
  read_fields<Recipe>(root, card_fields, holder, recipe, context);
  if (recipe.title.value.empty())
    refuse(place_of_missing(root, "recipe"), "The recipe has no name.",
           "Write it at the top: recipe: Ridge road bean jars");
  if (recipe.ingredients.empty())
    refuse(place_of_missing(root, "ingredients"), "The recipe has no ingredients.",
           "Write `ingredients:` and below it each ingredient on a line of its own, after a dash.");
  recipe.arena = context.kept;
  return recipe;
}

}  // namespace

std::span<const std::string_view> card_keys() {
  static constexpr auto keys = [] {
    std::array<std::string_view, card_fields.size()> names;
    for (std::size_t i = 0; i < names.size(); ++i) names[i] = card_fields[i].key;
    return names;
  }();
  return keys;
}

RecipeOrError read_card(const yaml::Document& document) {
  try {
    return read_root(document);
  } catch (Wrong& wrong) {
    return std::move(wrong.error);
  }
}

}  // namespace sealworthy::recipe
