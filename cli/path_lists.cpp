#include "path_lists.hpp"

#include <algorithm>

namespace sealworthy::cli {
namespace {

constexpr std::size_t list_limit = std::size_t{1} << 30;

}  // namespace

std::vector<std::string> split_paths(std::string_view text) {
  const char separator = text.find('\0') != std::string_view::npos ? '\0' : '\n';
  std::vector<std::string> paths;
  while (!text.empty()) {
    const auto end = std::min(text.find(separator), text.size());
    auto path = text.substr(0, end);
    if (separator == '\n' && path.ends_with('\r')) path.remove_suffix(1);
    if (!path.empty()) paths.emplace_back(path);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return paths;
}

std::variant<std::vector<std::string>, Trouble> read_path_list(const std::string& file) {
  auto text = read_file(file, list_limit);
  if (auto* trouble = std::get_if<Trouble>(&text)) return std::move(*trouble);
  return split_paths(std::get<std::string>(text));
}

}  // namespace sealworthy::cli
