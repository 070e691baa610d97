#pragma once

/// Runs the check over all files with threads and writes the reports as they come, in the order of the files.

#include <mutex>
#include <optional>
#include <sealworthy/checker.hpp>
#include <sealworthy/formats.hpp>
#include <string>
#include <unordered_set>
#include <vector>

#include "baselines.hpp"
#include "check_arguments.hpp"
#include "kitchens.hpp"
#include "outputs.hpp"
#include "paths.hpp"
#include "progress.hpp"
#include "report_cache.hpp"
#include "work.hpp"

namespace sealworthy::cli {

class CheckRun {
 public:
  CheckRun(const CheckArguments& arguments, const Checker& checker, CheckOptions options, FailPolicy fail,
           Outputs& outputs);

  /// The exit status.
  int all();

 private:
  /// The reports of one file, or of some lines of one, on their way from the checking threads to the writer.
  struct Checked {
    FileReport report;
    std::optional<Trouble> trouble;
    bool lines = false;  ///< some lines
    bool last = true;    ///< nothing of the file comes behind it
  };

  bool set_up();
  Checked check(const std::string& path, std::variant<std::string, Trouble> text);
  Checked check(const std::string& path, Lines lines);
  std::vector<Checked> check(const Work& work);
  CheckOptions options_for(const std::string& path);
  template <class Check>
  FileReport check_or_recall(const std::string& path, const std::string& text, const std::string& reader,
                             const CheckOptions& options, Check check);
  void number(Checked& lines);
  void write(Checked& checked);
  void check_all(const std::vector<std::string>& files);
  void trouble(const InputError& error);

  const CheckArguments& arguments_;
  const Checker& checker_;
  CheckOptions options_;
  FailPolicy fail_;
  Outputs& outputs_;
  std::unordered_set<std::string> named_;
  Kitchens kitchens_;
  Baselines baselines_;
  std::optional<ReportCache> cache_;
  Progress progress_;
  Summary summary_;
  std::size_t before_ = 0;  ///< recipes in the lines of this file that were written before
  std::mutex mutex_;
  bool troubled_ = false;
  bool failed_ = false;
};

}  // namespace sealworthy::cli
