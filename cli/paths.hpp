#pragma once

/// From the PATHs of the command line to the files to be read.

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

namespace sealworthy::cli {

/// Something that could not be read, for standard error.
struct Trouble {
  std::string path;
  std::string message;
};

struct Expanded {
  std::vector<std::string> files;  ///< in the order given; within a folder by path; "-" is standard input
  std::vector<Trouble> troubles;
};

/// Folders are walked for recipes (*.yaml *.yml *.json *.jsonld *.ndjson *.jsonl *.md *.markdown *.html *.htm
/// *.txt), leaving out kitchen.yaml, everything hidden and node_modules. Links to folders
/// are not followed, so a loop can't hold the walk.
Expanded expand(const std::vector<std::string>& paths);

/// The limit that documents are read with; a longer one is told as an error there.
inline constexpr std::size_t file_limit = 1 << 20;

/// The bytes of a file ("-": standard input). At most one byte more than `limit` is read: the reader then
/// tells that the file is too large.
std::variant<std::string, Trouble> read_file(const std::string& path, std::size_t limit);

}  // namespace sealworthy::cli
