#pragma once

/// What holds for every table (rules/altitude.yaml): how far an open band goes, what extension bodies print
/// above the tables, steam, and what a table has to look like.

#include <optional>
#include <string_view>
#include <vector>

#include "checks/fields.hpp"
#include "knowledge/sources.hpp"
#include "tested/tables.hpp"

namespace sealworthy::tested {

/// What a table has to look like for its figures to be taken.
struct TableForm {
  Duration longest;
  std::vector<Altitude> boiling_from;  ///< where bands of boiling water may begin
  std::vector<Band> dial_bands;
  std::size_t dial_at_least = 0;    ///< so many of them
  std::vector<double> dial_lowest;  ///< psi of the lowest band
  double dial_rise = 0;             ///< psi from band to band
  double dial_above_weight = 0;     ///< psi by which a dial row stands above the weighted row like it
  std::vector<Band> weighted_bands;
  std::vector<std::vector<double>> weighted_psi;  ///< by band; shorter: not recommended above
};

struct AltitudeRules {
  Altitude highest_open;
  std::vector<AdviceAbove> advice;
  SteamRule steam;
  TableForm form;

  /// Takes a document with `bands:`.
  void load(const yaml::Document& document, const knowledge::Sources& sources, checks::ErrorSink sink);
};

/// "0-1000", "6001+" in feet; nullopt where it is neither.
std::optional<Band> read_band(std::string_view text);
/// A plain figure in a rules file ("25", "0.5"); nullopt where it is none.
std::optional<double> read_figure(std::string_view text);

}  // namespace sealworthy::tested
