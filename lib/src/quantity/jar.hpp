#pragma once

/// A jar size at a place of a text, for read_jar and read_yield.

#include <cstddef>
#include <optional>
#include <string_view>

#include "quantity/amount.hpp"
#include "quantity/numbers.hpp"

namespace sealworthy::quantity {

struct JarAt {
  JarText text;
  std::size_t end = 0;
};

/// The jar size at `at`, words around it included ("wide-mouth", "jelly jars", "of"). `figure`: the number
/// before its unit, where it was read already.
std::optional<JarAt> jar_at(std::string_view text, std::size_t at, Units units,
                            std::optional<Number> figure = std::nullopt);
/// Past words around a jar size that don't tell a size; `text` has a mouth noted.
std::size_t skip_jar_words(std::string_view text, std::size_t at, JarText& jar);
/// Sizes that some jar has: 20 mL to 20 L.
bool sensible_jar(Volume volume);

}  // namespace sealworthy::quantity
