#include <sealworthy/values.hpp>

#include "quantity/amount.hpp"

namespace sealworthy {

std::variant<Interval<Altitude>, InputError> read_altitude(std::string_view text) {
  auto figure = quantity::read_altitude(text);
  if (auto* error = std::get_if<quantity::FigureError>(&figure))
    return InputError{{}, {}, std::move(error->message), std::move(error->suggestion)};
  return std::get<Interval<Altitude>>(figure);
}

}  // namespace sealworthy
