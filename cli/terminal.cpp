#include "terminal.hpp"

#include <fcntl.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <string>

namespace sealworthy::cli {
namespace {

int descriptor_of(Stream stream) { return stream == Stream::out ? STDOUT_FILENO : STDERR_FILENO; }

}  // namespace

bool is_terminal(Stream stream) { return isatty(descriptor_of(stream)) == 1; }

int terminal_width(Stream stream) {
  constexpr int without = 100;
  winsize size{};
  if (!is_terminal(stream)) return without;
  if (ioctl(descriptor_of(stream), TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return without;
  return size.ws_col;
}

bool use_color(std::string_view choice, bool to_terminal) {
  if (choice == "always") return true;
  if (choice == "never" || !to_terminal) return false;
  const char* no_color = std::getenv("NO_COLOR");
  const char* term = std::getenv("TERM");
  return (no_color == nullptr || *no_color == '\0') && (term == nullptr || std::string_view(term) != "dumb");
}

Output::Output(std::string_view path) {
  if (path.empty() || path == "-") {
    descriptor_ = STDOUT_FILENO;
    return;
  }
  descriptor_ = open(std::string(path).c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666);
  owned_ = descriptor_ >= 0;
}

Output::~Output() {
  if (owned_) close(descriptor_);
}

bool Output::write(std::string_view text) {
  constexpr int quiet_end = 128 + 13;  // what a shell shows for a program that SIGPIPE ended
  while (!text.empty()) {
    const auto n = ::write(descriptor_, text.data(), text.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0 && errno == EPIPE) std::_Exit(quiet_end);
    if (n < 0) return false;
    text.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

}  // namespace sealworthy::cli
