#pragma once

/// Living with old findings: a list of those that were there when a site began to check its recipes. They are
/// counted and no longer fail the build; new ones do.
///
/// An entry is met by its fingerprint (formats.hpp), so it outlives moved lines and moved files, and by its
/// number: a third finding like two known ones is new. A danger is never known: it does not enter a baseline,
/// and one that was written in by hand is not heeded. Nor is an unreadable recipe, whose findings nobody
/// knows.

#include <cstddef>
#include <map>
#include <sealworthy/checker.hpp>
#include <sealworthy/finding.hpp>
#include <set>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sealworthy {

class Baseline {
 public:
  struct Entry {
    std::string rule;
    std::string path;   ///< of the file it was found in when the baseline was written
    std::string title;  ///< of the recipe
    std::string line;   ///< the card's own line, for people who read the baseline
    std::size_t count = 1;
  };

  /// The text of a baseline file. Another form than this version writes, or a wrong field, is an error.
  static std::variant<Baseline, InputError> read(std::string path, std::string_view text);

  /// Marks the findings of a report that the baseline knows, each entry as often as it counts. Cost: a
  /// look-up a finding.
  void mark(RecipeReport& report);
  /// Takes the findings of a report in, for text(), and marks them. Accepted ones stay with their card.
  void add(RecipeReport& report);

  /// Entries that no marked finding met, of files that were marked or are gone: a run over some files says
  /// nothing about the others. Sorted by path.
  [[nodiscard]] std::vector<Entry> stale(const std::set<std::string>& gone_paths = {}) const;
  /// Paths of the entries, to find out which of them are gone.
  [[nodiscard]] std::set<std::string> paths() const;
  /// The file: JSON, an entry a line, sorted, so that it can be compared and merged by line.
  [[nodiscard]] std::string text() const;

 private:
  std::map<std::string, Entry> entries_;  // by fingerprint
  std::map<std::string, std::size_t> met_;
  std::set<std::string> marked_paths_;
};

}  // namespace sealworthy
