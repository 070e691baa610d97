#include "yaml/explain.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "yaml/quoting.hpp"

namespace sealworthy::yaml {
namespace {

using namespace YAML;

constexpr const char* quote_it = "Put the whole text in single quotes: '...'";
constexpr const char* line_it_up =
    "Begin it in the same column as the others of its kind, with spaces, not tabs.";

/// What is known of the place where the parser stopped.
struct Scene {
  Places& places;
  std::string_view text;  // of the document
  std::size_t offset;     // where the parser stopped
  Quoting quoting;

  [[nodiscard]] std::string_view line() const { return places.line_at(offset); }
  [[nodiscard]] std::size_t column() const { return offset - places.line_begin(offset); }
  [[nodiscard]] Error error(std::string message, std::string suggestion) const {
    return {places.at(offset), std::move(message), std::move(suggestion)};
  }
  [[nodiscard]] Error error_at(std::size_t at, std::string message, std::string suggestion) const {
    return {places.at(at), std::move(message), std::move(suggestion)};
  }
};

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

/// The colon of "time:25" where a space is missing; of "time: 25" none.
std::optional<std::size_t> tight_colon(std::string_view line) {
  const std::size_t colon = line.find(':');
  if (colon == std::string_view::npos || colon + 1 >= line.size() || line[colon + 1] == ' ')
    return std::nullopt;
  return colon;
}

std::optional<Error> tab_in_indentation(const Scene& s) {
  const std::string_view line = s.line();
  const std::size_t tab = line.substr(0, line.find_first_not_of(" \t")).find('\t');
  if (tab == std::string_view::npos) return std::nullopt;
  return s.error_at(s.places.line_begin(s.offset) + tab, "This line is indented with a tab.",
                    "Indent with spaces only, two for each level.");
}

/// `- "Grandma's" beans`, or a quote that swallowed lines because the one above it was never closed.
std::optional<Error> text_after_quote(const Scene& s) {
  if (!s.quoting.last_before) return std::nullopt;
  const auto [begin, end] = *s.quoting.last_before;
  if (!trimmed(s.text.substr(end, s.offset - end)).empty()) return std::nullopt;
  const std::string_view quoted = s.text.substr(begin, end - begin);
  if (quoted.find('\n') != std::string_view::npos)
    return s.error_at(begin,
                      "The quote that opens here closes only on a later line, with more text after it.",
                      "Close it at the end of its own text.");
  return s.error(
      "There is more text after the closing quote.",
      "Put the whole text in quotes, or none of it; with quotes inside it: '1\" pieces, \"best\" kind'.");
}

Error unclosed_quote(const Scene& s) {
  return open_quote(s.places.at(s.quoting.open_quote.value_or(s.offset)));
}

Error unclosed_bracket(const Scene& s) {
  if (auto error = text_after_quote(s)) return *error;
  if (s.quoting.open_quote) return unclosed_quote(s);
  if (s.quoting.open_bracket && s.places.line_begin(*s.quoting.open_bracket) != s.places.line_begin(s.offset))
    return s.error_at(*s.quoting.open_bracket, "This bracket is opened here and never closed.",
                      "Close it with " + std::string(s.text[*s.quoting.open_bracket] == '[' ? "`]`" : "`}`") +
                          "; if it belongs to a text, put the whole text in quotes.");
  return s.error("Inside brackets there must be a comma or the closing bracket here.",
                 "Separate the values with commas, and put a text that holds commas or brackets in quotes.");
}

/// The text in single quotes, for a suggestion.
std::string in_quotes(std::string_view text) {
  std::string quoted = "'";
  for (const char c : text) quoted += c == '\'' ? "''" : std::string(1, c);
  return quoted + "'";
}

/// `steps: Boil: then cool`
Error colon_in_text(const Scene& s, std::string_view before) {
  const std::string_view line = trimmed(s.line());
  const bool of_list = line.starts_with("- ");
  const std::string_view text =
      trimmed(of_list ? line.substr(2) : line.substr(trimmed(before).find(": ") + 2));
  return s.error(
      "A colon followed by a space stands inside a text, where YAML takes it for the end of a name.",
      text.size() > 80 ? quote_it : "Put the whole text in quotes: " + in_quotes(text));
}

/// The line on which the text began that the parser took the line of the error for a part of: the first above
/// that is indented no more.
std::optional<std::size_t> head_line(const Scene& s) {
  const std::size_t indent = s.line().find_first_not_of(' ');
  for (std::size_t begin = s.places.line_begin(s.offset); begin > 0;) {
    begin = s.places.line_begin(begin - 1);
    const std::string_view line = s.places.line_at(begin);
    const std::size_t first = line.find_first_not_of(' ');
    if (first != std::string_view::npos && line[first] != '#' && first <= indent) return begin;
  }
  return std::nullopt;
}

/// A colon where no name can end: inside a text, or on a line that the parser took for more of the line
/// above.
Error stray_colon(const Scene& s) {
  if (auto error = tab_in_indentation(s)) return *error;
  if (auto error = text_after_quote(s)) return *error;
  const std::string_view before = s.line().substr(0, s.column());
  if (trimmed(before).find(": ") != std::string_view::npos) return colon_in_text(s, before);
  const auto head = head_line(s);
  if (!head) return s.error("A colon stands here where no name can end.", quote_it);
  const std::string_view line = s.places.line_at(*head);
  const std::string_view bare = trimmed(line.substr(0, line.find(" #")));
  if (tight_colon(bare) || (bare.find(':') == std::string_view::npos && !bare.starts_with('-')))
    return no_colon(s.places.at(*head + line.find_first_not_of(' ')), bare);
  const std::size_t first = std::min(s.line().find_first_not_of(' '), s.column());
  return s.error_at(
      s.places.line_begin(s.offset) + first,
      in_ticks(trimmed(before)) + " is indented as if it went on with the text of the line above.",
      line_it_up);
}

/// A line that is no `name: value` where one must be, or no `- value` in a list.
Error stray_line(const Scene& s) {
  if (auto error = tab_in_indentation(s)) return *error;
  if (auto error = text_after_quote(s)) return *error;
  if (s.quoting.open_quote) return unclosed_quote(s);
  const std::string_view line = trimmed(s.line().substr(std::min(s.column(), s.line().size())));
  const bool begins_line = trimmed(s.line().substr(0, s.column())).empty();
  if (!begins_line) return s.error("This can't follow what stands before it on the line.", quote_it);
  if (line.starts_with("- "))
    return s.error("This line of a list does not line up with the lines above it.", line_it_up);
  if (tight_colon(line) || (line.find(':') == std::string_view::npos && !line.empty()))
    return no_colon(s.places.at(s.offset), line);
  return s.error("This line does not line up with the lines above it.", line_it_up);
}

Error bad_alias(const Scene& s) {
  return s.error("A text that begins with `*` or `&` means something else in YAML.", quote_it);
}

Error bad_start(const Scene& s) {
  const std::string sign(s.text.substr(std::min(s.offset, s.text.size()), 1));
  return s.error("A text can't begin with `" + sign + "` in YAML.", quote_it);
}

/// The last of these characters before the place where the parser stopped, on the same line.
std::size_t back_to(const Scene& s, std::string_view characters) {
  const std::size_t at = s.line().substr(0, s.column()).find_last_of(characters);
  return at == std::string_view::npos ? s.offset : s.places.line_begin(s.offset) + at;
}

Error bad_escape(const Scene& s) {
  return s.error_at(back_to(s, "\\"), "A backslash in double quotes means something else in YAML.",
                    "Put the text in single quotes, or write the backslash twice.");
}

Error bad_block(const Scene& s) {
  return s.error_at(back_to(s, "|>"), "A `|` or `>` at the beginning of a text means something else in YAML.",
                    quote_it);
}

Error stray_bracket(const Scene& s) {
  return s.error("This bracket does not match the one that was opened.",
                 "Write the bracket that closes it; if it belongs to a text, put the whole text in quotes.");
}

Error bad_tag(const Scene& s) {
  return s.error("A text that begins with `!` means something else in YAML.", quote_it);
}

Error bad_directive(const Scene& s) {
  return s.error(
      "A line that begins with `%` is an instruction to YAML readers, and this one is not understood.",
      "Delete the line, or put the text in quotes.");
}

struct Row {
  std::string_view begins;  // the parser's message
  Error (*say)(const Scene&);
};

const std::array rows{
    Row{ErrorMsg::EOF_IN_SCALAR, unclosed_quote},
    Row{ErrorMsg::END_OF_SEQ_FLOW, unclosed_bracket},
    Row{ErrorMsg::END_OF_MAP_FLOW, unclosed_bracket},
    Row{ErrorMsg::MAP_VALUE, stray_colon},
    Row{ErrorMsg::END_OF_SEQ, stray_line},
    Row{ErrorMsg::END_OF_MAP, stray_line},
    Row{ErrorMsg::BLOCK_ENTRY, stray_line},
    Row{ErrorMsg::MAP_KEY, stray_line},
    Row{ErrorMsg::TAB_IN_INDENTATION, stray_line},
    Row{ErrorMsg::UNKNOWN_ANCHOR, bad_alias},
    Row{ErrorMsg::ALIAS_NOT_FOUND, bad_alias},
    Row{ErrorMsg::ANCHOR_NOT_FOUND, bad_alias},
    Row{ErrorMsg::CHAR_IN_ALIAS, bad_alias},
    Row{ErrorMsg::CHAR_IN_ANCHOR, bad_alias},
    Row{ErrorMsg::MULTIPLE_ANCHORS, bad_alias},
    Row{ErrorMsg::UNKNOWN_TOKEN, bad_start},
    Row{ErrorMsg::INVALID_ESCAPE, bad_escape},
    Row{ErrorMsg::INVALID_HEX, bad_escape},
    Row{ErrorMsg::INVALID_UNICODE, bad_escape},
    Row{ErrorMsg::CHAR_IN_BLOCK, bad_block},
    Row{ErrorMsg::ZERO_INDENT_IN_BLOCK, bad_block},
    Row{ErrorMsg::FLOW_END, stray_bracket},
    Row{ErrorMsg::MULTIPLE_TAGS, bad_tag},
    Row{ErrorMsg::CHAR_IN_TAG_HANDLE, bad_tag},
    Row{ErrorMsg::TAG_WITH_NO_SUFFIX, bad_tag},
    Row{ErrorMsg::END_OF_VERBATIM_TAG, bad_tag},
    Row{ErrorMsg::YAML_DIRECTIVE_ARGS, bad_directive},
    Row{ErrorMsg::YAML_VERSION, bad_directive},
    Row{ErrorMsg::YAML_MAJOR_VERSION, bad_directive},
    Row{ErrorMsg::REPEATED_YAML_DIRECTIVE, bad_directive},
    Row{ErrorMsg::TAG_DIRECTIVE_ARGS, bad_directive},
    Row{ErrorMsg::REPEATED_TAG_DIRECTIVE, bad_directive},
};

}  // namespace

Error explain(const YAML::Exception& exception, Places& places) {
  const std::string_view text = places.chunk().text;
  const std::size_t offset = places.offset(exception.mark);
  const Scene scene{places, text, offset, read_quoting(text, offset)};
  for (const Row& row : rows)
    if (std::string_view(exception.msg).starts_with(row.begins)) return row.say(scene);
  return scene.error(
      "From here on the text is not understood as YAML.",
      "Compare the line and the one above with the other lines: indentation, quotes, brackets, colons.");
}

Error open_quote(Position at) {
  return {at, "A quote is opened here and never closed.",
          "Close it at the end of the text; if the sign belongs to the text, put the whole text in the other "
          "kind of "
          "quotes."};
}

Error no_colon(Position at, std::string_view name) {
  if (name.starts_with('-'))
    return {at, "There is no space after the dash.", "Write the dash, a space and the text."};
  if (const auto colon = tight_colon(name)) {
    at.column += code_points(name.substr(0, *colon));
    return {at, "There is no space after this colon.",
            "Write a space after it: " + std::string(trimmed(name.substr(0, *colon + 1))) + " " +
                std::string(trimmed(name.substr(*colon + 1)))};
  }
  return {at, "There is no colon after " + in_ticks(name) + ".",
          "Write a name, a colon, a space and the value; a line of a list begins with a dash and a space."};
}

std::string in_ticks(std::string_view text) {
  constexpr int longest = 40;
  std::size_t end = 0;
  for (int points = 0; end < text.size(); ++end)
    if ((static_cast<unsigned char>(text[end]) & 0xC0U) != 0x80 && ++points > longest) break;
  return "`" + std::string(text.substr(0, end)) + (end < text.size() ? "...`" : "`");
}

}  // namespace sealworthy::yaml
