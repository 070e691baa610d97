#pragma once

/// Reports as bytes, for programs that keep them between runs. The bytes are for the machine and the build of
/// the library that made them: a keeper must throw them away when either changes.

#include <optional>
#include <sealworthy/finding.hpp>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy {

/// Everything in the reports but their paths. Cost: a copy of their texts.
std::string store(const std::vector<RecipeReport>& reports);
/// The reports again, with `path` as the path of each; nullopt for bytes that are cut off or damaged in their
/// form (damage within a text is for the keeper to find, by a checksum).
std::optional<std::vector<RecipeReport>> restore(std::string_view bytes, std::string_view path);

}  // namespace sealworthy
