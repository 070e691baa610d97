#include "json/document.hpp"
#include "recipe/reader.hpp"
#include "recipe/schema_org.hpp"

namespace sealworthy::recipe {
namespace {

/// What names no recipe is JSON of another kind, if it is JSON at all.
bool names_a_recipe(std::string_view text) {
  return text.find("Recipe") != std::string_view::npos || text.find("\"recipe\"") != std::string_view::npos;
}

bool is_card(const yaml::Node& node) {
  return node.is_map() && node.find("recipe") != nullptr && node.find("@type") == nullptr;
}

/// The cards and schema.org recipes of one JSON value.
void add_pieces(const yaml::Document& document, std::vector<Piece>& pieces) {
  const yaml::Node& root = document.root();
  if (is_card(root)) {
    pieces.emplace_back(document);
    return;
  }
  if (root.is_sequence() && !root.items.empty() && is_card(root.items.front())) {
    int number = 0;
    for (const yaml::Node& item : root.items)
      pieces.emplace_back(yaml::Document(document.arena(), &item, ++number));
    return;
  }
  for (Page& page : schema_recipes(document)) pieces.emplace_back(std::move(page));
}

}  // namespace

std::vector<Piece> read_json(std::string_view text, const TextWords& words) {
  std::vector<Piece> pieces;
  const bool speaks_of_canning = words.canning(text);
  const bool names_recipe = names_a_recipe(text);
  if (!names_recipe && !speaks_of_canning && !words.named) return pieces;
  const yaml::DocumentOrError document =
      json::read_document(text, 1, {1, 1}, {most_bytes(FileKind::json), 64, 1'000'000});
  if (const auto* bad = std::get_if<yaml::BadDocument>(&document)) {
    if (speaks_of_canning || words.named || (words.all && names_recipe))
      pieces.emplace_back(BadPage{{}, bad->error});
  } else {
    add_pieces(std::get<yaml::Document>(document), pieces);
  }
  return pieces;
}

std::vector<Piece> read_json_lines(std::string_view text, int first_line) {
  constexpr std::string_view blanks = " \t\r";
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  std::vector<Piece> pieces;
  if (first_line == 1 && text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  int line = first_line - 1;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    const std::string_view one = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    ++line;
    if (one.find_first_not_of(blanks) == std::string_view::npos) continue;
    if (one.size() > yaml::Limits{}.bytes) {
      pieces.emplace_back(BadPage{{},
                                  {{line, 1},
                                   "This line is too long to be a recipe.",
                                   "A recipe may take up to 1 MiB; is each on a line of its own?"}});
      continue;
    }
    const yaml::DocumentOrError document = json::read_document(one, line, {line, 1});
    if (const auto* bad = std::get_if<yaml::BadDocument>(&document)) {
      pieces.emplace_back(BadPage{{}, bad->error});
    } else {
      add_pieces(std::get<yaml::Document>(document), pieces);
    }
  }
  return pieces;
}

}  // namespace sealworthy::recipe
