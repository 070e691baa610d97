#pragma once

/// Reading amounts as people write them. Numbers parse the same in every locale.

#include <cstddef>
#include <optional>
#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sealworthy::quantity {

/// Which cup, pint, quart, gallon, fluid ounce and spoon a bare word means. The British cup is half an
/// imperial pint, spoons outside the US are 15 and 5 mL. A metric kitchen has no pint, quart, gallon, gill or
/// fluid ounce of its own: there the amount is the interval from the US to the imperial one. "US cup" or
/// "imperial pint" in the line overrides.
enum class Units { us, metric, imperial };

/// An amount of an ingredient before any food is known.
struct Amount {
  using Measure = std::variant<std::monostate, Interval<Mass>, Interval<Volume>, Interval<Count>>;
  /// Empty for "a pinch", "to taste", "handful of dill" and lines without an amount. A sum is added up, a can
  /// is a count of one, a dozen is a count of twelve. `about` does not widen it.
  Measure measure;
  /// The same counted in `unit`: [14, 14] of "14 lb", [1.125, 1.125] of "1 cup plus 2 tablespoons". Both 0
  /// when there is no figure.
  Interval<double> stated{0, 0};
  /// Canonical: "cup", "tbsp", "tsp", "lb", "oz" (weight), "g", "kg", "ml", "l", "quart", "pint", "gallon",
  /// "fl oz", "peck", "bushel", "dozen", "clove", "head", "can", "jar", "package", "pinch" ... (unit_list.hpp
  /// has all); "" for a bare count. A noun that nothing follows ("6 cloves, crushed") is the name as well as
  /// the unit.
  std::string unit;
  /// "small", "medium", "large", "extra large", or a package's size as written ("28 oz", "#10"); else "". Two
  /// sizes
  /// ("small to medium") leave it empty: not known.
  std::string size;
  bool about = false;     ///< "about", "scant", "heaping": 10 percent either way (convention of the project)
  bool at_most = false;   ///< "up to 3 cups", "no more than": low is 0
  bool at_least = false;  ///< "at least 3 cups", "3 cups or more": `high` is the figure said, not a bound
  /// The size of one, where it is said as a weight or volume: 28 oz of "2 (28-ounce) cans", 6 oz of "four
  /// 6-ounce fillets" and of "4 fillets (6 oz each)". What they weigh is `measure` times `each`. Empty else.
  Measure each;
  std::size_t begin = 0;  ///< bytes of the text that the amount takes up, package size and vessel included
  std::size_t end = 0;
  /// Bytes of a unit noun that stands behind the name ("6 garlic *cloves*", "2 celery *stalks*"); both 0
  /// else.
  std::size_t noun_begin = 0;
  std::size_t noun_end = 0;

  [[nodiscard]] bool stated_any() const { return stated.high > 0; }
};

/// The amount at the start of an ingredient line ("1 1/2 cups ...", "2 lb. + 4 oz ...", "one dozen ...", "1
/// (28-ounce) can ..."). nullopt when the line starts with none. `anywhere` also looks further on: "tomatoes,
/// 5 lb", "salt (2 tsp)", "Bottled lemon juice: 2 tbsp", "juice of 2 lemons". low <= high always (a range
/// written the wrong way round is turned), both finite. Takes any bytes. Cost: about 0.2 to 0.4 microseconds
/// for a line; no allocation unless a size is longer than 15 bytes.
std::optional<Amount> read_amount(std::string_view line, Units units, bool anywhere = false);

/// The same amount said again right behind `from` (the `end` of the amount before): "/1 lb 7 oz", "(250 mL)",
/// "(about 25)", "or 3 1/4 lb", "= 14 oz", ", about 2 lb". `begin` and `end` hold the brackets or the joining
/// word too. nullopt where something else follows ("or 2 shallots").
std::optional<Amount> read_equal(std::string_view line, std::size_t from, Units units);

/// Why a figure can't be read: what was found and what is wanted, in words for a cook.
struct FigureError {
  std::string message;
  std::string suggestion;
};
template <class T>
using Figure = std::variant<T, FigureError>;

/// Why the amount a line begins with can't be meant: below zero ("-5 cups"), zero, a figure too long to read,
/// or beyond any home kitchen (over 5,000 lb, 1,000 gallons, 100,000 pieces). nullopt where it can, or where
/// the line begins with none.
std::optional<FigureError> refuse_amount(std::string_view line, Units units);

// Whole texts of card values. Each refuses a text that holds anything else ("25 minutes or so" is an error),
// negative and absurd figures (with the range it takes), and names the units it knows.

/// "10 lb pressure", "10 psi", "70 kPa", "1.2 bar", "10-11 psi", "10 pounds". A bare number is psi. Takes 0
/// to 30 psi: what a canner may be set to is for a rule to judge.
Figure<Interval<GaugePressure>> read_pressure(std::string_view text);
/// "25 min", "1 hr 15 min", "1:15 h", "1 1/2 hours", "20-25 minutes". A bare number is minutes. Takes over 0
/// to 48 hours. "1:15" alone is refused: it may be minutes and seconds.
Figure<Interval<Duration>> read_time(std::string_view text);
/// "5,280 ft", "1600 m", "0-2000 ft", "0 to 1,000 feet", "sea level", "-100 ft". Takes -1,500 to 40,000 ft. A
/// bare number is feet, with metric units metres. "up to 1,000 ft" and "below 1000 ft" begin at the -1,500 ft
/// that are the least; "above 6,000 ft" and "6001+ ft" are open: high is +infinity.
Figure<Interval<Altitude>> read_altitude(std::string_view text, Units units = Units::us);
/// "1 inch", "1/2\"", "½ in.", "13 mm", "1 - 1¼ inch", "1 to 1 1/4 inches", "none" (0). A bare number is
/// inches. Takes 0 to 6 inches.
Figure<Interval<Headspace>> read_headspace(std::string_view text);
/// "3/4-inch", "1 in", "2 cm" of a piece, as it stands in a state ("cut in 1-inch pieces").
Figure<Interval<PieceSize>> read_piece_size(std::string_view text);
/// "180 F", "82 C", "180-185 °F". The scale must be said. Takes -148 to 752 F.
Figure<Interval<Temperature>> read_temperature(std::string_view text);

/// A jar as cooks and tables name it: "pint", "quart", "half-pint", "12-oz", "pint-and-a-half", "24 oz",
/// "1-litre", "500 ml", "half gallon", "8 oz jelly jars", "wide-mouth pints", "quart jars", "imperial pint".
/// Ounces are fluid ounces. A bare pint is US but in an imperial kitchen. Takes 20 mL to 20 L.
struct JarText {
  Volume volume;
  /// Canonical: "pint", "quart", "half-pint", "quarter-pint", "pint-and-a-half", "half-gallon", "12-oz", "500
  /// ml", "1 l", "imperial pint". A size keeps the measure it was said in: "8-oz" is no "half-pint", though
  /// the volume is.
  std::string name;
  std::string mouth;    ///< "wide", "regular" or ""
  bool metric = false;  ///< said in millilitres or litres
  bool imperial = false;
};
Figure<JarText> read_jar(std::string_view text, Units units = Units::us);

/// A jar size, with how many there are of it where the words say so.
struct JarsText {
  JarText jar;
  std::optional<Interval<Count>> count;
};
/// Sizes as a card's `jars:` may give them: "quart", "7 quarts", "6-7 pints", "4 12-oz jars", "6 x 500 ml",
/// "pints or quarts", "pint/quart", "3 quarts and 2 pints". Seven quarts are seven jars of a quart, for
/// nobody has a jar of seven; "2-quart" is a size, "2 quarts" are two jars.
Figure<std::vector<JarsText>> read_jars(std::string_view text, Units units = Units::us);

/// "7 quart jars", "about 9 pints", "5 to 6 half-pints", "4 jars": how many, of which jar (nullopt: not
/// said).
struct Yield {
  Interval<Count> count;
  std::optional<JarText> jar;
};
Figure<Yield> read_yield(std::string_view text, Units units = Units::us);

}  // namespace sealworthy::quantity
