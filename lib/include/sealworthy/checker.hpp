#pragma once

/// Checking recipes: the front door for programs that embed Sealworthy.
///
///   const auto checker = sealworthy::Checker::builtin();
///   for (const auto& report : checker.check_text("beans.yaml", text))
///     if (report.verdict != sealworthy::Verdict::tested) ...
///
/// No call throws but for std::bad_alloc; whatever is wrong with a text is told in its report (verdict
/// `unreadable`). A Checker is immutable after it is made and may be used from several threads at once. Cost:
/// making one takes a few milliseconds; a card of 1 kB takes well under a tenth of a millisecond. `tested`
/// means that the card follows a published process line by line, nothing more; this library compares and does
/// not replace the canner's manual, the extension office or local law.

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
  static std::variant<Kitchen, InputError> read(std::string path, std::string_view text);
  [[nodiscard]] const recipe::Kitchen& get() const { return *kitchen_; }

 private:
  std::shared_ptr<const recipe::Kitchen> kitchen_;
};

struct CheckOptions {
  std::optional<Kitchen> kitchen;
  std::optional<Interval<Altitude>> altitude;  ///< --altitude; wins over the kitchen's
  std::string against;  ///< id of a process to compare with instead of what the card follows; see knows()
  bool side_by_side = false;  ///< fill RecipeReport::compared
  std::string today;          ///< ISO date; empty: checks that need a date say nothing
};

class Checker {
 public:
  /// With the rules compiled into the library.
  static Checker builtin();
  /// With further rule files: pairs of path and text. They may add foods, processes, formulas and rules.
  static std::variant<Checker, std::vector<InputError>> with_rules(
      const std::vector<std::pair<std::string, std::string>>& files);

  /// One report a recipe (YAML document), in order. An empty text gives one `unreadable` report.
  [[nodiscard]] std::vector<RecipeReport> check_text(std::string_view path, std::string_view text,
                                                     const CheckOptions& options = {}) const;

  /// True if `id` names a tested process.
  [[nodiscard]] bool knows(std::string_view id) const;
  /// The id of a tested process that is nearest to a misspelt one; empty: none is near.
  [[nodiscard]] std::string nearest(std::string_view id) const;

  [[nodiscard]] const knowledge::Knowledge& knowledge() const { return *knowledge_; }

 private:
  std::shared_ptr<const knowledge::Knowledge> knowledge_;
};

}  // namespace sealworthy
