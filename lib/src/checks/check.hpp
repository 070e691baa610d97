#pragma once

/// A check: a pure function of a Reading that many rules share. It does no I/O, keeps no state and knows no
/// other check.

#include <memory>
#include <sealworthy/finding.hpp>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "checks/rule.hpp"
#include "foods/catalogue.hpp"
#include "reading/reading.hpp"
#include "tested/tables.hpp"

namespace sealworthy::science {
class AcidData;
}

namespace sealworthy::checks {

/// Values for the {names} in a rule's words.
using Figures = std::vector<std::pair<std::string_view, std::string>>;

/// What checks hand back for one card.
struct Results {
  std::vector<Finding> findings;
  std::vector<Point> points;
  std::vector<std::string> assumed;

  /// A finding in the rule's words, at a place. `figures` fills the {names}; "found" and "needed" also go
  /// into the finding's own fields. The reference stays valid until the next add.
  Finding& add(const Rule& rule, Position at, const Figures& figures = {});
  void point(PointKind kind, Point::State state, std::string found = {}, std::string needed = {});
  void assume(std::string what);
};

/// One `vocabulary:` map: lists of words that the patterns of `practice-in-steps` share.
struct Vocabulary {
  std::string file;
  yaml::Node lists;
};

class FoodIndex;
class ProductFoods;

/// What a check may look at while it reads its rules' parameters.
struct Maker {
  Maker(const foods::Catalogue& foods, const tested::Tables& processes,
        std::vector<foods::LoadError>& problems, std::span<const Vocabulary> words = {},
        const science::AcidData* acids = nullptr);

  const foods::Catalogue& catalogue;
  const tested::Tables& tables;
  std::vector<foods::LoadError>& errors;  ///< wrong parameters are appended, with the rule's file and place
  std::span<const Vocabulary> vocabularies;
  const science::AcidData* acidity;  ///< may be null: nothing is known of acidity
  // Made once for all checks.
  std::shared_ptr<const FoodIndex> food_index;
  std::shared_ptr<const ProductFoods> product_foods;
};

class Check {
 public:
  Check() = default;
  Check(const Check&) = delete;
  Check& operator=(const Check&) = delete;
  virtual ~Check() = default;
  /// Appends points and findings for one card. Called from several threads at once.
  virtual void run(const reading::Reading& reading, Results& results) const = 0;
};

/// Makes one check for all the rules that name it, so that it can index them; the rules outlive it.
using Make = std::unique_ptr<Check> (*)(std::span<const Rule* const> rules, Maker& maker);

struct Registered {
  std::string_view name;
  Make make;
};
/// One line a check, in checks/registry.cpp.
std::span<const Registered> registry();

/// True if the card is one that the rule speaks of.
bool applies(const OnlyIf& only_if, const reading::Reading& reading);

/// Fills the {names} of a text; a name without a value stays as it is (a rule's examples would show it).
std::string fill(std::string_view text, const Figures& figures);

}  // namespace sealworthy::checks
