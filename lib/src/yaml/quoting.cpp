#include "yaml/quoting.hpp"

#include <algorithm>
#include <vector>

namespace sealworthy::yaml {
namespace {

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

class Reader {
 public:
  Reader(std::string_view text, std::size_t offset) : text_(text), offset_(offset) {}

  Quoting read() {
    while (at_ < text_.size()) step();
    if (!brackets_.empty()) found_.open_bracket = brackets_.back();
    return found_;
  }

 private:
  [[nodiscard]] bool blank_next() const { return at_ + 1 >= text_.size() || is_blank(text_[at_ + 1]); }
  [[nodiscard]] bool blank_before() const { return at_ == 0 || is_blank(text_[at_ - 1]); }
  [[nodiscard]] std::size_t line_end() const { return std::min(text_.find('\n', at_), text_.size()); }

  void step() {
    const char c = text_[at_];
    const bool in_brackets = !brackets_.empty();
    if (c == '#' && blank_before()) {
      at_ = line_end();
      return;
    }
    if (c == '\n' || (c == ':' && blank_next()) || (c == ',' && in_brackets)) {
      value_may_start_ = true;
    } else if (in_brackets && (c == ']' || c == '}')) {
      brackets_.pop_back();
      value_may_start_ = false;
    } else if (value_may_start_ && start_of_value(c)) {
      return;
    } else if (!is_blank(c)) {
      value_may_start_ = value_may_start_ && c == '-' && blank_next();
    }
    ++at_;
  }

  bool start_of_value(char c) {
    if (c == '"' || c == '\'') return skip_quoted(), true;
    if ((c == '|' || c == '>') && brackets_.empty()) return skip_block(), true;
    if (c == '[' || c == '{') brackets_.push_back(at_), ++at_;
    return c == '[' || c == '{';
  }

  void skip_quoted() {
    const std::size_t begin = at_;
    value_may_start_ = false;
    const auto end = end_of_quoted(text_, begin);
    at_ = end.value_or(text_.size());
    if (!end)
      found_.open_quote = begin;
    else if (*end <= offset_)
      found_.last_before = {begin, *end};
  }

  // Lines that are indented more than the one with the `|` or `>`.
  void skip_block() {
    const std::size_t line = at_ == 0 ? 0 : text_.rfind('\n', at_ - 1) + 1;
    const std::size_t indent = std::min(text_.find_first_not_of(' ', line), at_) - line;
    at_ = line_end();
    while (at_ < text_.size()) {
      const std::size_t next = at_ + 1;
      const std::size_t first = std::min(text_.find_first_not_of(' ', next), text_.size());
      const bool empty = first >= text_.size() || text_[first] == '\n' || text_[first] == '\r';
      if (!empty && first - next <= indent) return;
      at_ = std::min(text_.find('\n', next), text_.size());
    }
  }

  std::string_view text_;
  std::size_t offset_;
  std::size_t at_ = 0;
  bool value_may_start_ = true;
  std::vector<std::size_t> brackets_;
  Quoting found_;
};

}  // namespace

std::optional<std::size_t> end_of_quoted(std::string_view text, std::size_t begin) {
  const char quote = text[begin];
  for (std::size_t at = begin + 1; at < text.size(); ++at) {
    if (quote == '"' && text[at] == '\\') {
      ++at;
    } else if (text[at] == quote) {
      if (quote == '"' || at + 1 >= text.size() || text[at + 1] != '\'') return at + 1;
      ++at;
    }
  }
  return std::nullopt;
}

Quoting read_quoting(std::string_view text, std::size_t offset) { return Reader(text, offset).read(); }

}  // namespace sealworthy::yaml
