#pragma once

/// Figures with their units in a sentence: "for two minutes", "75 to 85 F", "1/2 inch", "at 350".

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "phrases/lexicon.hpp"

namespace sealworthy::phrases {

enum class Dimension : std::uint8_t { minutes, fahrenheit, inches, pounds, cups, feet };

/// A figure, both ends the same if it is no range. Times in minutes (a month is 30 days), temperatures in °F,
/// volumes in US cups, pounds without telling weight from pressure.
struct Figure {
  std::size_t first = 0, last = 0;  ///< words, `last` one past the end
  Dimension dimension = Dimension::minutes;
  double low = 0, high = 0;
};

constexpr std::size_t most_figures = 12;

/// The figures of a sentence, in order; those past the twelfth are left out. "a minute", "half an hour", "a
/// couple of weeks" are figures. A bare number after "at" or "to" from 100 to 600 is a temperature.
std::size_t read_figures(std::span<const Token> tokens, std::span<Figure, most_figures> out);

/// What a unit's word measures, and how much of the dimension's own unit it is. Celsius is left to the
/// caller.
struct UnitWord {
  std::string_view word;
  Dimension dimension;
  double size;
};
const UnitWord* unit_word(std::string_view word);
/// "10", "1/2", "½", "1½", "5,280"; nullopt for anything else.
std::optional<double> number(std::string_view text);

}  // namespace sealworthy::phrases
