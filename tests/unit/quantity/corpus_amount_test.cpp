// The share of labelled ingredient lines whose amount and unit are read as a person labelled them.
// Source of the lines and labels: named with their licences at the top of tests/data/labelled-lines.tsv.

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <string>

#include "data_lines.hpp"
#include "quantity/amount.hpp"

using namespace sealworthy;
using namespace sealworthy::quantity;

namespace {

std::optional<double> number(std::string_view text) {
  double value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ec != std::errc{}) return std::nullopt;
  return value;
}

struct Alias {
  std::string_view label, unit;
};
constexpr std::array aliases{Alias{"c", "cup"},         Alias{"tablespoon", "tbsp"}, Alias{"teaspoon", "tsp"},
                             Alias{"pound", "lb"},      Alias{"ounce", "oz"},        Alias{"gram", "g"},
                             Alias{"litre", "l"},       Alias{"liter", "l"},         Alias{"qt", "quart"},
                             Alias{"pt", "pint"},       Alias{"gal", "gallon"},      Alias{"tin", "can"},
                             Alias{"leaves", "leaf"},   Alias{"bunches", "bunch"},   Alias{"boxes", "box"},
                             Alias{"pouches", "pouch"}, Alias{"branches", "branch"}, Alias{"tbsps", "tbsp"}};
constexpr std::array<std::string_view, 27> not_the_unit{
    "small", "sm",      "medium", "med", "large", "lg",       "medium-size", "medium-large", "big",
    "very",  "thin",    "thick",  "fat", "plump", "hefty",    "whole",       "heaping",      "heaped",
    "scant", "rounded", "level",  "to",  "good",  "generous", "extra",       "thumb-sized",  "packed"};

/// A label's unit in the spelling of the reader: small letters, size words and modifiers left out (they stand
/// in `size` or nowhere), singular, abbreviations spelled one way.
std::string canonical(std::string_view label) {
  std::string unit;
  while (!label.empty()) {
    const auto space = std::min(label.find(' '), label.size());
    std::string word(label.substr(0, space));
    label.remove_prefix(std::min(space + 1, label.size()));
    std::transform(word.begin(), word.end(), word.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c | 0x20) : c; });
    if (std::find(not_the_unit.begin(), not_the_unit.end(), word) != not_the_unit.end()) continue;
    unit += (unit.empty() ? "" : " ") + word;
  }
  const auto alias = [&] {
    const auto found =
        std::find_if(aliases.begin(), aliases.end(), [&](const Alias& a) { return a.label == unit; });
    if (found == aliases.end()) return false;
    unit = found->unit;
    return true;
  };
  if (alias()) return unit;
  if (unit.size() > 2 && unit.ends_with('s')) unit.pop_back();
  alias();
  return unit;
}

/// The amount that the label wants added to its own: the first of the comment's further amounts, "plus: 2
/// tablespoon" or "plus 0.333 cup". Our reader adds sums up, the label keeps the first part; both count as
/// right.
std::optional<double> with_plus(const test::Row& row, double label, const Amount& amount) {
  const std::string_view comment = row[5];
  const auto plus = comment.find("plus");
  const auto other = std::min({comment.find("alt:"), comment.find("size:"), comment.find("each:")});
  if (plus == std::string_view::npos || other < plus) return std::nullopt;
  const auto digit = comment.find_first_of("0123456789", plus);
  if (digit == std::string_view::npos) return std::nullopt;
  const auto first = read_amount("1 " + amount.unit, Units::us);
  const auto more = read_amount(comment.substr(digit), Units::us);
  if (!first || !more || first->measure.index() != more->measure.index()) return std::nullopt;
  if (const auto* volume = std::get_if<Interval<Volume>>(&more->measure))
    return label + volume->low / std::get<Interval<Volume>>(first->measure).low;
  if (const auto* mass = std::get_if<Interval<Mass>>(&more->measure))
    return label + mass->low / std::get<Interval<Mass>>(first->measure).low;
  return std::nullopt;
}

bool near(double a, double b) { return std::abs(a - b) <= 0.006; }

bool right(const test::Row& row) {
  const auto amount = read_amount(row[0], Units::us, true).value_or(Amount{});
  if (amount.unit != canonical(row[3])) return false;
  const double low = number(row[1]).value_or(0);
  const double high = number(row[2]).value_or(0);
  if (near(amount.stated.low, low) && near(amount.stated.high, high)) return true;
  const auto sum = with_plus(row, low, amount);
  return sum && near(amount.stated.low, *sum);
}

}  // namespace

TEST_CASE("labelled lines: amount and unit") {
  const auto rows = test::data_rows("labelled-lines.tsv", 6);
  REQUIRE(rows.size() == 2530);
  const auto good = std::count_if(rows.begin(), rows.end(), right);
  const double share = static_cast<double>(good) / static_cast<double>(rows.size());
  MESSAGE("amount and unit right in ", good, " of ", rows.size(), " lines, ", share);
  CHECK(share >= 0.99);
}
