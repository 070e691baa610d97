#pragma once

/// What was understood of a recipe, before anything is judged: each line with its amount, unit, food and
/// state, and the tested process that the card was matched with.

#include <sealworthy/checker.hpp>
#include <sealworthy/report.hpp>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy {

enum class ReadFormat {
  text,
  json,
  card  ///< a YAML card of what was understood, for the cook to correct
};

/// One text a recipe of the file: for people, or the JSON object of tests/schema/read.schema.json.
struct ReadRecipes {
  std::vector<std::string> recipes;
  std::size_t skipped = 0;  ///< recipes that are not about canning, and pages without any
  bool unreadable = false;  ///< some recipe could not be read; its text says where and why
};

/// `all`: recipes that are not about canning too.
ReadRecipes read_recipes(const Checker& checker, std::string_view path, std::string_view text,
                         ReadFormat format, const TextStyle& style = {}, bool all = false);

}  // namespace sealworthy
