#pragma once

/// --baseline and --write-baseline during a run.

#include <optional>
#include <sealworthy/baseline.hpp>
#include <string>

namespace sealworthy::cli {

class Baselines {
 public:
  /// Files named by the options; empty: not given. False after the error was told.
  bool open(const std::string& known_file, const std::string& new_file);
  /// Marks what is known; takes the rest in for the new file, where it is known from now on.
  void mark(RecipeReport& report);
  /// Tells stale entries and writes the new file. False after the error was told.
  bool finish();

 private:
  void tell_stale() const;

  std::string known_file_;
  std::string new_file_;
  std::optional<Baseline> known_;
  Baseline new_;
};

}  // namespace sealworthy::cli
