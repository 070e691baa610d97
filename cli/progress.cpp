#include "progress.hpp"

#include <fmt/format.h>

#include <cstdio>

#include "terminal.hpp"

namespace sealworthy::cli {

void Progress::start(std::size_t all) {
  all_ = all;
  terminal_ =
      is_terminal(Stream::err) && !is_terminal(Stream::out);  // else the report itself shows the progress
  next_ = Clock::now() + std::chrono::seconds(1);
}

void Progress::one_more() {
  ++done_;
  if (!terminal_ || Clock::now() < next_) return;
  next_ = Clock::now() + std::chrono::milliseconds(200);
  fmt::print(stderr, "\r{} of {} files checked", done_, all_);
  std::fflush(stderr);
  shown_ = true;
}

void Progress::clear() {
  if (shown_) fmt::print(stderr, "\r\033[K");
  shown_ = false;
}

}  // namespace sealworthy::cli
