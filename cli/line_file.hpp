#pragma once

/// A file that is read as it comes: a part of its lines at a time, so that its size costs no memory, or
/// whole.

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "paths.hpp"

namespace sealworthy::cli {

/// Some whole lines of a file.
struct Lines {
  std::string text;
  int first = 1;                   ///< number of the first line
  bool last = false;               ///< the file ends here
  std::optional<Trouble> trouble;  ///< reading failed behind these lines
};

class LineFile {
 public:
  /// "-" is standard input.
  static std::variant<std::unique_ptr<LineFile>, Trouble> open(const std::string& path);
  LineFile(const LineFile&) = delete;
  LineFile& operator=(const LineFile&) = delete;
  ~LineFile();

  /// The first line and what stands below it up to a mark that is no blank, or the first bytes of a long
  /// line; it stays to be read. Valid until the next call.
  std::string_view beginning();
  /// The next lines: as many as are there, up to some 64 kB; waits for one at least. Of a line that is longer
  /// than `most_line_bytes` one byte more than that is kept.
  Lines next();
  /// All that is left, at most one byte more than `limit`.
  std::variant<std::string, Trouble> rest(std::size_t limit);

 private:
  LineFile(std::string path, int descriptor) : path_(std::move(path)), descriptor_(descriptor) {}
  /// Adds at most so many bytes to the buffer; false at the end and where reading fails.
  bool read_more(std::size_t most);
  void drop_rest_of_line();

  std::string path_;
  int descriptor_;
  std::string buffer_;  ///< read, and not given away yet
  int line_ = 1;        ///< that the buffer begins with
  bool ended_ = false;
  int error_ = 0;
};

}  // namespace sealworthy::cli
