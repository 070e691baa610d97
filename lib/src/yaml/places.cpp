#include "yaml/places.hpp"

#include <algorithm>
#include <iterator>

namespace sealworthy::yaml {

std::size_t Places::offset(const YAML::Mark& mark) const {
  const std::size_t size = chunk_->text.size();
  if (mark.pos < 0) return size;
  const auto later = std::partition_point(left_out_.begin(), left_out_.end(),
                                          [&](const StandIn& s) { return s.line < mark.line; });
  const std::size_t dropped = later == left_out_.begin() ? 0 : std::prev(later)->dropped;
  return std::min(static_cast<std::size_t>(mark.pos) + dropped, size);
}

Position Places::at(std::size_t offset) {
  const std::string_view text = chunk_->text;
  offset = std::min(offset, text.size());
  if (offset < seen_) {  // a look back stays near: a key before its value
    const std::size_t start = line_begin(offset);
    const auto newlines = std::count(text.begin() + static_cast<std::ptrdiff_t>(start),
                                     text.begin() + static_cast<std::ptrdiff_t>(seen_), '\n');
    seen_at_ = {seen_at_.line - static_cast<int>(newlines), 1};
    seen_ = start;
  }
  for (; seen_ < offset; ++seen_) {
    const auto c = static_cast<unsigned char>(text[seen_]);
    if (c == '\n')
      seen_at_ = {seen_at_.line + 1, 1};
    else if ((c & 0xC0U) != 0x80)
      ++seen_at_.column;
  }
  return {chunk_->line + seen_at_.line, seen_at_.column};
}

std::size_t Places::line_begin(std::size_t offset) const {
  return offset == 0 ? 0 : chunk_->text.rfind('\n', offset - 1) + 1;  // npos + 1 is 0
}

std::size_t Places::line_end(std::size_t offset) const {
  std::size_t end = std::min(chunk_->text.find('\n', offset), chunk_->text.size());
  if (end > offset && chunk_->text[end - 1] == '\r') --end;
  return end;
}

std::string_view Places::line_at(std::size_t offset) const {
  const std::size_t begin = line_begin(offset);
  return chunk_->text.substr(begin, line_end(offset) - begin);
}

}  // namespace sealworthy::yaml
