#pragma once

/// Runs the check over all files with threads and writes the reports as they come.

#include <mutex>
#include <optional>
#include <sealworthy/checker.hpp>
#include <sealworthy/formats.hpp>
#include <string>
#include <vector>

#include "baselines.hpp"
#include "check_arguments.hpp"
#include "kitchens.hpp"
#include "outputs.hpp"
#include "paths.hpp"
#include "progress.hpp"
#include "report_cache.hpp"

namespace sealworthy::cli {

class CheckRun {
 public:
  CheckRun(const CheckArguments& arguments, const Checker& checker, CheckOptions options, FailPolicy fail,
           Outputs& outputs);

  /// The exit status.
  int all();

 private:
  /// The reports of one file on their way from the checking threads to the writer.
  struct Checked {
    FileReport report;
    std::optional<Trouble> trouble;
  };

  bool set_up();
  Checked check(const std::string& path);
  FileReport check_or_recall(const std::string& path, const std::string& text, const CheckOptions& options);
  void write(Checked& checked);
  void check_all(const std::vector<std::string>& files);
  void trouble(const InputError& error);

  const CheckArguments& arguments_;
  const Checker& checker_;
  CheckOptions options_;
  FailPolicy fail_;
  Outputs& outputs_;
  Kitchens kitchens_;
  Baselines baselines_;
  std::optional<ReportCache> cache_;
  Progress progress_;
  Summary summary_;
  std::mutex mutex_;
  bool troubled_ = false;
  bool failed_ = false;
};

}  // namespace sealworthy::cli
