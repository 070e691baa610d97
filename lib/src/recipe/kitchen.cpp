#include "recipe/kitchen.hpp"

#include <array>
#include <charconv>

#include "recipe/canner.hpp"
#include "recipe/fields.hpp"

namespace sealworthy::recipe {
namespace {

std::string ticked(std::string_view text) { return "`" + std::string(text) + "`"; }

/// A whole number from `low` to `high`.
int read_number(const yaml::Entry& entry, int low, int high, std::string_view wanted) {
  const std::string_view text = text_of(entry.value, entry.key);
  int number = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
  if (read.ec != std::errc() || read.ptr != text.data() + text.size() || number < low || number > high)
    refuse(entry.value.at, colon_key(entry.key) + " can't be " + ticked(text) + ".", std::string(wanted));
  return number;
}

struct JarsRead {
  JarsAtHand jars;
  std::string_view mouth;
};

void read_mouth(JarsRead& jars, const yaml::Entry& entry, Context& /*context*/) {
  static constexpr std::array<Choice<std::string_view>, 2> choices{
      {{"wide", "wide"}, {"regular", "regular"}}};
  jars.mouth = choose<std::string_view>(entry, choices).value;
}

constexpr std::array<Field<JarsRead>, 3> jar_fields{{
    {"size",
     [](JarsRead& j, const yaml::Entry& e, Context& context) {
       auto read = read_jar_sizes(e, context);
       if (read.size() != 1) refuse(e.value.at, "`size:` takes one size of jar.", "As in {size: quart}.");
       j.jars.jar = std::move(read.front());
     }},
    {"mouth", read_mouth},
    {"count",
     [](JarsRead& j, const yaml::Entry& e, Context&) {
       j.jars.count = read_number(e, 0, 100000, "It is a number of jars: `count: 24`.");
     }},
}};

void read_jars_at_hand(Kitchen& kitchen, const yaml::Entry& entry, Context& context) {
  for (const yaml::Node* item : one_or_several(entry)) {
    if (!item->is_map()) {
      const yaml::Entry one{entry.key, entry.key_at, *item};
      for (auto& said : read_jars(one, context)) {
        std::optional<int> count;
        if (said.count) count = static_cast<int>(in_pieces(said.count->low));
        kitchen.jars.push_back({std::move(said.jar), count});
      }
      continue;
    }
    JarsRead read;
    read_fields<JarsRead>(*item, jar_fields, "jars at hand", read, context);
    if (read.jars.jar.text.empty())
      refuse(item->at, "These jars do not say their size.", "As in {size: quart, count: 24}.");
    if (!read.mouth.empty()) read.jars.jar.value.mouth = read.mouth;
    kitchen.jars.push_back(std::move(read.jars));
  }
}

constexpr std::array<Field<Lids>, 2> lid_fields{{
    {"state", [](Lids& l, const yaml::Entry& e, Context&) { l.words = placed_text(e); }},
    {"bought",
     [](Lids& l, const yaml::Entry& e, Context& context) {
       const int year = read_number(e, 1900, 9999, "It is a year: `bought: 2026`.");
       if (context.today && year > context.today->year)
         refuse(e.value.at, "`bought:` is in the future: " + ticked(text_of(e.value, e.key)) + ".",
                "Write the year in which the lids were bought.");
       l.bought = Placed<int>{year, e.value.at, text_of(e.value, e.key)};
     }},
}};

void read_lids(Kitchen& kitchen, const yaml::Entry& entry, Context& context) {
  kitchen.lids.emplace();
  if (entry.value.is_map())
    read_fields<Lids>(entry.value, lid_fields, "lids at hand", *kitchen.lids, context);
  else
    kitchen.lids->words = placed_text(entry);
}

constexpr std::array<Field<Stove>, 2> stove_fields{{
    {"kind", [](Stove& s, const yaml::Entry& e, Context&) { s.kind = placed_text(e); }},
    {"burner",
     [](Stove& s, const yaml::Entry& e, Context&) { s.burner = read_vessel_size(e, "`burner: 8 inches`"); }},
}};

void read_stove(Kitchen& kitchen, const yaml::Entry& entry, Context& context) {
  kitchen.stove.emplace();
  if (entry.value.is_map())
    read_fields<Stove>(entry.value, stove_fields, "a stove", *kitchen.stove, context);
  else
    kitchen.stove->kind = placed_text(entry);
}

constexpr std::array<Field<Kitchen>, 6> kitchen_fields{{
    {"kitchen", [](Kitchen& k, const yaml::Entry& e, Context&) { k.name = text_of(e.value, e.key); }},
    {"altitude", [](Kitchen& k, const yaml::Entry& e,
                    Context& c) { k.altitude = figure(e, quantity::read_altitude, c.units); }},
    {"canners", [](Kitchen& k, const yaml::Entry& e, Context& c) { k.canners = read_canners(e, c); }},
    {"jars", read_jars_at_hand},
    {"lids", read_lids},
    {"stove", read_stove},
}};

Kitchen read_root(const yaml::Document& document, std::optional<Date> today) {
  const yaml::Node& root = document.root();
  if (!root.is_map() || root.entries.empty())
    refuse(root.at, "This is not a kitchen file: it holds " + std::string(kind_words(root)) + ".",
           "A kitchen file has the lines `kitchen:`, `altitude:` and `canners:`.");
  if (const yaml::Entry* card = root.entry("recipe"))
    refuse(card->key_at, "This is a recipe card, not a kitchen file.",
           "A kitchen file has the lines `kitchen:`, `altitude:` and `canners:`.");
  Context context{.units = quantity::Units::us, .kept = std::make_shared<Kept>(), .today = today};
  context.kept->document = document.arena();
  Kitchen kitchen;
  read_fields<Kitchen>(root, kitchen_fields, "a kitchen file", kitchen, context);
  kitchen.arena = context.kept;
  return kitchen;
}

}  // namespace

std::variant<Kitchen, yaml::Error> read_kitchen(const yaml::Document& document, std::optional<Date> today) {
  try {
    return read_root(document, today);
  } catch (Wrong& wrong) {
    return std::move(wrong.error);
  }
}

}  // namespace sealworthy::recipe
