#pragma once

/// The list behind kitchen_units.hpp, for lexicon.cpp's tables.

#include <array>

#include "quantity/kitchen_units.hpp"

namespace sealworthy::quantity {

namespace measures {
inline constexpr double ml = unit::millilitre;
inline constexpr double us_gallon = unit::us_gallon;
inline constexpr double us_fluid_ounce = us_gallon / 128;
inline constexpr double us_bushel = unit::us_bushel;
inline constexpr double imperial_gallon = unit::imperial_gallon;
inline constexpr double imperial_fluid_ounce = imperial_gallon / 160;

constexpr Unit mass(std::string_view name, double kilograms, bool metric) {
  return {name, Kind::mass, kilograms, kilograms, kilograms, metric};
}
constexpr Unit volume(std::string_view name, double us, double imperial, double metric) {
  return {name, Kind::volume, us, imperial, metric, false};
}
constexpr Unit litres(std::string_view name, double value) {
  return {name, Kind::volume, value, value, value, true};
}
constexpr Unit one_of(std::string_view name, Kind kind) { return {name, kind, 1, 1, 1, false}; }
}  // namespace measures

// Spoons of 15 and 5 mL are the British and the metric kitchen's; the British cup is half an imperial pint. A
// pint, quart, gallon, gill or fluid ounce is no metric measure: it may be the US or the imperial one.
// Sources: NIST Handbook 44 Appendix C (US); Weights and Measures Act 1985, Schedule 1 (imperial gallon); GNU
// units (metric cup and spoons).
inline constexpr std::array unit_list{
    measures::mass("mg", 1e-6, true),
    measures::mass("g", unit::gram, true),
    measures::mass("kg", 1, true),
    measures::mass("oz", unit::ounce, false),
    measures::mass("lb", unit::pound, false),
    measures::mass("stone", 14 * unit::pound, false),
    measures::volume("tsp", measures::us_fluid_ounce / 6, 5 * measures::ml, 5 * measures::ml),
    measures::volume("dessertspoon", measures::us_fluid_ounce / 3, 10 * measures::ml, 10 * measures::ml),
    measures::volume("tbsp", measures::us_fluid_ounce / 2, 15 * measures::ml, 15 * measures::ml),
    measures::volume("fl oz", measures::us_fluid_ounce, measures::imperial_fluid_ounce, 0),
    measures::volume("gill", 4 * measures::us_fluid_ounce, 5 * measures::imperial_fluid_ounce, 0),
    measures::volume("cup", 8 * measures::us_fluid_ounce, 10 * measures::imperial_fluid_ounce,
                     250 * measures::ml),
    measures::volume("half-pint", measures::us_gallon / 16, measures::imperial_gallon / 16, 0),
    measures::volume("pint", measures::us_gallon / 8, measures::imperial_gallon / 8, 0),
    measures::volume("quart", measures::us_gallon / 4, measures::imperial_gallon / 4, 0),
    measures::volume("half-gallon", measures::us_gallon / 2, measures::imperial_gallon / 2, 0),
    measures::volume("gallon", measures::us_gallon, measures::imperial_gallon, 0),
    measures::volume("dry pint", measures::us_bushel / 64, measures::us_bushel / 64,
                     measures::us_bushel / 64),
    measures::volume("dry quart", measures::us_bushel / 32, measures::us_bushel / 32,
                     measures::us_bushel / 32),
    measures::volume("peck", measures::us_bushel / 4, 2 * measures::imperial_gallon, 0),
    measures::volume("bushel", measures::us_bushel, 8 * measures::imperial_gallon, 0),
    measures::litres("ml", measures::ml),
    measures::litres("cl", 10 * measures::ml),
    measures::litres("dl", 100 * measures::ml),
    measures::litres("l", 1000 * measures::ml),
    Unit{"dozen", Kind::dozen, 12, 12, 12, false},
    measures::one_of("clove", Kind::piece),
    measures::one_of("head", Kind::piece),
    measures::one_of("stalk", Kind::piece),
    measures::one_of("rib", Kind::piece),
    measures::one_of("bunch", Kind::piece),
    measures::one_of("sprig", Kind::piece),
    measures::one_of("stick", Kind::piece),
    measures::one_of("slice", Kind::piece),
    measures::one_of("piece", Kind::piece),
    measures::one_of("ear", Kind::piece),
    measures::one_of("pod", Kind::piece),
    measures::one_of("drop", Kind::piece),
    measures::one_of("leaf", Kind::piece),
    measures::one_of("cube", Kind::piece),
    measures::one_of("handful", Kind::piece),
    measures::one_of("bar", Kind::piece),
    measures::one_of("strip", Kind::piece),
    measures::one_of("wedge", Kind::piece),
    measures::one_of("stem", Kind::piece),
    measures::one_of("branch", Kind::piece),
    measures::one_of("bulb", Kind::piece),
    measures::one_of("spear", Kind::piece),
    measures::one_of("sheet", Kind::piece),
    measures::one_of("scoop", Kind::piece),
    measures::one_of("cake", Kind::piece),
    measures::one_of("knob", Kind::piece),
    measures::one_of("lump", Kind::piece),
    measures::one_of("rasher", Kind::piece),
    measures::one_of("loaf", Kind::piece),
    measures::one_of("finger", Kind::piece),
    measures::one_of("grind", Kind::piece),
    measures::one_of("can", Kind::package),
    measures::one_of("jar", Kind::package),
    measures::one_of("package", Kind::package),
    measures::one_of("packet", Kind::package),
    measures::one_of("pack", Kind::package),
    measures::one_of("pouch", Kind::package),
    measures::one_of("box", Kind::package),
    measures::one_of("bag", Kind::package),
    measures::one_of("envelope", Kind::package),
    measures::one_of("bottle", Kind::package),
    measures::one_of("sachet", Kind::package),
    measures::one_of("carton", Kind::package),
    measures::one_of("container", Kind::package),
    measures::one_of("basket", Kind::package),
    measures::one_of("tub", Kind::package),
    measures::one_of("tube", Kind::package),
    measures::one_of("vial", Kind::package),
    measures::one_of("punnet", Kind::package),
    measures::one_of("crate", Kind::package),
    measures::one_of("lug", Kind::package),
    measures::one_of("pinch", Kind::imprecise),
    measures::one_of("dash", Kind::imprecise),
    measures::one_of("smidgen", Kind::imprecise),
    measures::one_of("splash", Kind::imprecise),
};

}  // namespace sealworthy::quantity
