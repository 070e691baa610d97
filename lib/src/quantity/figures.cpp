#include "quantity/figures.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>

namespace sealworthy::quantity {
namespace {

/// The shortest decimal with at most `places` places and no zeros at its end.
std::string decimal(double value, int places) {
  // Most figures are whole; those that came back from another unit are so but for rounding.
  const double whole = std::round(value);
  if (std::abs(whole) < 1e15 && std::abs(value - whole) < 1e-9) {
    std::array<char, 20> digits{};
    const auto end =
        std::to_chars(digits.data(), digits.data() + digits.size(), static_cast<long long>(whole)).ptr;
    return {digits.data(), end};
  }
  std::array<char, 400> buffer{};
  const auto result =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, places);
  std::string text(buffer.data(), result.ptr);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

/// As few places as keep within one percent.
std::string rounded(double value) {
  double step = 1;
  int places = 0;
  while (places < 12 && std::abs(std::round(value / step) * step - value) > 0.01 * std::abs(value)) {
    step /= 10;
    ++places;
  }
  return decimal(value, places);
}

/// At most two places: a figure that is compared must not be rounded onto the one it is compared with.
std::string exact(double value) { return std::isfinite(value) ? decimal(value, 2) : kitchen_number(value); }

struct Part {
  double value;
  std::string_view text;
};
constexpr std::array parts{Part{0, ""},          Part{1.0 / 8, "1/8"}, Part{1.0 / 4, "1/4"},
                           Part{1.0 / 3, "1/3"}, Part{3.0 / 8, "3/8"}, Part{1.0 / 2, "1/2"},
                           Part{5.0 / 8, "5/8"}, Part{2.0 / 3, "2/3"}, Part{3.0 / 4, "3/4"},
                           Part{7.0 / 8, "7/8"}, Part{1, ""}};

std::string with_unit(double value, std::string_view one, std::string_view many) {
  const auto number = kitchen_number(value);
  const bool single = number == "1" || (value < 1 && value > 0);
  return number + " " + std::string(single ? one : many);
}

}  // namespace

std::string kitchen_number(double value) {
  if (!std::isfinite(value)) return std::isnan(value) ? "?" : value < 0 ? "-infinite" : "infinite";
  if (value < 0) return "-" + kitchen_number(-value);
  if (value >= 1e6) return grouped(value);
  if (value >= 100) return decimal(value, 0);
  const double whole = std::floor(value);
  const Part* best = nullptr;
  for (const auto& part : parts) {
    const double shown = whole + part.value;
    const double off = std::abs(value - shown);
    if (off <= 0.01 * shown + 1e-12 && (best == nullptr || off < std::abs(value - whole - best->value)))
      best = &part;
  }
  if (best == nullptr) return rounded(value);
  const double left = best->value == 1 ? whole + 1 : whole;
  if (best->text.empty()) return decimal(left, 0);
  return (left > 0 ? decimal(left, 0) + " " : std::string()) + std::string(best->text);
}

namespace {

struct Measure {
  std::string_view one, many;
  double teaspoons;
  double step;  ///< the part of it that a set of cups or spoons has
  double most;  ///< more of them are told in the next larger measure
};
constexpr std::array measures{Measure{"cup", "cups", 48, 0.25, 99}, Measure{"tbsp", "tbsp", 3, 1, 3},
                              Measure{"tsp", "tsp", 1, 0.25, 2.75}};

std::string measured(double count, const Measure& measure) {
  return kitchen_number(count) + " " + std::string(count > 1 ? measure.many : measure.one);
}

/// The steps of the measure nearest to so many teaspoons (`whole`: those in it), no more than people count.
double steps_of(double teaspoons, const Measure& measure, bool whole) {
  const double steps = teaspoons / measure.teaspoons / measure.step;
  const double count = (whole ? std::floor(steps + 1e-6) : std::round(steps)) * measure.step;
  return count <= measure.most ? count : 0;
}

}  // namespace

std::string spoon_words(double value, std::string_view unit, double tolerance) {
  const auto own =
      std::find_if(measures.begin(), measures.end(), [&](const auto& m) { return m.one == unit; });
  if (own == measures.end() || !std::isfinite(value) || value <= 0) return {};
  if (kitchen_number(value).find('.') == std::string::npos) return {};
  const double all = value * own->teaspoons;
  const auto near = [&](double teaspoons) { return std::abs(teaspoons - all) <= tolerance * all; };
  for (const auto& one : measures)
    if (const double count = steps_of(all, one, false); count > 0 && near(count * one.teaspoons))
      return measured(count, one);
  // Two measures, then three: as many of the larger ones as go in.
  static constexpr std::array<std::string_view, 4> ways{"01", "02", "12", "012"};
  for (const auto way : ways) {
    std::string words;
    double left = all;
    for (const char place : way) {
      const auto& measure = measures[static_cast<std::size_t>(place - '0')];
      const double count = steps_of(left, measure, place != way.back());
      if (count > 0) words += (words.empty() ? "" : " + ") + measured(count, measure);
      left -= count * measure.teaspoons;
    }
    if (near(all - left)) return words;
  }
  return {};
}

std::string grouped(double value) {
  if (!std::isfinite(value)) return kitchen_number(value);
  std::string digits = decimal(std::round(std::abs(value)), 0);
  for (std::size_t at = digits.size(); at > 3;) {
    at -= 3;
    digits.insert(at, ",");
  }
  return (value <= -0.5 ? "-" : "") + digits;
}

std::string words(Headspace headspace) { return with_unit(in_inches(headspace), "inch", "inches"); }

std::string words(Duration time) {
  const auto number = exact(in_minutes(time));
  return number + (number == "1" ? " minute" : " minutes");
}

std::string words(GaugePressure pressure) { return exact(in_psi(pressure)) + " psi"; }

std::string words(Altitude altitude) { return grouped(in_feet(altitude)) + " ft"; }

std::string words(Interval<Altitude> range) {
  if (std::isinf(range.high.si())) {
    const double from = std::round(in_feet(range.low));
    // a table's band "6001+" begins one foot above the figure that people say
    return "above " + words(std::fmod(from, 100) == 1 ? feet(from - 1) : range.low);
  }
  if (range.exact()) return words(range.low);
  if (in_feet(range.low) <= -1499.5) return "up to " + words(range.high);
  return grouped(in_feet(range.low)) + " to " + words(range.high);
}

std::string words(Volume volume) {
  struct Measure {
    double from;  ///< cups
    double cups;
    std::string_view one, many;
  };
  static constexpr std::array measures{Measure{4, 4, "quart", "quarts"}, Measure{0.249, 1, "cup", "cups"},
                                       Measure{1.0 / 16 - 0.001, 1.0 / 16, "tablespoon", "tablespoons"},
                                       Measure{0, 1.0 / 48, "teaspoon", "teaspoons"}};
  const double cups = in_us_cups(volume);
  for (const auto& measure : measures)
    if (cups >= measure.from) return with_unit(cups / measure.cups, measure.one, measure.many);
  return with_unit(cups, "cup", "cups");
}

std::string words(Mass mass) {
  const double pounds_of = in_pounds(mass);
  if (pounds_of >= 1 || pounds_of < 0) return kitchen_number(pounds_of) + " lb";
  return kitchen_number(pounds_of * 16) + " oz";
}

}  // namespace sealworthy::quantity
