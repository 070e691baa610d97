// Any bytes as a page of each form, through the readers, the understanding of directions and the checker; and
// the card that `read --format card` writes of a page must be a card that can be read.

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <sealworthy/checker.hpp>
#include <sealworthy/read.hpp>
#include <string>
#include <string_view>

namespace {

void hold(bool so) {
  if (!so) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const auto checker = sealworthy::Checker::builtin();
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  sealworthy::CheckOptions options;
  options.all = true;
  for (const char* path : {"a.json", "a.ndjson", "a.html", "a.md", "a.txt"}) {
    const auto report = checker.check_file(path, text, options);
    hold(!report.recipes.empty() || report.skipped > 0);
    for (const auto& recipe : report.recipes) hold(recipe.at.line >= 1 && recipe.at.column >= 1);
    const auto cards = sealworthy::read_recipes(checker, path, text, sealworthy::ReadFormat::card, {}, true);
    if (!cards.unreadable)
      for (const auto& card : cards.recipes) hold(!checker.check_text("card.yaml", card).empty());
  }
  return 0;
}
