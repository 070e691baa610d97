#pragma once

/// Trade words for canning methods (rules/methods.yaml): "water bath", "steam canner", "oven" ...

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "foods/catalogue.hpp"
#include "reading/reading.hpp"

namespace sealworthy::reading {

struct MethodWord {
  std::string id;  ///< "boiling-water", "oven" ...
  MethodKind kind = MethodKind::unknown;
  std::string name;                    ///< for messages: "a boiling-water canner"
  std::vector<std::string> names;      ///< folded trade words
  std::optional<recipe::Gauge> gauge;  ///< "weighted-gauge pressure canner" says it too
};

class Methods {
 public:
  void load(std::string_view file, const yaml::Document& document, std::vector<foods::LoadError>& errors);
  /// The method that a card's words name, slips of one letter allowed; nullptr: unknown, or named beside
  /// words that may change it ("boiling water, halfway up the jars").
  [[nodiscard]] const MethodWord* find(std::string_view words) const;
  [[nodiscard]] const std::vector<MethodWord>& all() const { return methods_; }

 private:
  std::vector<MethodWord> methods_;
  std::vector<std::string> beside_;  ///< words that may stand beside a name and change nothing
};

}  // namespace sealworthy::reading
