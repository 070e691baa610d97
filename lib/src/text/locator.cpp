#include "text/locator.hpp"

#include <algorithm>

namespace sealworthy::text {

Position Locator::at(std::size_t offset) {
  offset = std::min(offset, text_.size());
  if (offset < seen_) {
    seen_ = 0;
    place_ = start_;
  }
  for (; seen_ < offset; ++seen_) {
    const char c = text_[seen_];
    const bool return_alone = c == '\r' && (seen_ + 1 == text_.size() || text_[seen_ + 1] != '\n');
    if (c == '\n' || return_alone) {
      ++place_.line;
      place_.column = 1;
    } else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80) {
      ++place_.column;
    }
  }
  return place_;
}

}  // namespace sealworthy::text
