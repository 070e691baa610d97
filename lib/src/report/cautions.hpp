#pragma once

/// What every report for people says once: what the tool is, and what it leaves to the reader.

#include <span>
#include <string>
#include <string_view>

namespace sealworthy::report {

struct Caution {
  std::string_view about;  ///< "your canner"
  std::string_view text;
};

std::string_view what_it_is();
/// The canner's maker, the extension office, selling, the signs of a spoiled jar.
std::span<const Caution> cautions();
/// All of it, wrapped.
std::string cautions_text(int width);

}  // namespace sealworthy::report
