#include "text/nearest.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <string>
#include <vector>

using namespace sealworthy::text;

namespace {

/// The same distance by the whole table, as the definition has it: what the fast one is held against. Source:
/// Damerau (1964), restricted form (optimal string alignment).
int by_definition(const std::string& a, const std::string& b) {
  std::vector<std::vector<int>> d(a.size() + 1, std::vector<int>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i)
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        d[i][j] = static_cast<int>(i + j);
        continue;
      }
      d[i][j] =
          std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
    }
  return d[a.size()][b.size()];
}

}  // namespace

TEST_CASE("a slip is found, a stranger is not") {
  const std::string_view keys[] = {"recipe", "headspace", "process"};
  CHECK(nearest("headspce", keys) == "headspace");
  CHECK(nearest("proces", keys) == "process");
  CHECK_FALSE(nearest("zucchini", keys).has_value());
  CHECK(edit_distance("abcd", "acbd", 3) == 1);
}

TEST_CASE("the first of equally near candidates wins, a nearer one before it") {
  const std::string_view keys[] = {"pear", "peas", "peal"};
  CHECK(nearest("peax", keys) == "pear");
  CHECK(nearest("peal", keys) == "peal");
  CHECK(nearest("paes", keys) == "peas");
  CHECK_FALSE(nearest("", keys));
  CHECK_FALSE(nearest("peas", {}));
}

TEST_CASE("edit distance by hand") {
  CHECK(edit_distance("", "", 3) == 0);
  CHECK(edit_distance("", "abc", 3) == 3);
  CHECK(edit_distance("", "abcd", 3) == 4);  // over the limit
  CHECK(edit_distance("kitten", "sitting", 3) == 3);
  CHECK(edit_distance("ca", "abc", 3) == 3);  // 2 by unrestricted Damerau-Levenshtein
  CHECK(edit_distance("headspace", "haedspace", 1) == 1);
  CHECK(edit_distance("abc", "xyz", 1) == 2);
}

TEST_CASE("edit distance agrees with its definition") {
  std::mt19937 random(20);
  const auto word = [&](std::size_t longest) {
    std::string text(random() % (longest + 1), 'a');
    for (auto& c : text) c = static_cast<char>('a' + random() % 3);
    return text;
  };
  for (int i = 0; i < 20000; ++i) {
    const auto a = word(i % 100 == 0 ? 120 : 9);  // long ones leave the stack
    const auto b = i % 3 == 0 ? word(9) : [&] {
      auto near = a;
      if (near.size() > 1) std::swap(near[0], near[near.size() / 2]);
      near += word(2);
      return near;
    }();
    const int limit = static_cast<int>(random() % 4);
    CAPTURE(a);
    CAPTURE(b);
    CHECK(edit_distance(a, b, limit) == std::min(by_definition(a, b), limit + 1));
  }
}
