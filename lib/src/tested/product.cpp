#include "tested/product.hpp"

#include <array>

namespace sealworthy::tested {
namespace {

constexpr std::array class_names{"acid", "acidified", "low-acid", "fermented", "sugar-preserve"};
constexpr std::array method_names{"boiling-water", "pressure-dial", "pressure-weighted"};

/// A height told in metres may miss the band's edge by the last digit of a double.
constexpr Altitude rounding = feet(0.01);

}  // namespace

std::string_view to_string(ProductClass c) noexcept { return class_names[static_cast<std::size_t>(c)]; }
std::string_view to_string(TableMethod m) noexcept { return method_names[static_cast<std::size_t>(m)]; }

const Option::Step* Option::at(Altitude altitude) const {
  for (const auto& step : steps)
    if (altitude <= step.band.to + rounding) return &step;
  return nullptr;
}

}  // namespace sealworthy::tested
