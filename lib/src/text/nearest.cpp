#include "text/nearest.hpp"

#include <algorithm>
#include <vector>

namespace sealworthy::text {

int edit_distance(std::string_view a, std::string_view b, int limit) {
  const auto n = static_cast<int>(a.size());
  const auto m = static_cast<int>(b.size());
  if (n - m > limit || m - n > limit) return limit + 1;
  const auto width = static_cast<std::size_t>(m) + 1;
  std::vector<int> before(width), last(width), row(width);
  for (int j = 0; j <= m; ++j) last[static_cast<std::size_t>(j)] = j;
  for (int i = 1; i <= n; ++i) {
    row[0] = i;
    int best = row[0];
    for (int j = 1; j <= m; ++j) {
      const auto x = static_cast<std::size_t>(i);
      const auto y = static_cast<std::size_t>(j);
      int cost = last[y - 1] + (a[x - 1] == b[y - 1] ? 0 : 1);
      cost = std::min({cost, last[y] + 1, row[y - 1] + 1});
      if (i > 1 && j > 1 && a[x - 1] == b[y - 2] && a[x - 2] == b[y - 1])
        cost = std::min(cost, before[y - 2] + 1);
      row[y] = cost;
      best = std::min(best, cost);
    }
    if (best > limit) return limit + 1;
    std::swap(before, last);
    std::swap(last, row);
  }
  return std::min(last[static_cast<std::size_t>(m)], limit + 1);
}

std::optional<std::string_view> nearest(std::string_view word, std::span<const std::string_view> candidates) {
  std::optional<std::string_view> found;
  int limit = std::clamp(static_cast<int>(word.size()) / 3, 1, 3);
  for (const auto candidate : candidates) {
    const int distance = edit_distance(word, candidate, limit);
    if (distance <= limit && !(found && distance == limit)) {
      found = candidate;
      limit = distance;
    }
  }
  return found;
}

}  // namespace sealworthy::text
