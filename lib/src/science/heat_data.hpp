#pragma once

/// Germs, lags of jars and what stands for air left in a canner (rules/science/heat.yaml).

#include <sealworthy/science.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "yaml/document.hpp"

namespace sealworthy::science {

struct HeatTarget {
  std::string germ;
  Temperature reference = fahrenheit(250);
  TemperatureStep z = step_fahrenheit(18);
  Duration d;      ///< 0: none known
  Duration least;  ///< minutes at the reference that are given at least; 0: none known
  std::string source;
  bool from_memory = false;
};

struct NamedLag {
  JarLag pint{minutes(10), minutes(10), 1};
  std::string says;
};

struct HeatData {
  HeatTarget low_acid, acid;
  NamedLag thin, thick;
  Temperature hot_start = fahrenheit(160), raw_start = fahrenheit(110), room = fahrenheit(70);
  std::string lag_source;
  double air_share = 0;
  std::vector<std::string> air_rules;  ///< rules that speak of venting

  /// Takes a document with `heat:`. What is wrong is told.
  void load(std::string_view file, const yaml::Document& document, std::vector<foods::LoadError>& errors);
};

}  // namespace sealworthy::science
