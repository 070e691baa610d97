#pragma once

/// What the command line of `check` says.

#include <string>
#include <vector>

#include "commands.hpp"

namespace sealworthy::cli {

struct CheckArguments {
  Common common;
  std::vector<std::string> paths;
  std::vector<std::string> named;    ///< of `paths` those that stand on the command line itself
  std::vector<std::string> outputs;  ///< --output, each FILE or FORMAT:FILE
  std::string fail_on = "warning";
  std::string require;
  std::string paths_from;  ///< file that lists paths, or "-"
  std::string baseline;
  std::string write_baseline;
  std::string cache;
  std::string today;    ///< ISO date, never empty once the arguments were read
  std::string against;  ///< id of a tested process
  bool explain = false;
  bool all = false;  ///< pages that are not about canning too
  int jobs = 0;
};

}  // namespace sealworthy::cli
