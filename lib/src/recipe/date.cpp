#include "recipe/date.hpp"

#include <array>
#include <charconv>

namespace sealworthy::recipe {
namespace {

/// A number of just so many digits at the front of `text`, which is taken off.
std::optional<int> take_digits(std::string_view& text, std::size_t digits) {
  if (text.size() < digits ||
      text.substr(0, digits).find_first_not_of("0123456789") != std::string_view::npos)
    return std::nullopt;
  int value = 0;
  std::from_chars(text.data(), text.data() + digits, value);
  text.remove_prefix(digits);
  return value;
}

bool take(std::string_view& text, char c) {
  if (!text.starts_with(c)) return false;
  text.remove_prefix(1);
  return true;
}

int days_in(int year, int month) {
  constexpr std::array days{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
  return month == 2 && leap ? 29 : days[static_cast<std::size_t>(month - 1)];
}

}  // namespace

std::optional<Date> read_date(std::string_view iso) {
  const auto year = take_digits(iso, 4);
  if (!year || !take(iso, '-')) return std::nullopt;
  const auto month = take_digits(iso, 2);
  if (!month || !take(iso, '-')) return std::nullopt;
  const auto day = take_digits(iso, 2);
  if (!day || !iso.empty() || *month < 1 || *month > 12) return std::nullopt;
  if (*day < 1 || *day > days_in(*year, *month)) return std::nullopt;
  return Date{*year, *month, *day};
}

}  // namespace sealworthy::recipe
