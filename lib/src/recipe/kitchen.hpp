#pragma once

/// The kitchen file: where the cook lives and what canners are at hand.

#include <optional>
#include <sealworthy/interval.hpp>
#include <sealworthy/quantity.hpp>
#include <string>
#include <variant>
#include <vector>

#include "recipe/recipe.hpp"
#include "yaml/document.hpp"

namespace sealworthy::recipe {

struct Date {  ///< civil date, proleptic Gregorian
  int year = 0, month = 0, day = 0;
  friend auto operator<=>(const Date&, const Date&) = default;
};
std::optional<Date> read_date(std::string_view iso);

struct Canner {
  Placed<std::string_view> kind;  ///< trade word, as in a card's method
  std::optional<Placed<Gauge>> gauge;
  std::optional<Placed<Date>> gauge_tested;
  std::optional<Placed<quantity::Yield>> holds;
};

struct Kitchen {
  std::string name;
  std::string path;
  std::optional<Placed<Interval<Altitude>>> altitude;
  std::vector<Canner> canners;
  std::shared_ptr<const void> arena;
};

std::variant<Kitchen, yaml::Error> read_kitchen(const yaml::Document& document);

}  // namespace sealworthy::recipe
