#include "paths.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <filesystem>
#include <memory>
#include <string_view>
#include <system_error>
#include <unordered_set>

#include "line_file.hpp"

namespace sealworthy::cli {
namespace {

namespace fs = std::filesystem;

bool hidden(const fs::path& path) {
  const auto name = path.filename().string();
  return name.size() > 1 && name.front() == '.' && name != "..";
}

bool is_recipe_file(const fs::path& path) {
  static constexpr std::array<std::string_view, 11> endings{
      ".yaml", ".yml", ".json", ".jsonld", ".ndjson", ".jsonl", ".md", ".markdown", ".html", ".htm", ".txt"};
  const auto ending = path.extension().string();
  if (std::find(endings.begin(), endings.end(), ending) == endings.end()) return false;
  return path.stem() != "kitchen" || (ending != ".yaml" && ending != ".yml");
}

/// Folders that hold a site's tools, not its pages.
bool of_tools(const fs::path& folder) { return folder.filename() == "node_modules"; }

void walk(const std::string& folder, Expanded& out) {
  std::vector<std::string> found;
  std::error_code error;
  std::vector<fs::path> open{fs::path(folder)};
  while (!open.empty()) {
    const auto here = open.back();
    open.pop_back();
    auto it = fs::directory_iterator(here, error);
    if (error) {
      out.troubles.push_back({here.generic_string(), "this folder can't be read: " + error.message()});
      error.clear();
      continue;
    }
    for (; it != fs::directory_iterator(); it.increment(error)) {
      if (error) break;
      if (hidden(it->path()) || of_tools(it->path())) continue;
      if (it->is_directory(error) && !it->is_symlink(error))
        open.push_back(it->path());
      else if (is_recipe_file(it->path()) && !it->is_directory(error))
        found.push_back(it->path().generic_string());
    }
    if (error)
      out.troubles.push_back({here.generic_string(), "this folder can't be read: " + error.message()});
    error.clear();
  }
  if (found.empty())
    out.troubles.push_back(
        {folder, "no recipes (*.yaml, *.json, *.md, *.html, *.txt and the like) in this folder"});
  std::sort(found.begin(), found.end());
  out.files.insert(out.files.end(), found.begin(), found.end());
}

}  // namespace

Expanded expand(const std::vector<std::string>& paths) {
  Expanded out;
  for (const auto& path : paths) {
    std::error_code error;
    const auto status = path == "-" ? fs::file_status(fs::file_type::fifo) : fs::status(path, error);
    if (!fs::exists(status)) {
      const bool missing = !error || error == std::errc::no_such_file_or_directory;
      out.troubles.push_back({path, missing ? "no such file or folder" : error.message()});
    } else if (fs::is_directory(status)) {
      walk(path, out);
    } else {
      out.files.push_back(path);
    }
  }
  std::unordered_set<std::string> seen;
  std::erase_if(out.files, [&](const std::string& file) { return !seen.insert(file).second; });
  return out;
}

std::variant<std::string, Trouble> read_file(const std::string& path, std::size_t limit) {
  auto opened = LineFile::open(path);
  if (auto* trouble = std::get_if<Trouble>(&opened)) return std::move(*trouble);
  return std::get<std::unique_ptr<LineFile>>(opened)->rest(limit);
}

}  // namespace sealworthy::cli
