#pragma once

/// What the checking threads take on next: some files, or some lines of a file with a recipe a line.

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "line_file.hpp"
#include "paths.hpp"

namespace sealworthy::cli {

struct Work {
  std::span<const std::string> files;                      ///< of the queue's list
  std::optional<Lines> lines;                              ///< of the one file
  std::optional<std::variant<std::string, Trouble>> text;  ///< of the one file, where it was read already
};

/// Cuts the list of files into pieces of work. Files are left to the threads to read, but for those with a
/// recipe a line and for those whose kind only their beginning tells.
class WorkQueue {
 public:
  /// `files` must outlive the queue and what it gives.
  explicit WorkQueue(std::span<const std::string> files) : files_(files) {}

  /// True if there is nothing to share among threads.
  [[nodiscard]] bool one_piece() const;
  /// nullopt: all is given away.
  std::optional<Work> next();

 private:
  Work begin(std::span<const std::string> file);

  std::span<const std::string> files_;  ///< that were not begun
  std::span<const std::string> current_;
  std::unique_ptr<LineFile> lines_;  ///< of `current_`, while it is given away in parts
};

}  // namespace sealworthy::cli
