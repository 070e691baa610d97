#pragma once

/// How the readers of card values put what is wrong.

#include <string>
#include <string_view>

#include "quantity/amount.hpp"

namespace sealworthy::quantity {

/// A text in quotes for a message; a long one is cut, never inside a character.
inline std::string quoted(std::string_view text) {
  constexpr std::size_t longest = 60;
  if (text.size() <= longest) return "\"" + std::string(text) + "\"";
  auto end = longest;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80) --end;
  return "\"" + std::string(text.substr(0, end)) + " ...\"";
}

inline FigureError refusal(std::string_view text, std::string_view what, std::string suggestion) {
  return {quoted(text) + " " + std::string(what), std::move(suggestion)};
}

}  // namespace sealworthy::quantity
