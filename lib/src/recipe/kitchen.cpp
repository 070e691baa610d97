#include "recipe/kitchen.hpp"

#include <array>
#include <charconv>

#include "recipe/fields.hpp"

namespace sealworthy::recipe {
namespace {

void read_gauge_tested(Canner& canner, const yaml::Entry& entry, Context& /*context*/) {
  const std::string_view text = text_of(entry.value, entry.key);
  const auto date = read_date(text);
  if (!date)
    refuse(entry.value.at, "`gauge-tested:` is not a date: `" + std::string(text) + "`.",
           "Write the year, month and day: 2026-03-14");
  canner.gauge_tested = Placed<Date>{*date, entry.value.at, text};
}

constexpr std::array<Field<Canner>, 4> canner_fields{{
    {"kind", [](Canner& c, const yaml::Entry& e, Context&) { c.kind = placed_text(e); }},
    {"gauge", [](Canner& c, const yaml::Entry& e, Context&) { c.gauge = read_gauge(e); }},
    {"gauge-tested", read_gauge_tested},
    {"holds", [](Canner& c, const yaml::Entry& e,
                 Context& context) { c.holds = figure(e, quantity::read_yield, context.units); }},
}};

void read_canners(Kitchen& kitchen, const yaml::Entry& entry, Context& context) {
  constexpr const char* form = "Write it as {kind: pressure canner, gauge: dial, holds: 7 quart}.";
  for (const yaml::Node* item : one_or_several(entry)) {
    if (!item->is_map())
      refuse(item->at, "`canners:` takes canners, but here it holds " + std::string(kind_words(*item)) + ".",
             form);
    Canner canner;
    read_fields<Canner>(*item, canner_fields, "a canner", canner, context);
    if (canner.kind.value.empty()) refuse(item->at, "This canner does not say what kind it is.", form);
    kitchen.canners.push_back(canner);
  }
}

constexpr std::array<Field<Kitchen>, 3> kitchen_fields{{
    {"kitchen", [](Kitchen& k, const yaml::Entry& e, Context&) { k.name = text_of(e.value, e.key); }},
    {"altitude", [](Kitchen& k, const yaml::Entry& e,
                    Context& c) { k.altitude = figure(e, quantity::read_altitude, c.units); }},
    {"canners", read_canners},
}};

Kitchen read_root(const yaml::Document& document) {
  const yaml::Node& root = document.root();
  if (!root.is_map() || root.entries.empty())
    refuse(root.at, "This is not a kitchen file: it holds " + std::string(kind_words(root)) + ".",
           "A kitchen file has the lines `kitchen:`, `altitude:` and `canners:`.");
  if (const yaml::Entry* card = root.entry("recipe"))
    refuse(card->key_at, "This is a recipe card, not a kitchen file.",
           "A kitchen file has the lines `kitchen:`, `altitude:` and `canners:`.");
  Context context{.units = quantity::Units::us, .kept = std::make_shared<Kept>()};
  context.kept->document = document.arena();
  Kitchen kitchen;
  read_fields<Kitchen>(root, kitchen_fields, "a kitchen file", kitchen, context);
  kitchen.arena = context.kept;
  return kitchen;
}

/// A number of just so many digits at the front of `text`, which is taken off.
std::optional<int> take_digits(std::string_view& text, std::size_t digits) {
  if (text.size() < digits ||
      text.substr(0, digits).find_first_not_of("0123456789") != std::string_view::npos)
    return std::nullopt;
  int value = 0;
  std::from_chars(text.data(), text.data() + digits, value);
  text.remove_prefix(digits);
  return value;
}

bool take(std::string_view& text, char c) {
  if (!text.starts_with(c)) return false;
  text.remove_prefix(1);
  return true;
}

int days_in(int year, int month) {
  constexpr std::array days{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
  return month == 2 && leap ? 29 : days[static_cast<std::size_t>(month - 1)];
}

}  // namespace

std::optional<Date> read_date(std::string_view iso) {
  const auto year = take_digits(iso, 4);
  if (!year || !take(iso, '-')) return std::nullopt;
  const auto month = take_digits(iso, 2);
  if (!month || !take(iso, '-')) return std::nullopt;
  const auto day = take_digits(iso, 2);
  if (!day || !iso.empty() || *month < 1 || *month > 12) return std::nullopt;
  if (*day < 1 || *day > days_in(*year, *month)) return std::nullopt;
  return Date{*year, *month, *day};
}

std::variant<Kitchen, yaml::Error> read_kitchen(const yaml::Document& document) {
  try {
    return read_root(document);
  } catch (Wrong& wrong) {
    return std::move(wrong.error);
  }
}

}  // namespace sealworthy::recipe
