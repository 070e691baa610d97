#pragma once

/// The science behind one card: what its altitude makes of water and steam, what its minutes do to germs
/// beside the tested process's, and the pH that its ingredients come to. It explains; it is no process, and
/// it clears no card. Filled in by Checker::check_text with CheckOptions::explain.

#include <array>
#include <optional>
#include <sealworthy/finding.hpp>
#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <sealworthy/report.hpp>
#include <span>
#include <string>
#include <vector>

namespace sealworthy {

/// What a process does, at one place.
struct HeatEffect {
  std::string method;  ///< "boiling water", "pressure canner"
  Duration time;
  std::optional<GaugePressure> pressure;
  Temperature around;  ///< of the water or pure steam around the jars
  /// Minutes at the reference temperature, if every part of the jar were as hot as what is around it from the
  /// first minute to the last: no jar gets more while it is heated.
  Duration at_most;
  /// By a simple lag of the slowest spot, heating and cooling: a jar that heats quickly, one that heats
  /// slowly.
  Duration thin, thick;
};

struct HeatStudy {
  std::string jar;            ///< "pint jars"
  bool low_acid = false;      ///< judged by the spores of botulism, at 250 F; else by F at 200 F
  std::string germ;           ///< whose death is counted
  Temperature reference;      ///< of the minutes
  Duration least;             ///< that are given at the reference at least; 0: none known
  double log_reductions = 0;  ///< at most, by the card's process; 0 where no D value is known
  HeatEffect card;
  std::optional<HeatEffect> tested;
  std::string source;
  bool from_memory = false;
};

struct AltitudeStudy {
  bool known = false;  ///< false: worked out for sea level
  Altitude altitude;
  AbsolutePressure air;
  Temperature boiling;
};

/// One ingredient's part in the pH.
struct AcidPart {
  std::string name;
  Interval<double> grams;
  double own_ph = 7;  ///< of a food; 7 for water and what is inert
  double meq = 0;     ///< acid given to the rest (negative: taken from it), milliequivalents, best estimate
  bool by_default = false;  ///< no composition is known
};

struct AcidityStudy {
  double best = 7, bound = 7, strict = 7;  ///< science::Level
  double limit = 7;                    ///< the pH above which botulism can grow (rules/science/acids.yaml)
  std::vector<AcidPart> parts;         ///< those that take most first
  std::vector<std::string> no_amount;  ///< not counted: can't be weighed
};

struct Study {
  std::optional<AltitudeStudy> altitude;  ///< none: beyond the tables of the air
  std::vector<HeatStudy> heat;            ///< one a jar size with a time
  std::optional<AcidityStudy> acidity;    ///< none: see no_acidity
  std::string no_acidity;                 ///< why nothing can be said of the pH
};

/// For people. The caution that it is no process stands at its head.
std::string study_text(const RecipeReport& report, const TextStyle& style);
/// One JSON object: inputs, outputs, units, method and source of every report;
/// tests/schema/study.schema.json.
std::string study_json(std::span<const RecipeReport> reports);

}  // namespace sealworthy
