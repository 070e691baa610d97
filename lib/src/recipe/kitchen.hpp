#pragma once

/// The kitchen file: where the cook lives and what canners, jars, lids and stove are at hand.

#include <optional>
#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <string>
#include <variant>
#include <vector>

#include "recipe/date.hpp"
#include "recipe/recipe.hpp"
#include "yaml/document.hpp"

namespace sealworthy::recipe {

/// Inner depth or width of a canner, width of a burner.
using VesselSize = Quantity<struct VesselSizeTag, boost::units::si::length>;
constexpr VesselSize vessel_inches(double v) { return VesselSize::from_si(v * unit::inch); }
constexpr double in_inches(VesselSize size) { return size.si() / unit::inch; }

/// One load: "7 quart", or {jars: 18 pint, layers: 2}.
struct Hold {
  quantity::Yield jars;
  int layers = 1;
};

struct Canner {
  Position at;
  Placed<std::string_view> kind;  ///< trade word, as in a card's method
  std::optional<Placed<Gauge>> gauge;
  std::optional<Placed<Date>> gauge_tested;
  /// What the dial shows less what is true, as the test found it: above zero the gauge reads high.
  std::optional<Placed<GaugePressure>> gauge_error;
  std::vector<Placed<GaugePressure>> weights;
  std::optional<Placed<GaugePressure>> largest_pressure;
  std::vector<Placed<Hold>> holds;  ///< of each jar size; those on two layers too
  std::optional<Placed<bool>> rack;
  std::optional<Placed<VesselSize>> depth;  ///< inside, bottom to rim
  std::optional<Placed<VesselSize>> width;  ///< across the bottom
};

struct JarsAtHand {
  Placed<quantity::JarText> jar;
  std::optional<int> count;  ///< unset: enough
};

struct Lids {
  std::optional<Placed<std::string_view>> words;  ///< "new", "used"
  std::optional<Placed<int>> bought;              ///< the year
};

struct Stove {
  std::optional<Placed<std::string_view>> kind;  ///< "electric coil", "smooth top", "gas"
  std::optional<Placed<VesselSize>> burner;      ///< across the largest one
};

struct Kitchen {
  std::string name;
  std::string path;
  std::optional<Placed<Interval<Altitude>>> altitude;
  std::vector<Canner> canners;
  std::vector<JarsAtHand> jars;
  std::optional<Lids> lids;
  std::optional<Stove> stove;
  std::shared_ptr<const void> arena;
};

/// The first wrong thing is the error, at its place: what read_card says, and what contradicts itself (a
/// weight above the largest pressure, a gauge error without a dial, one jar size told twice). With a `today`,
/// a date after it is an error too.
std::variant<Kitchen, yaml::Error> read_kitchen(const yaml::Document& document,
                                                std::optional<Date> today = std::nullopt);

}  // namespace sealworthy::recipe
