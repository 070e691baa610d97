#pragma once

/// Putting the parts of a run together again: reports in JSON or NDJSON that were made of some of the files
/// each, on other machines or in other processes.

#include <cstddef>
#include <map>
#include <optional>
#include <sealworthy/checker.hpp>
#include <sealworthy/formats.hpp>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace sealworthy {

/// Recipes come out by path and by their order in the file, which is the order of one run over a folder.
/// Memory: the text of all parts.
class Merger {
 public:
  /// A JSON report, or NDJSON with one recipe a line. A part that is cut off, of another program or another
  /// version, or that tells something else of a recipe than a part before, is an error; a recipe told twice
  /// alike counts once (a job that was repeated).
  std::optional<InputError> add(const std::string& path, std::string_view text);

  /// The report of one run over everything, byte for byte, as `check --format json` or `ndjson` writes it.
  /// Only JSON parts tell how many pages were left out; NDJSON has lines of recipes only.
  [[nodiscard]] std::string json() const;
  [[nodiscard]] std::string ndjson() const;

  [[nodiscard]] const Summary& summary() const { return summary_; }
  /// Whether a recipe fails a build.
  [[nodiscard]] bool fails(const FailPolicy& policy) const;

 private:
  struct Recipe {
    std::string text;  // its JSON, on one line
    Verdict verdict = Verdict::unproven;
    std::optional<Severity> worst;  // of the findings that count
  };

  std::map<std::pair<std::string, std::size_t>, Recipe> recipes_;  // by path and number in the file
  std::set<std::size_t> parts_;  // hashes of whole JSON parts: one that was repeated skips nothing twice
  Summary summary_;
};

}  // namespace sealworthy
