#pragma once

/// The words behind lexicon.hpp, one row a meaning.

#include <array>
#include <string_view>

namespace sealworthy::quantity {

/// The spellings of a unit, parted by single spaces; its name, where it is one word, is among them.
struct Spellings {
  std::string_view unit;
  std::string_view words;
};

inline constexpr std::array spellings{
    Spellings{"mg", "mg mgs milligram milligrams"},
    Spellings{"g", "g gs gm gms gr gram grams gramme grammes"},
    Spellings{"kg", "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes"},
    Spellings{"oz", "oz ozs ounce ounces"},
    Spellings{"lb", "lb lbs pd pds pound pounds"},
    Spellings{"stone", "stone"},
    Spellings{"tsp", "t ts tsp tsps teasp teaspoon teaspoons teaspoonful teaspoonfuls teaspoonsful"},
    Spellings{"dessertspoon", "dsp dstsp dessertspoon dessertspoons dessertspoonful dessertspoonfuls"},
    Spellings{"tbsp",
              "tb tbs tbl tbls tblsp tblsps tbsp tbsps tblespoon tblespoons tablesp tablespoon tablespoons "
              "tablespoonful tablespoonfuls tablespoonsful"},
    Spellings{"fl oz", "floz"},
    Spellings{"gill", "gill gills"},
    Spellings{"cup", "c cup cups cupful cupfuls cupsful"},
    Spellings{"pint", "pt pts pint pints"},
    Spellings{"quart", "qt qts quart quarts"},
    Spellings{"gallon", "ga gal gals gallon gallons"},
    Spellings{"peck", "peck pecks"},
    Spellings{"bushel", "bu bushel bushels"},
    Spellings{"ml", "ml mls cc millilitre millilitres milliliter milliliters"},
    Spellings{"cl", "cl centilitre centilitres centiliter centiliters"},
    Spellings{"dl", "dl decilitre decilitres deciliter deciliters"},
    Spellings{"l", "l ltr ltrs litre litres liter liters"},
    Spellings{"dozen", "doz dozen"},
    Spellings{"clove", "clove cloves toe toes"},
    Spellings{"head", "head heads"},
    Spellings{"stalk", "stalk stalks"},
    Spellings{"rib", "rib ribs"},
    Spellings{"bunch", "bunch bunches bn"},
    Spellings{"sprig", "sprig sprigs"},
    Spellings{"stick", "stick sticks"},
    Spellings{"slice", "slice slices"},
    Spellings{"piece", "piece pieces pc pcs"},
    Spellings{"ear", "ear ears"},
    Spellings{"pod", "pod pods"},
    Spellings{"drop", "drop drops"},
    Spellings{"leaf", "leaf leaves"},
    Spellings{"cube", "cube cubes"},
    Spellings{"handful", "handful handfuls handsful fistful fistfuls"},
    Spellings{"bar", "bar bars"},
    Spellings{"strip", "strip strips"},
    Spellings{"wedge", "wedge wedges"},
    Spellings{"stem", "stem stems"},
    Spellings{"branch", "branch branches"},
    Spellings{"bulb", "bulb bulbs"},
    Spellings{"spear", "spear spears"},
    Spellings{"sheet", "sheet sheets"},
    Spellings{"scoop", "scoop scoops"},
    Spellings{"cake", "cake cakes"},
    Spellings{"knob", "knob knobs"},
    Spellings{"lump", "lump lumps"},
    Spellings{"rasher", "rasher rashers"},
    Spellings{"loaf", "loaf loaves"},
    Spellings{"finger", "finger fingers"},
    Spellings{"grind", "grind grinds"},
    Spellings{"can", "can cans cn tin tins"},
    Spellings{"jar", "jar jars"},
    Spellings{"package", "package packages pkg pkgs pkge pk pks"},
    Spellings{"packet", "packet packets pkt pkts"},
    Spellings{"pack", "pack packs"},
    Spellings{"pouch", "pouch pouches"},
    Spellings{"box", "box boxes"},
    Spellings{"bag", "bag bags"},
    Spellings{"envelope", "envelope envelopes env"},
    Spellings{"bottle", "bottle bottles btl"},
    Spellings{"sachet", "sachet sachets"},
    Spellings{"carton", "carton cartons ctn"},
    Spellings{"container", "container containers"},
    Spellings{"basket", "basket baskets"},
    Spellings{"tub", "tub tubs"},
    Spellings{"tube", "tube tubes"},
    Spellings{"vial", "vial vials"},
    Spellings{"punnet", "punnet punnets"},
    Spellings{"crate", "crate crates"},
    Spellings{"lug", "lug lugs"},
    Spellings{"pinch", "pinch pinches pn"},
    Spellings{"dash", "dash dashes ds"},
    Spellings{"smidgen", "smidgen smidgens"},
    Spellings{"splash", "splash splashes"},
};

struct NumberWord {
  std::string_view word;
  double value;
};

inline constexpr std::array number_words{
    NumberWord{"one", 1},       NumberWord{"two", 2},        NumberWord{"three", 3},
    NumberWord{"four", 4},      NumberWord{"five", 5},       NumberWord{"six", 6},
    NumberWord{"seven", 7},     NumberWord{"eight", 8},      NumberWord{"nine", 9},
    NumberWord{"ten", 10},      NumberWord{"eleven", 11},    NumberWord{"twelve", 12},
    NumberWord{"thirteen", 13}, NumberWord{"fourteen", 14},  NumberWord{"fifteen", 15},
    NumberWord{"sixteen", 16},  NumberWord{"seventeen", 17}, NumberWord{"eighteen", 18},
    NumberWord{"nineteen", 19}, NumberWord{"twenty", 20},    NumberWord{"thirty", 30},
    NumberWord{"forty", 40},    NumberWord{"fifty", 50},     NumberWord{"sixty", 60},
    NumberWord{"seventy", 70},  NumberWord{"eighty", 80},    NumberWord{"ninety", 90}};

/// One of so many parts.
inline constexpr std::array fraction_words{
    NumberWord{"half", 2},    NumberWord{"halves", 2},   NumberWord{"third", 3},  NumberWord{"thirds", 3},
    NumberWord{"quarter", 4}, NumberWord{"quarters", 4}, NumberWord{"fourth", 4}, NumberWord{"fourths", 4},
    NumberWord{"eighth", 8},  NumberWord{"eighths", 8}};

inline constexpr std::array size_words{Spellings{"small", "small sm"}, Spellings{"medium", "medium med md"},
                                       Spellings{"large", "large lg lge"}};

inline constexpr std::string_view articles = "a an";
inline constexpr std::string_view about_words =
    "about approximately approx around roughly circa ca nearly almost abt scant heaping heaped generous "
    "rounded good";
inline constexpr std::string_view modifiers =
    "level thin thick very fat plump whole full long short thumb sized hefty big packed firmly lightly";
inline constexpr std::string_view lead_words = "up at no not maximum max minimum between from exactly only";
inline constexpr std::string_view joint_words = "to or through thru and plus minus less x";

}  // namespace sealworthy::quantity
