#pragma once

/// "Did you mean ...?" for keys, ids and food names.

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace sealworthy::text {

/// Optimal-string-alignment distance (insert, delete, replace, swap of neighbours), at most `limit` + 1.
/// Cost: O(len * limit). Source: Damerau (1964), restricted form.
int edit_distance(std::string_view a, std::string_view b, int limit);

/// The candidate nearest to `word`, if near enough to be meant (a third of its letters, at most 3 slips).
/// The first wins a tie, so the result does not depend on anything but the order given.
std::optional<std::string_view> nearest(std::string_view word, std::span<const std::string_view> candidates);

}  // namespace sealworthy::text
