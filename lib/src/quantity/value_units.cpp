#include "quantity/value_units.hpp"

#include <algorithm>
#include <array>
#include <sealworthy/quantity.hpp>

#include "quantity/word_table.hpp"

namespace sealworthy::quantity {
namespace {

constexpr double per_fahrenheit = 1 / 1.8;
constexpr double hour = 60 * unit::minute;

/// Words parted by single spaces that name one unit.
struct Row {
  std::string_view words;
  ValueUnit unit;
};

// Exact definitions: NIST SP 811, appendix B (psi, inch, foot, degree Fahrenheit); SI (bar, litre, degree
// Celsius).
constexpr std::array rows{
    Row{"min mins minute minutes", {"min", Dimension::time, unit::minute}},
    Row{"h hr hrs hour hours", {"h", Dimension::time, hour}},
    Row{"s sec secs second seconds", {"s", Dimension::time, 1}},
    Row{"day days", {"day", Dimension::time, 24 * hour}},
    Row{"psi psig", {"psi", Dimension::pressure, unit::psi}},
    Row{"kpa kilopascal kilopascals", {"kPa", Dimension::pressure, 1e3}},
    Row{"bar bars", {"bar", Dimension::pressure, 1e5}},
    Row{"mbar millibar millibars", {"mbar", Dimension::pressure, 1e2}},
    Row{"psia", {"psia", Dimension::absolute_pressure, 0}},
    Row{"atm", {"atm", Dimension::absolute_pressure, 0}},
    Row{"in ins inch inches", {"in", Dimension::length, unit::inch}},
    Row{"ft feet foot", {"ft", Dimension::length, unit::foot}},
    Row{"mm millimetre millimetres millimeter millimeters", {"mm", Dimension::length, 1e-3}},
    Row{"cm centimetre centimetres centimeter centimeters", {"cm", Dimension::length, 1e-2}},
    Row{"m metre metres meter meters", {"m", Dimension::length, 1}},
    Row{"km kilometre kilometres kilometer kilometers", {"km", Dimension::length, 1e3}},
    Row{"f fahrenheit", {"F", Dimension::temperature, per_fahrenheit, 459.67}},
    Row{"c celsius centigrade", {"C", Dimension::temperature, 1, 273.15}},
    Row{"lb lbs pound pounds", {"lb", Dimension::pounds, unit::psi}},
    Row{"oz ounce ounces g gram grams kg", {"oz", Dimension::weight, 0}},
    Row{"cup cups tbsp tsp tablespoon tablespoons teaspoon teaspoons pint pints pt quart quarts qt gallon "
        "gallons ml "
        "l litre litres liter liters",
        {"cup", Dimension::volume, 0}},
};

constexpr WordTable<const ValueUnit*, 256> table = [] {
  WordTable<const ValueUnit*, 256> words;
  for (const auto& row : rows)
    words_of(row.words, [&](std::string_view word) { words.add(word, &row.unit); });
  return words;
}();

constexpr const ValueUnit* named(std::string_view name) {
  for (const auto& row : rows)
    if (row.unit.word == name) return &row.unit;
  return nullptr;
}

/// Past "°", "degrees" and "deg." in front of F or C.
std::size_t past_degrees(std::string_view text, std::size_t at) {
  if (starts_at(text, at, "\xC2\xB0")) at = skip_space(text, at + 2);
  static constexpr std::array<std::string_view, 3> words{"degrees", "degree", "deg"};
  for (const auto word : words)
    if (const auto end = phrase_at(text, at, word))
      return skip_space(text, char_at(text, *end, '.') ? *end + 1 : *end);
  return at;
}

}  // namespace

const ValueUnit* value_unit_at(std::string_view text, std::size_t at, std::size_t& end) {
  if (const auto mark = inch_mark_at(text, at)) {
    end = at + mark;
    static constexpr const auto* inch = named("in");
    return inch;
  }
  if (char_at(text, at, '#')) {
    end = at + 1;
    static constexpr const auto* pound = named("lb");
    return pound;
  }
  const Letters word(text, past_degrees(text, at));
  const auto* const* found = table.find(word);
  if (found == nullptr) return nullptr;
  end = char_at(text, word.end(), '.') ? word.end() + 1 : word.end();
  return *found;
}

std::string_view name_of(Dimension dimension) {
  switch (dimension) {
    case Dimension::pressure:
      return "a pressure";
    case Dimension::absolute_pressure:
      return "an absolute pressure";
    case Dimension::time:
      return "a time";
    case Dimension::length:
      return "a length";
    case Dimension::temperature:
      return "a temperature";
    case Dimension::pounds:
    case Dimension::weight:
      return "a weight";
    case Dimension::volume:
      break;
  }
  return "a volume";
}

}  // namespace sealworthy::quantity
