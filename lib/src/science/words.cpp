#include <fmt/format.h>

#include <cmath>
#include <sealworthy/science.hpp>

namespace sealworthy::science {
namespace {

/// "36,152", "0.9": whole above a hundred.
std::string figure(double value) {
  if (std::isnan(value)) return "no number";
  if (std::abs(value) < 100) return fmt::format("{:.4g}", value);
  std::string digits = fmt::format("{:.0f}", std::abs(value));
  for (auto at = static_cast<std::ptrdiff_t>(digits.size()) - 3; at > 0; at -= 3)
    digits.insert(static_cast<std::size_t>(at), ",");
  return (value < 0 ? "-" : "") + digits;
}

}  // namespace

std::string words(const OutOfRange& error) {
  const auto unit = error.unit.empty() ? std::string() : " " + std::string(error.unit);
  return fmt::format("{} of {}{} is outside {} to {}{}", error.what, figure(error.given), unit,
                     figure(error.low), figure(error.high), unit);
}

}  // namespace sealworthy::science
