#pragma once

/// The units of card values: what a word measures and how much one of it is in SI.

#include <cstdint>
#include <string_view>

#include "quantity/scan.hpp"

namespace sealworthy::quantity {

enum class Dimension : std::uint8_t {
  pressure,           ///< as a gauge shows it
  absolute_pressure,  ///< known, to be refused by name
  time,
  length,
  temperature,
  pounds,  ///< of weight; of pressure where a pressure is wanted
  weight,
  volume,
};

struct ValueUnit {
  std::string_view word;
  Dimension dimension;
  double factor;      ///< SI value of one; unused for kinds that are only refused
  double offset = 0;  ///< added before the factor: temperatures
};

/// The unit a word or mark names; nullptr if none. `end` is set past it and past an abbreviation's full stop.
const ValueUnit* value_unit_at(std::string_view text, std::size_t at, std::size_t& end);

/// "a pressure", "a time" ...
std::string_view name_of(Dimension dimension);

}  // namespace sealworthy::quantity
