#pragma once

/// Rules files (rules/practice): `rules:` and `bases:` -> rules and base cards. Strict: whatever is not known
/// or missing is an error with its place.

#include <string_view>
#include <vector>

#include "checks/rule.hpp"
#include "foods/catalogue.hpp"
#include "knowledge/sources.hpp"
#include "yaml/document.hpp"

namespace sealworthy::checks {

/// Appends the rules of one document. A wrong rule is told and left out; those after it are still read. The
/// document's arena must outlive the rules.
void load_rules(std::string_view file, const yaml::Document& document, const knowledge::Sources& sources,
                std::vector<Rule>& rules, std::vector<foods::LoadError>& errors);

/// Appends the base cards of one document: maps with a `base:` key, else cards.
void load_bases(std::string_view file, const yaml::Document& document, std::vector<yaml::Node>& bases,
                std::vector<foods::LoadError>& errors);

/// Across all files, once after the last load: ids given twice, examples on bases that don't exist, checks
/// that don't exist. Sorts by id.
void finish_rules(std::vector<Rule>& rules, const std::vector<yaml::Node>& bases,
                  const std::vector<std::string_view>& checks, std::vector<foods::LoadError>& errors);

}  // namespace sealworthy::checks
