#pragma once

/// A rule as rules/practice holds it: what to look for is data, how to look is a check in code.

#include <optional>
#include <sealworthy/finding.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "yaml/document.hpp"

namespace sealworthy::checks {

/// A worked example: a card, or a change to a base card, that the rule must or must not flag.
struct Example {
  bool flags = true;
  std::string base;   ///< which card of rules/practice/bases.yaml it changes
  yaml::Node change;  ///< a scalar: a sentence put into the steps; a map: keys that replace the base card's
                      ///< (null: removed)
};

/// Narrows a rule to some cards. A set of bits, bit i for the i-th word; none set means any.
struct OnlyIf {
  unsigned jar_class = 0;  ///< low-acid | acid | acidified | sugar-preserve | fermented | unknown
  unsigned method =
      0;              ///< boiling-water | steam | pressure | low-temperature | not-accepted | unknown | none
  unsigned pack = 0;  ///< hot | raw | unsaid
  std::vector<std::string> product;      ///< ids of the matched product
  std::vector<std::string> not_product;  ///< silent for these
  std::optional<bool> process;           ///< present (true) | missing
  std::optional<bool> matched;           ///< yes: a tested process, by `follows:` or found without doubt
  std::optional<bool> infant;            ///< meant for a baby
  enum class Keep { shelf, cold, any };
  Keep keep = Keep::shelf;

  static const std::vector<std::string_view>& jar_class_words();
  static const std::vector<std::string_view>& method_words();
  static const std::vector<std::string_view>& pack_words();
};

struct Rule {
  std::string id;
  Severity severity = Severity::notice;
  Topic topic = Topic::card;
  std::string check;  ///< name of the check in checks/registry.cpp
  yaml::Node with;    ///< parameters, read once by the check's maker
  OnlyIf only_if;
  std::string says;  ///< the message; {found}, {needed}, {food} ... are filled in by the check
  std::string why;
  std::string instead;
  /// What to do instead where a rule with `never_canned` speaks of the same card; empty: `instead` stands.
  std::string instead_if_never_canned;
  bool never_canned = false;  ///< its food has no process in any canner: no other finding may offer one
  /// Not told beside a finding of these rules; "never-canned": of any rule with `never_canned`.
  std::vector<std::string> silent_beside;
  std::string source;  ///< publication, section and page, for people
  Read read = Read::reprint;
  std::vector<Example> examples;
  std::string file;  ///< where it stands
  Position at;
};

}  // namespace sealworthy::checks
