#define XXH_INLINE_ALL  // header only: programs that embed the library need not link another one
#include <fmt/format.h>
#include <xxhash.h>

#include <sealworthy/formats.hpp>

#include "report/places.hpp"

namespace sealworthy {
namespace {

/// The words of a text: letters in lower case, digits and whatever is no ASCII, with one blank between.
/// Blanks, dashes, quotes and the like may change without changing it.
std::string words_of(std::string_view text) {
  std::string words;
  bool apart = false;
  for (const char c : text) {
    const bool upper = c >= 'A' && c <= 'Z';
    // A point or slash within a figure counts: 1.5 is not 15.
    const bool word =
        upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || (c & 0x80) != 0 || c == '.' || c == '/';
    if (word) {
      if (apart && !words.empty()) words += ' ';
      words += upper ? static_cast<char>(c - 'A' + 'a') : c;
    }
    apart = !word;
  }
  return words;
}

}  // namespace

std::string fingerprint(const RecipeReport& report, const Finding& finding) {
  const auto line = report::line_of(report, finding);
  const std::string text = finding.rule + '\n' + words_of(report.title) + '\n' +
                           words_of(line.empty() ? std::string_view(finding.message) : line);
  return fmt::format("{:016x}", XXH3_64bits(text.data(), text.size()));
}

}  // namespace sealworthy
