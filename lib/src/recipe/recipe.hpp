#pragma once

/// What the cook wrote, typed. Nothing here knows a food or a tested process.

#include <memory>
#include <optional>
#include <sealworthy/interval.hpp>
#include <sealworthy/position.hpp>
#include <sealworthy/quantity.hpp>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "quantity/amount.hpp"
#include "recipe/date.hpp"
#include "yaml/document.hpp"

namespace sealworthy::recipe {

/// A value, where it stands and the words it came from. Views live in the Recipe's arena.
template <class T>
struct Placed {
  T value{};
  Position at;
  std::string_view text;
};

enum class Pack { hot, raw };
enum class Gauge { dial, weighted };

struct IngredientLine {
  std::string_view text;  ///< the line without "each jar:"; for the spelled-out form the words put together
  Position at;
  bool per_jar = false;
  std::optional<Placed<quantity::JarText>>
      per_jar_of;  ///< "each quart: 2 tbsp ..." / {"each jar": ..., jar: quart}
  // The form spelled out: {food: onion, amount: 2 cups, state: [chopped]}. Empty views where the line is
  // plain.
  std::string_view food;
  std::string_view amount;
  std::vector<std::string_view> states;
};

/// One process. `method` is the trade word as written; which method it is, the rules data say
/// (rules/methods.yaml).
struct Process {
  Position at;
  std::optional<Placed<std::string_view>> method;
  std::optional<Placed<Gauge>> gauge;
  std::optional<Placed<Interval<GaugePressure>>> pressure;
  std::optional<Placed<Interval<Duration>>> time;
  std::optional<Placed<Interval<Altitude>>> altitude;
  std::vector<Placed<quantity::JarText>> jars;  ///< sizes this process is for; empty: all of the card
  std::optional<Placed<Interval<Headspace>>> headspace;  ///< of its own, else the card's
};

struct Accept {
  Placed<std::string_view> rule;
  std::string_view because;
  std::optional<Placed<Date>> until;  ///< the last day that it holds; none: for good
};

/// A place of the directions that can be read in more than one way, or was not understood. The recipe can't
/// be `tested` through it.
struct Doubt {
  Position at;
  std::string_view text;  ///< the words
  std::string reason;     ///< "it names two times for one jar"
};

struct Recipe {
  Placed<std::string_view> title;
  std::optional<Placed<std::string_view>> follows;
  quantity::Units units = quantity::Units::us;
  std::optional<Placed<quantity::Yield>> makes;
  std::vector<IngredientLine> ingredients;
  std::optional<Placed<Pack>> pack;
  std::vector<Placed<quantity::JarText>> jars;
  std::optional<Placed<Interval<Headspace>>> headspace;
  std::optional<Position> process_at;  ///< where `process:` stands, if it does
  std::vector<Process> processes;
  /// Where the writer says that the own kitchen is: "we live at 5,000 ft".
  std::vector<Placed<Altitude>> homes;
  std::vector<Placed<std::string_view>> steps;  ///< one item may hold several sentences
  std::optional<Placed<std::string_view>> lids;
  std::vector<Accept> accept;
  bool prose = false;  ///< understood from directions, not written as a card
  std::vector<Doubt> doubts;
  int document = 1;
  std::shared_ptr<const void> arena;  ///< keeps every view alive

  /// Where a finding about something missing points: `process:`, else `recipe:`.
  [[nodiscard]] Position process_or_title() const { return process_at.value_or(title.at); }
};

/// The keys that a card may have at its top.
std::span<const std::string_view> card_keys();

using RecipeOrError = std::variant<Recipe, yaml::Error>;

/// Document -> Recipe. The first wrong thing is the error (unknown key with the nearest known one, wrong
/// type, unreadable figure, missing `recipe:` or `ingredients:`), at its place. Never throws but for
/// bad_alloc.
RecipeOrError read_card(const yaml::Document& document);

}  // namespace sealworthy::recipe
