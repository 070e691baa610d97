#include "recipe/fields.hpp"
#include "recipe/plain_words.hpp"
#include "recipe/reader.hpp"
#include "recipe/text_lines.hpp"

namespace sealworthy::recipe {
namespace {

/// "=====", "-----" below a title or between recipes.
bool rule_line(std::string_view line) {
  return line.size() >= 3 && line.find_first_not_of("=-_*~# ") == std::string_view::npos;
}

std::vector<TextLine> split_lines(std::string_view text) {
  std::vector<TextLine> lines;
  while (!text.empty()) {
    const std::size_t end = text.find_first_of("\r\n");
    const std::string_view line = trimmed(text.substr(0, end));
    const std::size_t past =
        end == std::string_view::npos ? text.size() : end + (text.substr(end, 2) == "\r\n" ? 2 : 1);
    text.remove_prefix(past);
    bool item = false;
    const std::string_view words = without_bullet(line, item);
    if (line.empty() || rule_line(line)) {
      lines.push_back({TextLine::Kind::blank, 0, {}});
    } else {
      lines.push_back({item ? TextLine::Kind::item : TextLine::Kind::plain, 0, words});
    }
  }
  return lines;
}

}  // namespace

std::vector<Piece> read_plain_text(std::string_view text, const TextWords& words) {
  std::string room;
  const std::string_view utf8 = as_utf8(text, room);
  if (utf8.data() == nullptr && !text.empty())
    return {BadPage{{}, {{1, 1}, "These bytes are no UTF-8 text.", "Save the file as UTF-8."}}};
  auto source = std::make_shared<TextSource>();
  source->text = utf8;
  if (source->text.starts_with("\xEF\xBB\xBF")) source->text.replace(0, 3, "   ");
  std::vector<Piece> pieces;
  for (Page& page : pages_of_lines(split_lines(source->text), source, words, {}))
    pieces.emplace_back(std::move(page));
  return pieces;
}

}  // namespace sealworthy::recipe
