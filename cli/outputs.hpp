#pragma once

/// The reports of a run: one or several formats, each to a place of its own.

#include <memory>
#include <optional>
#include <sealworthy/formats.hpp>
#include <string>
#include <vector>

#include "terminal.hpp"

namespace sealworthy::cli {

/// Where one report goes and in what format.
struct OutputPlace {
  ReportFormat format = ReportFormat::text;
  std::string path;  ///< empty or "-": standard output
};

/// From the values of --output (FILE or FORMAT:FILE) and --format, which FILE alone takes. None given: the
/// format to standard output. A text for the user where they can't be: an unknown format, a place given
/// twice.
struct OutputPlaces {
  std::vector<OutputPlace> places;
  std::string error;
};
OutputPlaces output_places(const std::vector<std::string>& values, const std::string& format);

class Outputs {
 public:
  /// Opens each place; `failed()` names one that can't be written.
  Outputs(const std::vector<OutputPlace>& places, const Checker& checker, const std::string& color,
          const FailPolicy& fail);

  [[nodiscard]] const std::string& failed() const { return failed_; }
  void begin();
  void recipe(const RecipeReport& report);
  void end(const Summary& summary);
  /// Whether all was written so far.
  [[nodiscard]] bool written() const { return written_; }

 private:
  struct One {
    std::unique_ptr<Output> output;
    std::unique_ptr<ReportWriter> writer;
    bool terminal = false;
    std::string pending;
  };
  /// Written in pieces of some size; to a terminal at once.
  void put(One& one, const std::string& text, bool now = false);

  std::vector<One> all_;
  std::string failed_;
  bool written_ = true;
};

}  // namespace sealworthy::cli
