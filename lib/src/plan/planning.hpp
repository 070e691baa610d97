#pragma once

/// rules/planning.yaml: usual canner loads, minutes beside the process, reminders.

#include <map>
#include <optional>
#include <sealworthy/interval.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "knowledge/sources.hpp"
#include "reading/reading.hpp"

namespace sealworthy::plan {

struct Phase {
  reading::MethodKind method = reading::MethodKind::unknown;
  bool before = true;  ///< the process
  Interval<double> minutes;
  std::string does;
  std::string source;
};

/// A row of the published table of syrups: cups for a load of so many jars.
struct Syrup {
  std::string name;  ///< "light"
  std::string jar;   ///< id of rules/jars.yaml
  int jars = 1;
  double water = 0, sugar = 0;  ///< cups
};

struct Planning {
  std::map<std::string, int, std::less<>> loads;  ///< jars on one layer, by id of rules/jars.yaml
  std::vector<Phase> phases;
  double change_over = 0;  ///< minutes between two loads
  std::string change_over_does;
  std::vector<tested::ProductClass> whole_batches;  ///< never made larger, made again instead
  std::string whole_batches_why;
  std::vector<std::pair<reading::MethodKind, std::string>> reminders;
  std::string syrup_word;  ///< the word by which a card names it
  std::string syrup_source;
  std::vector<Syrup> syrups;

  void load(std::string_view file, const yaml::Document& document, const knowledge::Sources& sources,
            std::vector<foods::LoadError>& errors);
};

}  // namespace sealworthy::plan
