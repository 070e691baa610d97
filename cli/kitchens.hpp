#pragma once

/// Which kitchen file belongs to a recipe: the one named by --kitchen, else the nearest kitchen.yaml beside
/// or above it.

#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <sealworthy/checker.hpp>
#include <string>

namespace sealworthy::cli {

class Kitchens {
 public:
  using Report = std::function<void(const InputError&)>;
  /// `report` is told of each kitchen file that can't be read, once. No date of a kitchen may be later than
  /// `today`.
  Kitchens(const Checker& checker, std::string today, Report report)
      : checker_(checker), today_(std::move(today)), report_(std::move(report)) {}

  /// The kitchen of this file; false when it can't be read.
  bool use_for_all(const std::string& path);
  /// For the recipes of one file. Safe from several threads; a folder is looked up once.
  std::optional<Kitchen> of(const std::string& recipe_path);

 private:
  std::optional<Kitchen> in_or_above(const std::string& folder);
  std::optional<Kitchen> load(const std::string& path);

  const Checker& checker_;
  std::string today_;
  Report report_;
  std::optional<Kitchen> all_;
  bool fixed_ = false;
  std::mutex mutex_;
  std::map<std::string, std::optional<Kitchen>> by_folder_;  // absolute
  std::map<std::string, std::optional<Kitchen>>
      by_given_;  // as the paths name it: spares a system call a file
};

}  // namespace sealworthy::cli
