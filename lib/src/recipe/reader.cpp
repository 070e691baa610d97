#include "recipe/reader.hpp"

#include <algorithm>
#include <array>

#include "recipe/fields.hpp"

namespace sealworthy::recipe {
namespace {

struct Ending {
  std::string_view text;
  FileKind kind;
};
constexpr std::array endings{Ending{".yaml", FileKind::card},         Ending{".yml", FileKind::card},
                             Ending{".json", FileKind::json},         Ending{".jsonld", FileKind::json},
                             Ending{".html", FileKind::html},         Ending{".htm", FileKind::html},
                             Ending{".ndjson", FileKind::json_lines}, Ending{".jsonl", FileKind::json_lines},
                             Ending{".md", FileKind::markdown},       Ending{".markdown", FileKind::markdown},
                             Ending{".txt", FileKind::text}};

/// No single JSON value goes on with `{` after a line from `{` to `}`.
bool value_a_line(std::string_view text) {
  constexpr std::string_view blanks = " \t\r\n";
  const std::size_t end = text.find('\n');
  if (end == std::string_view::npos) return false;
  const std::size_t last = text.substr(0, end).find_last_not_of(blanks);
  const std::size_t next = text.find_first_not_of(blanks, end);
  return last != std::string_view::npos && text[last] == '}' && next != std::string_view::npos &&
         text[next] == '{';
}

std::vector<Piece> read_cards(std::string_view text) {
  std::vector<Piece> pieces;
  for (yaml::DocumentOrError& document : yaml::read_documents(text)) {
    if (auto* good = std::get_if<yaml::Document>(&document)) {
      pieces.emplace_back(std::move(*good));
    } else {
      pieces.emplace_back(BadPage{{}, std::get<yaml::BadDocument>(document).error});
    }
  }
  return pieces;
}

}  // namespace

FileKind kind_of(std::string_view path, std::string_view text) {
  const std::size_t dot = path.find_last_of("./\\");
  if (dot != std::string_view::npos && path[dot] == '.') {
    const std::string ending = lowered(path.substr(dot));
    for (const Ending& known : endings)
      if (ending == known.text) return known.kind;
    return FileKind::card;
  }
  const std::size_t first = text.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
  if (first == std::string_view::npos) return FileKind::card;
  if (text[first] == '<') return FileKind::html;
  if (text[first] == '{' && value_a_line(text.substr(first))) return FileKind::json_lines;
  return text[first] == '{' || text[first] == '[' ? FileKind::json : FileKind::card;
}

std::size_t most_bytes(FileKind kind) {
  constexpr std::size_t mebibyte = 1 << 20;
  switch (kind) {
    case FileKind::html:
    case FileKind::json:
      return 16 * mebibyte;
    case FileKind::json_lines:
      return 1024 * mebibyte;
    default:
      return mebibyte;
  }
}

std::vector<Piece> read_pieces(std::string_view path, std::string_view text, const TextWords& words) {
  const FileKind kind = kind_of(path, text);
  if (text.size() > most_bytes(kind) && kind != FileKind::card)
    return {BadPage{
        {}, {{1, 1}, "This file is too large to be read as a recipe.", "Split it into several files."}}};
  switch (kind) {
    case FileKind::json:
      return read_json(text, words);
    case FileKind::json_lines:
      return read_json_lines(text);
    case FileKind::html:
      return read_html(text, words);
    case FileKind::markdown:
      return read_markdown(text, words);
    case FileKind::text:
      return read_plain_text(text, words);
    case FileKind::card:
      break;
  }
  return read_cards(text);
}

}  // namespace sealworthy::recipe
