#pragma once

#include <compare>
#include <optional>
#include <string_view>

namespace sealworthy::recipe {

struct Date {  ///< civil date, proleptic Gregorian
  int year = 0, month = 0, day = 0;
  friend auto operator<=>(const Date&, const Date&) = default;  // NOLINT(modernize-use-nullptr)
};
/// "2026-03-14"; nullopt for anything that is no day of the calendar.
std::optional<Date> read_date(std::string_view iso);

}  // namespace sealworthy::recipe
