#pragma once

/// Any file of recipes -> its pieces: cards as trees, pages of prose, and what can't be read.

#include <functional>
#include <string_view>
#include <vector>

#include "recipe/page.hpp"

namespace sealworthy::recipe {

enum class FileKind { card, json, json_lines, html, markdown, text };

/// By the end of the path's name: .json .jsonld, .ndjson .jsonl, .html .htm, .md .markdown, .txt; else a
/// card. Standard input ("-") and names without an ending go by the first mark of the text: `{` or `[` is
/// JSON, `<` HTML. A first line from `{` to `}` with another `{` below it, which no single value can have, is
/// JSON lines.
FileKind kind_of(std::string_view path, std::string_view text);

/// The most bytes that are read of a file of this kind.
std::size_t most_bytes(FileKind kind);

/// What a heading of a recipe written as text says that the lines below it are.
enum class Section { none, ingredients, directions, notes, other };
/// Tells what a heading means; Section::none: it is no heading of a recipe.
using SectionOf = std::function<Section(std::string_view heading)>;
/// How texts are read: what headings mean, and whether a line tells the yield ("Makes 7 pints").
struct TextWords {
  SectionOf section;
  std::function<bool(std::string_view line)> yield;
  /// Whether bytes of any kind may speak of canning: what is false here is not worth a closer look.
  std::function<bool(std::string_view bytes)> canning;
  bool all = false;    ///< texts that are not about canning are wanted too
  bool named = false;  ///< somebody asked for this very file
};

/// The pieces of a file, in order. A file of pages without a recipe gives none; a file of cards (YAML) that
/// is empty gives none either. Never throws but for bad_alloc.
std::vector<Piece> read_pieces(std::string_view path, std::string_view text, const TextWords& words);

// The readers, one file each.
/// JSON that can't be read is told where it speaks of canning or was asked for; a site's folder holds JSON of
/// other kinds, some with comments in it.
std::vector<Piece> read_json(std::string_view text, const TextWords& words);
/// `first_line`: the number of the first line, for a part of a file. A line is read up to
/// `yaml::Limits::bytes`.
std::vector<Piece> read_json_lines(std::string_view text, int first_line = 1);
std::vector<Piece> read_html(std::string_view text, const TextWords& words);
std::vector<Piece> read_markdown(std::string_view text, const TextWords& words);
std::vector<Piece> read_plain_text(std::string_view text, const TextWords& words);

}  // namespace sealworthy::recipe
