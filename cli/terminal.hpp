#pragma once

/// What the terminal can show, and writing to it.

#include <string_view>

namespace sealworthy::cli {

enum class Stream { out, err };

bool is_terminal(Stream stream);
/// Columns of the terminal behind the stream; 100 where there is none.
int terminal_width(Stream stream);
/// --color auto|always|never, with NO_COLOR (no-color.org) and TERM=dumb heeded by `auto`.
bool use_color(std::string_view choice, bool to_terminal);

/// A place that reports are written to: standard output or a file.
class Output {
 public:
  /// Empty path: standard output. `ok()` tells whether the file could be opened.
  explicit Output(std::string_view path);
  Output(const Output&) = delete;
  Output& operator=(const Output&) = delete;
  ~Output();

  [[nodiscard]] bool ok() const { return descriptor_ >= 0; }
  /// False once writing failed. A reader that went away (a pipe into `head`) ends the program quietly.
  bool write(std::string_view text);

 private:
  int descriptor_ = -1;
  bool owned_ = false;
};

}  // namespace sealworthy::cli
