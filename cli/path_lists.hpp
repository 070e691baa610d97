#pragma once

/// --paths-from: paths that another program lists.

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "paths.hpp"

namespace sealworthy::cli {

/// One path a line, or, where the text holds a NUL, one a NUL (`find -print0`, `git diff -z`). Empty ones are
/// left out.
std::vector<std::string> split_paths(std::string_view text);
/// The paths listed in a file, "-" for standard input.
std::variant<std::vector<std::string>, Trouble> read_path_list(const std::string& file);

}  // namespace sealworthy::cli
