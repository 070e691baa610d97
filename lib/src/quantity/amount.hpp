#pragma once

/// Reading amounts as people write them. Numbers parse the same in every locale.

#include <cstddef>
#include <optional>
#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <string>
#include <string_view>
#include <variant>

namespace sealworthy::quantity {

/// Which cup, pint, quart, gallon, fluid ounce and spoon a bare word means.
enum class Units { us, metric, imperial };

/// An amount of an ingredient before any food is known.
/// `measure` is empty for "a pinch", "to taste" and lines without an amount.
struct Amount {
  using Measure = std::variant<std::monostate, Interval<Mass>, Interval<Volume>, Interval<Count>>;
  Measure measure;
  /// As written, in `unit`: [14, 14] "lb". Both 0 when there is no figure.
  Interval<double> stated{0, 0};
  std::string unit;  ///< canonical: "cup", "tbsp", "tsp", "lb", "oz", "g", "kg", "ml", "l", "quart", "pint",
                     ///< "gallon", "fl oz", "peck", "bushel", "clove", "can", "head", "pinch" ...; "" for a
                     ///< bare count
  std::string size;  ///< "small", "medium", "large" or a package's "28 oz" ("1 (28-ounce) can"), else ""
  bool about =
      false;  ///< "about", "approximately", "scant": 10 percent either way (convention of the project)
  bool at_most = false;   ///< "up to 3 cups", "no more than": low is 0
  bool at_least = false;  ///< "at least 3 cups", "3 cups or more": `high` is the figure said, not a bound
  /// The size of one, where it is said as a weight or volume: 28 oz of "2 (28-ounce) cans", 6 oz of "four
  /// 6-ounce fillets". `measure` counts the cans; what they hold is `measure` times `each`. Empty else.
  Measure each;
  std::size_t begin = 0;  ///< bytes of the text that the amount takes up
  std::size_t end = 0;
  /// Bytes of a unit noun that stands behind the name ("6 garlic *cloves*", "2 celery *stalks*"); both 0
  /// else.
  std::size_t noun_begin = 0;
  std::size_t noun_end = 0;

  [[nodiscard]] bool stated_any() const { return stated.high > 0; }
};

/// The amount at the start of an ingredient line ("1 1/2 cups ...", "2 lb. + 4 oz ...", "one dozen ...",
/// "1 (28-ounce) can ...", "juice of 2 lemons" is left to foods/). nullopt when the line starts with no
/// amount; an amount may also stand at the end after a comma or in parentheses ("tomatoes, 5 lb"): `anywhere`
/// looks there too.
std::optional<Amount> read_amount(std::string_view line, Units units, bool anywhere = false);

/// Why a figure can't be read: what was found and what is wanted, in words for a cook.
struct FigureError {
  std::string message;
  std::string suggestion;
};
template <class T>
using Figure = std::variant<T, FigureError>;

// Whole texts of card values. Each refuses a text that holds anything else ("25 minutes or so" is an error),
// negative and absurd figures (with the range it takes), and names the units it knows.

/// "10 lb pressure", "10 psi", "70 kPa", "1.2 bar", "10-11 psi", "10 pounds". A bare number is psi.
Figure<Interval<GaugePressure>> read_pressure(std::string_view text);
/// "25 min", "1 hr 15 min", "1:15 h", "1 1/2 hours", "20-25 minutes". A bare number is minutes.
Figure<Interval<Duration>> read_time(std::string_view text);
/// "5,280 ft", "1600 m", "0-2000 ft", "0 to 1,000 feet", "sea level", "up to 1,000 ft", "below 1000 ft",
/// "above 6,000 ft" (open: high = the highest the tables reach, 10,000 ft is the caller's to set: high is
/// +infinity). A bare number is feet with units us, metres with metric. Takes -1,500 to 40,000 ft.
Figure<Interval<Altitude>> read_altitude(std::string_view text, Units units = Units::us);
/// "1 inch", "1/2\"", "½ in.", "13 mm", "1 - 1¼ inch", "1 to 1 1/4 inches", "none". A bare number is inches.
Figure<Interval<Headspace>> read_headspace(std::string_view text);
/// "3/4-inch", "1 in", "2 cm" of a piece, as it stands in a state ("cut in 1-inch pieces").
Figure<Interval<PieceSize>> read_piece_size(std::string_view text);
/// "180 F", "82 C", "180-185 °F".
Figure<Interval<Temperature>> read_temperature(std::string_view text);

/// A jar as cooks and tables name it: "pint", "quart", "half-pint", "12-oz", "pint-and-a-half", "24 oz",
/// "1-litre", "500 ml", "half gallon", "8 oz jelly jars", "wide-mouth pints", "quart jars", "imperial pint".
struct JarText {
  Volume volume;
  std::string name;     ///< canonical: "pint", "500 ml", "12-oz" ...
  std::string mouth;    ///< "wide", "regular" or ""
  bool metric = false;  ///< said in millilitres or litres
  bool imperial = false;
};
Figure<JarText> read_jar(std::string_view text, Units units = Units::us);

/// "7 quart jars", "about 9 pints", "5 to 6 half-pints", "4 jars": how many, of which jar (nullopt: not
/// said).
struct Yield {
  Interval<Count> count;
  std::optional<JarText> jar;
};
Figure<Yield> read_yield(std::string_view text, Units units = Units::us);

}  // namespace sealworthy::quantity
