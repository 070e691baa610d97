#pragma once

/// A line on the terminal for runs that last over a second.

#include <chrono>
#include <cstddef>

namespace sealworthy::cli {

class Progress {
 public:
  void start(std::size_t all);
  void one_more();
  void clear();  ///< before something else is written to the terminal
  void stop() { clear(); }

 private:
  using Clock = std::chrono::steady_clock;
  std::size_t all_ = 0;
  std::size_t done_ = 0;
  bool terminal_ = false;
  bool shown_ = false;
  Clock::time_point next_;
};

}  // namespace sealworthy::cli
