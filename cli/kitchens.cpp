#include "kitchens.hpp"

#include <filesystem>

#include "paths.hpp"

namespace sealworthy::cli {
namespace {

namespace fs = std::filesystem;
constexpr std::size_t kitchen_limit = 1 << 20;

}  // namespace

std::optional<Kitchen> Kitchens::load(const std::string& path) {
  auto text = read_file(path, kitchen_limit);
  if (const auto* trouble = std::get_if<Trouble>(&text)) {
    report_({path, {}, trouble->message, {}});
    return std::nullopt;
  }
  auto kitchen = checker_.read_kitchen(path, std::get<std::string>(text), today_);
  if (const auto* error = std::get_if<InputError>(&kitchen)) {
    report_(*error);
    return std::nullopt;
  }
  return std::get<Kitchen>(std::move(kitchen));
}

bool Kitchens::use_for_all(const std::string& path) {
  fixed_ = true;
  all_ = load(path);
  return all_.has_value();
}

std::optional<Kitchen> Kitchens::in_or_above(const std::string& folder) {
  if (const auto it = by_folder_.find(folder); it != by_folder_.end()) return it->second;
  std::error_code error;
  const fs::path here(folder);
  const auto file = here / "kitchen.yaml";
  std::optional<Kitchen> kitchen;
  if (fs::is_regular_file(file, error)) {
    kitchen = load(file.generic_string());
  } else if (here.has_parent_path() && here != here.root_path()) {
    kitchen = in_or_above(here.parent_path().generic_string());
  }
  return by_folder_[folder] = kitchen;
}

std::optional<Kitchen> Kitchens::of(const std::string& recipe_path) {
  if (fixed_) return all_;
  const auto given = recipe_path.substr(0, recipe_path.rfind('/') + 1);
  const std::scoped_lock lock(mutex_);
  if (const auto it = by_given_.find(given); it != by_given_.end()) return it->second;
  std::error_code error;
  const bool piped = recipe_path == "-";
  const auto folder =
      piped ? fs::current_path(error) : fs::absolute(recipe_path, error).lexically_normal().parent_path();
  if (error) return std::nullopt;
  return by_given_[given] = in_or_above(folder.generic_string());
}

}  // namespace sealworthy::cli
