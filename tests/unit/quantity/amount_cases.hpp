#pragma once

/// Lines and what must be read from them, for the tests of read_amount.

#include <doctest/doctest.h>

#include <array>
#include <string>
#include <string_view>

#include "quantity/amount.hpp"

namespace sealworthy::test {

using quantity::Amount;
using quantity::read_amount;
using quantity::Units;

struct Case {
  std::string_view line;
  double low, high;
  std::string_view unit;
  std::string_view size = "";
};

template <std::size_t N>
void check_all(const std::array<Case, N>& cases, Units units = Units::us, bool anywhere = false) {
  for (const auto& row : cases) {
    CAPTURE(row.line);
    const auto amount = read_amount(row.line, units, anywhere);
    if (!amount) {
      FAIL_CHECK("no amount read");
      continue;
    }
    CHECK(amount->stated.low == doctest::Approx(row.low));
    CHECK(amount->stated.high == doctest::Approx(row.high));
    CHECK(amount->unit == row.unit);
    CHECK(amount->size == row.size);
  }
}

inline std::string_view bytes(std::string_view line, const Amount& amount) {
  return line.substr(amount.begin, amount.end - amount.begin);
}

}  // namespace sealworthy::test
