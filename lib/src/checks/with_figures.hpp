#pragma once

/// Figures in a rule's `with:`, written as a card writes them.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

#include "checks/fields.hpp"
#include "quantity/amount.hpp"

namespace sealworthy::checks {

/// The figure under a key of `with:` (its low end, where it is a range); nullopt where the key is missing or
/// can't be read, which is an error of the rules.
template <class Read>
auto figure(Fields& with, std::string_view key, Read read)
    -> std::optional<decltype(std::get<0>(read(std::string_view())).low)> {
  const yaml::Node* node = with.find(key);
  if (node == nullptr) return std::nullopt;
  const auto value = read(node->text);
  if (std::holds_alternative<quantity::FigureError>(value)) {
    const auto& error = std::get<quantity::FigureError>(value);
    with.sink().add(node->at, std::string(key) + ": " + error.message, error.suggestion);
    return std::nullopt;
  }
  return std::get<0>(value).low;
}

inline std::optional<Duration> time_figure(Fields& with, std::string_view key) {
  return figure(with, key, [](std::string_view text) { return quantity::read_time(text); });
}

inline std::optional<GaugePressure> pressure_figure(Fields& with, std::string_view key) {
  return figure(with, key, [](std::string_view text) { return quantity::read_pressure(text); });
}

inline std::optional<Altitude> altitude_figure(Fields& with, std::string_view key) {
  return figure(with, key, [](std::string_view text) { return quantity::read_altitude(text); });
}

inline std::optional<Headspace> headspace_figure(Fields& with, std::string_view key) {
  return figure(with, key, [](std::string_view text) { return quantity::read_headspace(text); });
}

}  // namespace sealworthy::checks
