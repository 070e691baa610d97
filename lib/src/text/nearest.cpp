#include "text/nearest.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <vector>

namespace sealworthy::text {
namespace {

/// Three rows of the distance table: kept on the stack for words, on the heap for anything longer.
class Rows {
 public:
  explicit Rows(std::size_t width) {
    int* base = stack_.data();
    if (3 * width > stack_.size()) {
      heap_.resize(3 * width);
      base = heap_.data();
    }
    before = base;
    last = base + width;
    row = last + width;
  }
  void turn() {
    int* oldest = before;
    before = last;
    last = row;
    row = oldest;
  }

  int* before;
  int* last;
  int* row;

 private:
  std::array<int, std::size_t{3} * 48> stack_;
  std::vector<int> heap_;
};

/// Takes off what two words begin and end with in common: it costs nothing.
void strip_common(std::string_view& a, std::string_view& b) {
  while (!a.empty() && !b.empty() && a.front() == b.front()) {
    a.remove_prefix(1);
    b.remove_prefix(1);
  }
  while (!a.empty() && !b.empty() && a.back() == b.back()) {
    a.remove_suffix(1);
    b.remove_suffix(1);
  }
}

}  // namespace

int edit_distance(std::string_view a, std::string_view b, int limit) {
  strip_common(a, b);
  const auto n = static_cast<int>(a.size());
  const auto m = static_cast<int>(b.size());
  const int over = limit + 1;
  if (n - m > limit || m - n > limit) return over;
  if (n == 0 || m == 0) return n + m;
  Rows rows(b.size() + 1);
  for (int j = 0; j <= m; ++j) rows.last[j] = std::min(j, over);
  for (int i = 1; i <= n; ++i) {
    // cells further than `limit` from the diagonal can't come to a distance within it
    const int from = std::max(1, i - limit);
    const int to = std::min(m, i + limit);
    rows.row[from - 1] = from == 1 ? std::min(i, over) : over;
    int best = rows.row[from - 1];
    const auto x = static_cast<std::size_t>(i);
    for (int j = from; j <= to; ++j) {
      const auto y = static_cast<std::size_t>(j);
      int cost = rows.last[j - 1] + (a[x - 1] == b[y - 1] ? 0 : 1);
      cost = std::min(cost, rows.row[j - 1] + 1);
      if (j < i + limit) cost = std::min(cost, rows.last[j] + 1);
      if (i > 1 && j > 1 && a[x - 1] == b[y - 2] && a[x - 2] == b[y - 1])
        cost = std::min(cost, rows.before[j - 2] + 1);
      rows.row[j] = std::min(cost, over);
      best = std::min(best, rows.row[j]);
    }
    if (best > limit) return over;
    rows.turn();
  }
  return rows.last[m];
}

std::optional<std::string_view> nearest(std::string_view word, std::span<const std::string_view> candidates) {
  std::optional<std::string_view> found;
  int limit = std::clamp(static_cast<int>(word.size()) / 3, 1, 3);
  for (const auto candidate : candidates) {
    if (limit < 0) break;
    const int distance = edit_distance(word, candidate, limit);
    if (distance > limit) continue;
    found = candidate;
    limit = distance - 1;  // only a nearer one takes its place
  }
  return found;
}

}  // namespace sealworthy::text
