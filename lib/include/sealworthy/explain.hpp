#pragma once

/// What a rule means, why it stands, its source and its examples, in the words that the reports use too.

#include <optional>
#include <sealworthy/checker.hpp>
#include <sealworthy/report.hpp>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy {

/// The text of one rule; nullopt for an unknown id.
std::optional<std::string> explain(const Checker& checker, std::string_view rule, const TextStyle& style);
/// One line a rule, by topic and id.
std::string list_rules(const Checker& checker, const TextStyle& style);
/// The known id nearest to a misspelt one, and those that hold the word: for "did you mean".
std::vector<std::string> suggest_rules(const Checker& checker, std::string_view rule);

}  // namespace sealworthy
