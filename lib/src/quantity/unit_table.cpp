#include "quantity/unit_table.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "quantity/numbers.hpp"

namespace sealworthy::quantity {
namespace {

constexpr double ml = unit::millilitre;
constexpr double us_gallon = unit::us_gallon;
constexpr double us_fluid_ounce = us_gallon / 128;
constexpr double us_bushel = unit::us_bushel;
constexpr double imperial_gallon = unit::imperial_gallon;
constexpr double imperial_fluid_ounce = imperial_gallon / 160;
constexpr double kg = 1;

constexpr Unit mass(std::string_view name, double value, bool metric) {
  return {name, Kind::mass, value, value, value, metric};
}
constexpr Unit volume(std::string_view name, double us, double imperial, double metric) {
  return {name, Kind::volume, us, imperial, metric, false};
}
constexpr Unit litres(std::string_view name, double value) {
  return {name, Kind::volume, value, value, value, true};
}
constexpr Unit piece(std::string_view name) { return {name, Kind::piece, 1, 1, 1, false}; }
constexpr Unit package(std::string_view name) { return {name, Kind::package, 1, 1, 1, false}; }
constexpr Unit imprecise(std::string_view name) { return {name, Kind::imprecise, 1, 1, 1, false}; }

// Spoons of 15 and 5 mL are the British and the metric kitchen's; the British cup is half an imperial pint.
// A pint, quart, gallon or fluid ounce is no metric measure: the figure may be the US or the imperial one.
// Sources: NIST Handbook 44 Appendix C (US); Weights and Measures Act 1985, Schedule 1 (imperial gallon);
// GNU units (metric cup and spoons).
constexpr std::array units_table{
    mass("mg", 1e-6 * kg, true),
    mass("g", 1e-3 * kg, true),
    mass("kg", kg, true),
    mass("oz", unit::ounce, false),
    mass("lb", unit::pound, false),
    mass("stone", 14 * unit::pound, false),
    volume("tsp", us_fluid_ounce / 6, 5 * ml, 5 * ml),
    volume("dessertspoon", us_fluid_ounce / 3, 10 * ml, 10 * ml),
    volume("tbsp", us_fluid_ounce / 2, 15 * ml, 15 * ml),
    volume("fl oz", us_fluid_ounce, imperial_fluid_ounce, 0),
    volume("gill", 4 * us_fluid_ounce, 5 * imperial_fluid_ounce, 0),
    volume("cup", 8 * us_fluid_ounce, 10 * imperial_fluid_ounce, 250 * ml),
    volume("half-pint", us_gallon / 16, imperial_gallon / 16, 0),
    volume("pint", us_gallon / 8, imperial_gallon / 8, 0),
    volume("quart", us_gallon / 4, imperial_gallon / 4, 0),
    volume("half-gallon", us_gallon / 2, imperial_gallon / 2, 0),
    volume("gallon", us_gallon, imperial_gallon, 0),
    volume("dry pint", us_bushel / 64, us_bushel / 64, us_bushel / 64),
    volume("dry quart", us_bushel / 32, us_bushel / 32, us_bushel / 32),
    volume("peck", us_bushel / 4, 2 * imperial_gallon, 0),
    volume("bushel", us_bushel, 8 * imperial_gallon, 0),
    litres("ml", ml),
    litres("cl", 10 * ml),
    litres("dl", 100 * ml),
    litres("l", 1000 * ml),
    Unit{"dozen", Kind::dozen, 12, 12, 12, false},
    piece("clove"),
    piece("head"),
    piece("stalk"),
    piece("rib"),
    piece("bunch"),
    piece("sprig"),
    piece("stick"),
    piece("slice"),
    piece("piece"),
    piece("ear"),
    piece("pod"),
    piece("drop"),
    piece("leaf"),
    piece("cube"),
    piece("handful"),
    piece("strip"),
    piece("wedge"),
    piece("stem"),
    piece("branch"),
    piece("bulb"),
    piece("spear"),
    piece("sheet"),
    piece("scoop"),
    piece("cake"),
    piece("knob"),
    piece("lump"),
    piece("rasher"),
    piece("loaf"),
    piece("finger"),
    piece("grind"),
    piece("toe"),
    package("can"),
    package("jar"),
    package("package"),
    package("packet"),
    package("pack"),
    package("pouch"),
    package("box"),
    package("bag"),
    package("envelope"),
    package("bottle"),
    package("sachet"),
    package("carton"),
    package("container"),
    package("basket"),
    package("tub"),
    package("tube"),
    package("vial"),
    package("punnet"),
    package("crate"),
    package("lug"),
    imprecise("pinch"),
    imprecise("dash"),
    imprecise("smidgen"),
    imprecise("splash"),
};

struct Spelling {
  std::string_view word;
  std::string_view unit;
};

template <std::size_t N>
constexpr std::array<Spelling, N> sorted(std::array<Spelling, N> table) {
  std::sort(table.begin(), table.end(), [](const auto& a, const auto& b) { return a.word < b.word; });
  return table;
}

// Beside these each name of the table above is a spelling, alone and with an "s".
constexpr auto spellings = sorted(std::to_array<Spelling>({
    {"mg", "mg"},
    {"mgs", "mg"},
    {"milligram", "mg"},
    {"milligrams", "mg"},
    {"g", "g"},
    {"gs", "g"},
    {"gm", "g"},
    {"gms", "g"},
    {"gr", "g"},
    {"gram", "g"},
    {"grams", "g"},
    {"gramme", "g"},
    {"grammes", "g"},
    {"kg", "kg"},
    {"kgs", "kg"},
    {"kilo", "kg"},
    {"kilos", "kg"},
    {"kilogram", "kg"},
    {"kilograms", "kg"},
    {"kilogramme", "kg"},
    {"kilogrammes", "kg"},
    {"oz", "oz"},
    {"ozs", "oz"},
    {"ounce", "oz"},
    {"ounces", "oz"},
    {"lb", "lb"},
    {"lbs", "lb"},
    {"pd", "lb"},
    {"pds", "lb"},
    {"pound", "lb"},
    {"pounds", "lb"},
    {"stone", "stone"},
    {"ts", "tsp"},
    {"tsp", "tsp"},
    {"tsps", "tsp"},
    {"teasp", "tsp"},
    {"teaspoon", "tsp"},
    {"teaspoons", "tsp"},
    {"teaspoonful", "tsp"},
    {"teaspoonfuls", "tsp"},
    {"teaspoonsful", "tsp"},
    {"dsp", "dessertspoon"},
    {"dstsp", "dessertspoon"},
    {"dessertspoon", "dessertspoon"},
    {"dessertspoons", "dessertspoon"},
    {"dessertspoonful", "dessertspoon"},
    {"dessertspoonfuls", "dessertspoon"},
    {"tb", "tbsp"},
    {"tbs", "tbsp"},
    {"tbl", "tbsp"},
    {"tbls", "tbsp"},
    {"tblsp", "tbsp"},
    {"tblsps", "tbsp"},
    {"tbsp", "tbsp"},
    {"tbsps", "tbsp"},
    {"tblespoon", "tbsp"},
    {"tblespoons", "tbsp"},
    {"tablesp", "tbsp"},
    {"tablespoon", "tbsp"},
    {"tablespoons", "tbsp"},
    {"tablespoonful", "tbsp"},
    {"tablespoonfuls", "tbsp"},
    {"tablespoonsful", "tbsp"},
    {"floz", "fl oz"},
    {"gill", "gill"},
    {"gills", "gill"},
    {"c", "cup"},
    {"cup", "cup"},
    {"cups", "cup"},
    {"cupful", "cup"},
    {"cupfuls", "cup"},
    {"cupsful", "cup"},
    {"pt", "pint"},
    {"pts", "pint"},
    {"pint", "pint"},
    {"pints", "pint"},
    {"qt", "quart"},
    {"qts", "quart"},
    {"quart", "quart"},
    {"quarts", "quart"},
    {"ga", "gallon"},
    {"gal", "gallon"},
    {"gals", "gallon"},
    {"gallon", "gallon"},
    {"gallons", "gallon"},
    {"peck", "peck"},
    {"pecks", "peck"},
    {"bu", "bushel"},
    {"bushel", "bushel"},
    {"bushels", "bushel"},
    {"ml", "ml"},
    {"mls", "ml"},
    {"cc", "ml"},
    {"millilitre", "ml"},
    {"millilitres", "ml"},
    {"milliliter", "ml"},
    {"milliliters", "ml"},
    {"cl", "cl"},
    {"centilitre", "cl"},
    {"centilitres", "cl"},
    {"centiliter", "cl"},
    {"centiliters", "cl"},
    {"dl", "dl"},
    {"decilitre", "dl"},
    {"decilitres", "dl"},
    {"deciliter", "dl"},
    {"deciliters", "dl"},
    {"l", "l"},
    {"ltr", "l"},
    {"ltrs", "l"},
    {"litre", "l"},
    {"litres", "l"},
    {"liter", "l"},
    {"liters", "l"},
    {"doz", "dozen"},
    {"dozen", "dozen"},
    {"clove", "clove"},
    {"cloves", "clove"},
    {"head", "head"},
    {"heads", "head"},
    {"stalk", "stalk"},
    {"stalks", "stalk"},
    {"rib", "rib"},
    {"ribs", "rib"},
    {"bunch", "bunch"},
    {"bunches", "bunch"},
    {"bn", "bunch"},
    {"sprig", "sprig"},
    {"sprigs", "sprig"},
    {"stick", "stick"},
    {"sticks", "stick"},
    {"slice", "slice"},
    {"slices", "slice"},
    {"piece", "piece"},
    {"pieces", "piece"},
    {"pc", "piece"},
    {"pcs", "piece"},
    {"ear", "ear"},
    {"ears", "ear"},
    {"pod", "pod"},
    {"pods", "pod"},
    {"drop", "drop"},
    {"drops", "drop"},
    {"leaf", "leaf"},
    {"leaves", "leaf"},
    {"cube", "cube"},
    {"cubes", "cube"},
    {"handful", "handful"},
    {"handfuls", "handful"},
    {"handsful", "handful"},
    {"strip", "strip"},
    {"strips", "strip"},
    {"wedge", "wedge"},
    {"wedges", "wedge"},
    {"stem", "stem"},
    {"stems", "stem"},
    {"branch", "branch"},
    {"branches", "branch"},
    {"bulb", "bulb"},
    {"bulbs", "bulb"},
    {"spear", "spear"},
    {"spears", "spear"},
    {"sheet", "sheet"},
    {"sheets", "sheet"},
    {"scoop", "scoop"},
    {"scoops", "scoop"},
    {"cake", "cake"},
    {"cakes", "cake"},
    {"knob", "knob"},
    {"knobs", "knob"},
    {"lump", "lump"},
    {"lumps", "lump"},
    {"rasher", "rasher"},
    {"rashers", "rasher"},
    {"loaf", "loaf"},
    {"loaves", "loaf"},
    {"finger", "finger"},
    {"fingers", "finger"},
    {"grind", "grind"},
    {"grinds", "grind"},
    {"toe", "toe"},
    {"toes", "toe"},
    {"can", "can"},
    {"cans", "can"},
    {"cn", "can"},
    {"tin", "can"},
    {"tins", "can"},
    {"jar", "jar"},
    {"jars", "jar"},
    {"package", "package"},
    {"packages", "package"},
    {"pkg", "package"},
    {"pkgs", "package"},
    {"pkge", "package"},
    {"pk", "package"},
    {"packet", "packet"},
    {"packets", "packet"},
    {"pkt", "packet"},
    {"pkts", "packet"},
    {"pack", "pack"},
    {"packs", "pack"},
    {"pouch", "pouch"},
    {"pouches", "pouch"},
    {"box", "box"},
    {"boxes", "box"},
    {"bag", "bag"},
    {"bags", "bag"},
    {"envelope", "envelope"},
    {"envelopes", "envelope"},
    {"env", "envelope"},
    {"bottle", "bottle"},
    {"bottles", "bottle"},
    {"btl", "bottle"},
    {"sachet", "sachet"},
    {"sachets", "sachet"},
    {"carton", "carton"},
    {"cartons", "carton"},
    {"ctn", "carton"},
    {"container", "container"},
    {"containers", "container"},
    {"basket", "basket"},
    {"baskets", "basket"},
    {"tub", "tub"},
    {"tubs", "tub"},
    {"tube", "tube"},
    {"tubes", "tube"},
    {"vial", "vial"},
    {"vials", "vial"},
    {"punnet", "punnet"},
    {"punnets", "punnet"},
    {"crate", "crate"},
    {"crates", "crate"},
    {"lug", "lug"},
    {"lugs", "lug"},
    {"pinch", "pinch"},
    {"pinches", "pinch"},
    {"pn", "pinch"},
    {"dash", "dash"},
    {"dashes", "dash"},
    {"ds", "dash"},
    {"smidgen", "smidgen"},
    {"splash", "splash"},
}));

constexpr const Unit* named(std::string_view name) {
  for (const auto& unit : units_table)
    if (unit.name == name) return &unit;
  return nullptr;
}

// The unit of every spelling, worked out by the compiler; a spelling of no unit does not compile.
constexpr auto units_of_spellings = [] {
  std::array<const Unit*, spellings.size()> units{};
  for (std::size_t i = 0; i < spellings.size(); ++i) units[i] = named(spellings[i].unit);
  return units;
}();
static_assert(std::find(units_of_spellings.begin(), units_of_spellings.end(), nullptr) ==
              units_of_spellings.end());
static_assert(std::adjacent_find(spellings.begin(), spellings.end(), [](const auto& a, const auto& b) {
                return a.word == b.word;
              }) == spellings.end());

const Unit* spelled(std::string_view word) {
  const auto found =
      std::lower_bound(spellings.begin(), spellings.end(), word,
                       [](const Spelling& spelling, std::string_view key) { return spelling.word < key; });
  if (found == spellings.end() || found->word != word) return nullptr;
  return units_of_spellings[static_cast<std::size_t>(found - spellings.begin())];
}

bool is(std::string_view text, std::size_t at, char c) { return at < text.size() && text[at] == c; }

/// Past "(s)", "'s" and a full stop that belongs to the unit.
std::size_t unit_tail(std::string_view text, std::size_t at) {
  if (text.substr(std::min(at, text.size())).starts_with("(s)")) at += 3;
  if (is(text, at, '\'') && (is(text, at + 1, 's') || is(text, at + 1, 'S'))) at += 2;
  if (text.substr(std::min(at, text.size())).starts_with("\xE2\x80\x99s")) at += 4;
  if (is(text, at, '.')) ++at;
  return at;
}

const Unit* letters_unit(const Letters& word) {
  if (word.view().size() == 1 && word.is("t")) {
    static constexpr const Unit* tablespoon = named("tbsp");
    static constexpr const Unit* teaspoon = named("tsp");
    return word.first_raw() == 'T' ? tablespoon : teaspoon;
  }
  return spelled(word.view());
}

/// "10cupspickling": the longest spelling that the word starts with. Short ones and counts in the singular
/// would cut foods ("2canola") and are left.
std::optional<UnitMatch> run_together(std::size_t at, const Letters& word) {
  for (std::size_t size = std::min<std::size_t>(word.view().size(), 12); size >= 3; --size) {
    const Unit* unit = spelled(word.view().substr(0, size));
    if (unit == nullptr) continue;
    const bool counts = unit->kind != Kind::mass && unit->kind != Kind::volume;
    if (counts && word.view()[size - 1] != 's') continue;
    return UnitMatch{unit, at, at + size, std::nullopt};
  }
  return std::nullopt;
}

/// Past a space or hyphen to the next word.
Letters following(std::string_view text, std::size_t at) {
  if (is(text, at, '.')) ++at;
  std::size_t next = skip_space(text, at);
  if (const auto dash = dash_at(text, next)) next = skip_space(text, next + dash);
  return {text, next};
}

std::optional<UnitMatch> two_words(std::string_view text, std::size_t at, const Letters& first,
                                   const Letters& second) {
  const auto match = [&](std::string_view name) {
    return UnitMatch{named(name), at, unit_tail(text, second.end()), std::nullopt};
  };
  const Unit* unit = letters_unit(second);
  if (first.is("fl") || first.is("fluid"))
    return unit != nullptr && unit->name == "oz" ? std::optional(match("fl oz")) : std::nullopt;
  if (first.is("half") && unit != nullptr) {
    if (unit->name == "pint") return match("half-pint");
    if (unit->name == "gallon") return match("half-gallon");
  }
  if (first.is("table") && (second.is("spoon") || second.is("spoons"))) return match("tbsp");
  if (first.is("tea") && (second.is("spoon") || second.is("spoons"))) return match("tsp");
  if (first.is("dessert") && (second.is("spoon") || second.is("spoons"))) return match("dessertspoon");
  if (first.is("dry") && unit != nullptr) {
    if (unit->name == "pint") return match("dry pint");
    if (unit->name == "quart") return match("dry quart");
  }
  return std::nullopt;
}

std::optional<Units> kitchen_of(const Letters& word) {
  if (word.is("us") || word.is("american")) return Units::us;
  if (word.is("imperial") || word.is("british") || word.is("uk") || word.is("imp")) return Units::imperial;
  if (word.is("metric")) return Units::metric;
  return std::nullopt;
}

}  // namespace

Interval<double> Unit::one(Units units) const {
  switch (units) {
    case Units::us:
      return {us, us};
    case Units::imperial:
      return {imperial, imperial};
    case Units::metric:
      break;
  }
  if (metric == 0) return {std::min(us, imperial), std::max(us, imperial)};
  return {metric, metric};
}

std::optional<UnitMatch> unit_at(std::string_view text, std::size_t at, bool glued) {
  if (is(text, at, '#')) return UnitMatch{named("lb"), at, unit_tail(text, at + 1), std::nullopt};
  const Letters word(text, at);
  if (word.empty()) return std::nullopt;
  if (const auto* unit = letters_unit(word))
    return UnitMatch{unit, at, unit_tail(text, word.end()), std::nullopt};
  const Letters second = following(text, word.end());
  if (!second.empty()) {
    if (const auto match = two_words(text, at, word, second)) return match;
    const auto kitchen = kitchen_of(word);
    if (kitchen || word.is("liquid") || word.is("dry")) {
      const auto place = second.end() - second.view().size();
      const auto* unit = letters_unit(second);
      if (unit != nullptr && unit->kind == Kind::volume)
        return UnitMatch{unit, at, unit_tail(text, second.end()), kitchen};
      const auto match = two_words(text, place, second, following(text, second.end()));
      if (match && match->unit->kind == Kind::volume) return UnitMatch{match->unit, at, match->end, kitchen};
    }
  }
  return glued ? run_together(at, word) : std::nullopt;
}

const Unit* unit_named(std::string_view name) { return named(name); }

}  // namespace sealworthy::quantity
