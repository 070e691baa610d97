#pragma once

/// Checking recipes: the front door for programs that embed Sealworthy.
///
///   const auto checker = sealworthy::Checker::builtin();
///   for (const auto& report : checker.check_text("beans.yaml", text))
///     if (report.verdict != sealworthy::Verdict::tested) ...
///
/// No call throws but for std::bad_alloc; whatever is wrong with a text is told in its report (verdict
/// `unreadable`). A Checker is immutable after it is made and may be used from several threads at once. Cost:
/// the first use of the built-in rules takes some tens of milliseconds; a card of 1 kB takes well under a
/// tenth of a millisecond. `tested` means that the card follows a published process line by line, nothing
/// more; this library compares and does not replace the canner's manual, the extension office or local law.

#include <memory>
#include <optional>
#include <sealworthy/finding.hpp>
#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sealworthy {

namespace knowledge {
class Knowledge;
}
namespace recipe {
struct Kitchen;
}

/// An error in something other than a recipe: a kitchen file, a folder of rules, an option.
struct InputError {
  std::string path;
  Position at;
  std::string message;
  std::string suggestion;
};

/// A kitchen file that was read. Copies are cheap.
class Kitchen {
 public:
  /// Its form alone; Checker::read_kitchen also knows which canners there are. With a `today` (ISO date), a
  /// date in the future is an error.
  static std::variant<Kitchen, InputError> read(std::string path, std::string_view text,
                                                std::string_view today = {});
  [[nodiscard]] const recipe::Kitchen& get() const { return *kitchen_; }
  [[nodiscard]] const std::string& path() const;

 private:
  std::shared_ptr<const recipe::Kitchen> kitchen_;
};

struct CheckOptions {
  std::optional<Kitchen> kitchen;
  std::optional<Interval<Altitude>> altitude;  ///< --altitude; wins over the kitchen's
  std::string against;  ///< id of a process to compare with instead of what the card follows; see knows()
  bool side_by_side = false;  ///< fill RecipeReport::compared
  std::string today;          ///< ISO date; empty: checks that need a date say nothing
  bool explain = false;       ///< fills in Finding::meaning and RecipeReport::study (study.hpp)
  bool all = false;           ///< check recipes of pages that are not about canning too
  /// The file was asked for by its name: JSON and scripts in it that can't be read are told as errors. Else
  /// they are where the text speaks of canning, and count as not about canning where it does not.
  bool named = false;
};

/// What one file holds.
struct FileReport {
  std::vector<RecipeReport> recipes;
  /// Recipes of pages that are not about canning (no process, no jars filled and closed), and a page without
  /// any recipe: they were not checked.
  std::size_t skipped = 0;
};

/// The most bytes that a file of this name is read with; a larger one is told as an error. A name without an
/// ending, and "-" for standard input, go by the `beginning` of the text.
std::size_t most_bytes(std::string_view path, std::string_view beginning = {});

/// True if a file is read with a recipe a line (Checker::check_lines): .ndjson and .jsonl. `beginning` as
/// above; it should hold the first line and the first mark below it.
bool recipe_a_line(std::string_view path, std::string_view beginning);
/// The longest line of such a file; a longer one is told as an error.
inline constexpr std::size_t most_line_bytes = 1 << 20;

class Checker {
 public:
  /// With the rules compiled into the library, which are read when the first call needs them, once for all
  /// checkers: a program that finds all its reports in a store never does.
  static Checker builtin();
  /// With further rule files: pairs of path and text. They may add foods, processes, formulas and rules.
  static std::variant<Checker, std::vector<InputError>> with_rules(
      const std::vector<std::pair<std::string, std::string>>& files);

  /// One report a recipe, in order. How the text is read goes by the end of `path`: YAML cards (.yaml, .yml),
  /// JSON cards and schema.org recipes (.json, .jsonld; .ndjson and .jsonl with one a line), web pages
  /// (.html, .htm) by their schema.org data or else by their text, Markdown with front matter (.md,
  /// .markdown) and plain text (.txt); anything else is read as cards. An empty text of cards gives one
  /// `unreadable` report.
  [[nodiscard]] FileReport check_file(std::string_view path, std::string_view text,
                                      const CheckOptions& options = {}) const;
  /// The recipes of check_file.
  [[nodiscard]] std::vector<RecipeReport> check_text(std::string_view path, std::string_view text,
                                                     const CheckOptions& options = {}) const;

  /// Some whole lines of a file with a recipe a line, so that a file of any size can be checked in parts, at
  /// the same time if need be: `first_line` is the number of their first line in the file. Recipes are
  /// numbered from 1 in each part: the next part's go on after `recipes` and `skipped` of those before. Lines
  /// without a recipe count as nothing.
  [[nodiscard]] FileReport check_lines(std::string_view path, std::string_view lines, int first_line,
                                       const CheckOptions& options = {}) const;

  /// True if `id` names a tested process.
  [[nodiscard]] bool knows(std::string_view id) const;
  /// The id of a tested process that is nearest to a misspelt one; empty: none is near.
  [[nodiscard]] std::string nearest(std::string_view id) const;
  /// As Kitchen::read, and a canner whose kind is none is an error with the kinds there are.
  [[nodiscard]] std::variant<Kitchen, InputError> read_kitchen(std::string path, std::string_view text,
                                                               std::string_view today = {}) const;

  [[nodiscard]] const knowledge::Knowledge& knowledge() const;

 private:
  Checker() = default;
  std::shared_ptr<const knowledge::Knowledge> knowledge_;  ///< null: the built-in rules
};

}  // namespace sealworthy
