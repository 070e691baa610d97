// Where the parser is content but a cook would not be, and the places of values that are not there.

#include <algorithm>
#include <unordered_map>

#include "yaml/builder.hpp"
#include "yaml/explain.hpp"
#include "yaml/quoting.hpp"

namespace sealworthy::yaml {
namespace {

// Above so many keys a map is checked for repeated ones with a hash table.
constexpr std::size_t short_map = 24;

/// Whether the word `null` or a `~` is written at this byte.
bool null_written(std::string_view text) {
  if (text.starts_with('~')) return true;
  const std::string_view word = text.substr(0, 4);
  if (word != "null" && word != "Null" && word != "NULL") return false;
  return text.size() == 4 || std::string_view(" \t\r\n,]}").find(text[4]) != std::string_view::npos;
}

}  // namespace

void Builder::refuse_rest() {
  const std::size_t line = places_->chunk().text.rfind("\n%") + 1;  // npos + 1 is 0
  throw Stop{{places_->at(line), "A line that begins with `%` is an instruction to YAML readers.",
              "Put the text in quotes, or delete the line."}};
}

void Builder::refuse_tab_before(const YAML::Mark& mark) {
  if (in_flow()) return;
  const std::size_t offset = places_->offset(mark);
  const std::size_t begin = places_->line_begin(offset);
  const std::string_view before = places_->chunk().text.substr(begin, offset - begin);
  if (before.find_first_not_of(" \t") != std::string_view::npos) return;
  const std::size_t tab = before.find('\t');
  if (tab == std::string_view::npos) return;
  throw Stop{{places_->at(begin + tab), "This line is indented with a tab.",
              "Indent with spaces only, two for each level."}};
}

void Builder::refuse_cut_by_hash(const YAML::Mark& mark) {
  const bool value = frames_.empty() || !frames_.back().map || frames_.back().has_key;
  if (in_flow() || !value) return;
  const std::size_t offset = places_->offset(mark);
  const std::string_view line = places_->chunk().text.substr(offset, places_->line_end(offset) - offset);
  const std::size_t cut = line.find(" #");
  if (cut == std::string_view::npos || cut + 2 >= line.size()) return;
  const char next = line[cut + 2];
  if (next < '0' || next > '9') return;
  throw Stop{{places_->at(offset + cut + 1),
              "A `#` after a space begins a comment, so the text would end before " +
                  in_ticks(line.substr(cut + 1)) + ".",
              "Put the whole text in quotes; if it is a comment, leave a space after the `#`."}};
}

/// `!!str` and the like are ignored; what a cook writes after a `!` would be lost.
void Builder::refuse_tag(const YAML::Mark& mark, const std::string& tag) {
  const std::size_t offset = places_->offset(mark);
  const std::string_view text = places_->chunk().text;
  const bool local = tag.size() > 1 && tag.front() == '!';
  if (local || (tag == "!" && offset < text.size() && text[offset] == '!'))
    throw Stop{{places_->of(mark), "A text that begins with `!` means something else in YAML.",
                "Put the whole text in quotes."}};
}

/// A plain text may go on over indented lines; one of them that begins with a dash was meant for the list.
void Builder::refuse_dash_in_text(const YAML::Mark& mark, std::size_t length) {
  const std::size_t offset = places_->offset(mark);
  const std::string_view text = places_->chunk().text;
  std::size_t end = places_->line_end(offset);
  if (length <= end - offset) return;
  std::size_t lines_end = std::min(offset + length, text.size());  // the text is at least as long in the file
  for (std::size_t next = text.find('\n', end); next < lines_end; next = text.find('\n', next + 1)) {
    const std::size_t first = text.find_first_not_of(' ', next + 1);
    if (first == std::string_view::npos || !text.substr(first).starts_with("- ")) continue;
    throw Stop{
        {places_->at(first),
         "This line begins with a dash, but is indented as if it went on with the line above.",
         "Begin it in the same column as the other dashes; if it goes on, put the whole text in quotes."}};
  }
}

/// The parser takes the end of the text for the end of a quote.
void Builder::refuse_open_quote() {
  if (!last_quoted_) return;
  const std::string_view text = places_->chunk().text;
  std::size_t begin = places_->offset(*last_quoted_);
  while (begin < text.size() && (text[begin] == '&' || text[begin] == '!'))  // an anchor or a tag comes first
    begin = text.find_first_not_of(" \t\r\n", std::min(text.find_first_of(" \t\r\n", begin), text.size()));
  if (begin >= text.size() || (text[begin] != '"' && text[begin] != '\'')) return;
  if (end_of_quoted(text, begin)) return;
  throw Stop{open_quote(places_->at(begin))};
}

void Builder::refuse_repeated_keys(std::span<const Entry> entries) const {
  const auto refuse = [](const Entry& first, const Entry& again) {
    throw Stop{{again.key_at,
                in_ticks(again.key) + " is given twice; the first is on line " +
                    std::to_string(first.key_at.line) + ".",
                "Keep the one that is meant."}};
  };
  if (entries.size() <= short_map) {
    for (std::size_t i = 1; i < entries.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        if (entries[i].key == entries[j].key) refuse(entries[j], entries[i]);
    return;
  }
  std::unordered_map<std::string_view, const Entry*> seen(entries.size());
  for (const Entry& entry : entries) {
    const auto [there, is_new] = seen.try_emplace(entry.key, &entry);
    if (!is_new) refuse(*there->second, entry);
  }
}

/// The parser marks an empty value with the token after it, often lines below. A cook looks for it after the
/// colon or the dash.
Position Builder::null_place(const YAML::Mark& mark) {
  const std::size_t offset = places_->offset(mark);
  if (frames_.empty() || in_flow()) return places_->of(mark);
  const Frame& frame = frames_.back();
  if (frame.map && frame.has_key) {
    const bool on_line_of_key = offset > frame.key_at && offset < places_->line_end(frame.key_at);
    return on_line_of_key ? places_->of(mark) : null_after_key(frame);
  }
  if (frame.map || null_written(places_->chunk().text.substr(offset))) return places_->of(mark);
  return null_after_dash(offset).value_or(places_->of(mark));
}

Position Builder::null_after_key(const Frame& frame) {
  const std::string_view text = places_->chunk().text;
  const std::string_view key = entries_.back().key;
  const std::size_t end = places_->line_end(frame.key_at);
  const std::size_t colon = text.find(':', frame.key_at + key.size());
  const std::size_t begin = places_->line_begin(frame.key_at);
  const bool marked = text.substr(begin, frame.key_at - begin).find('?') != std::string_view::npos;
  if (colon >= end && !marked)  // the parser takes a last line without a colon for a name
    throw Stop{no_colon(entries_.back().key_at, key)};
  Position place = places_->at(std::min(colon, end));
  place.column += 2;
  return place;
}

/// Back over blank lines and comments to the dash of an empty line of a list.
std::optional<Position> Builder::null_after_dash(std::size_t offset) {
  const std::string_view text = places_->chunk().text;
  for (std::size_t end = std::min(offset, text.size()); end > 0;) {
    const std::size_t begin = places_->line_begin(end);
    std::string_view line = text.substr(begin, end - begin);
    line = line.substr(0, line.find('#'));
    const std::size_t last = line.find_last_not_of(" \t\r\n");
    if (last != std::string_view::npos) {
      if (line[last] != '-') return std::nullopt;
      Position place = places_->at(begin + last);
      place.column += 2;
      return place;
    }
    end = begin == 0 ? 0 : begin - 1;
  }
  return std::nullopt;
}

}  // namespace sealworthy::yaml
