#include "line_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <sealworthy/checker.hpp>
#include <system_error>
#include <utility>

namespace sealworthy::cli {
namespace {

constexpr std::size_t piece_bytes = std::size_t{64} << 10;

/// What reading all of a file may take at once: one byte more than it has, so that its end is seen at once.
std::size_t expected_bytes(int descriptor) {
  struct stat status {};
  const bool file = fstat(descriptor, &status) == 0 && S_ISREG(status.st_mode);
  return file && status.st_size >= 0 ? static_cast<std::size_t>(status.st_size) + 1 : piece_bytes;
}

}  // namespace

std::variant<std::unique_ptr<LineFile>, Trouble> LineFile::open(const std::string& path) {
  const int descriptor = path == "-" ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (descriptor < 0) return Trouble{path, "can't be opened: " + std::generic_category().message(errno)};
  return std::unique_ptr<LineFile>(new LineFile(path, descriptor));
}

LineFile::~LineFile() {
  if (descriptor_ != STDIN_FILENO) close(descriptor_);
}

bool LineFile::read_more(std::size_t most) {
  if (ended_) return false;
  const auto old = buffer_.size();
  buffer_.resize(old + most);
  ssize_t n = 0;
  do {
    n = read(descriptor_, buffer_.data() + old, most);
  } while (n < 0 && errno == EINTR);
  if (n < 0) error_ = errno;
  ended_ = n <= 0;
  buffer_.resize(old + static_cast<std::size_t>(std::max<ssize_t>(n, 0)));
  return !ended_;
}

std::string_view LineFile::beginning() {
  const auto enough = [this] {
    constexpr std::string_view blanks = " \t\r\n";
    if (buffer_.size() > most_line_bytes) return true;
    const auto first = buffer_.find_first_not_of(blanks);
    const auto end = first == std::string::npos ? first : buffer_.find('\n', first);
    return end != std::string::npos && buffer_.find_first_not_of(blanks, end) != std::string::npos;
  };
  while (!enough() && read_more(piece_bytes)) {
  }
  return buffer_;
}

/// Keeps what is enough for telling that the line is too long, and goes on to its end.
void LineFile::drop_rest_of_line() {
  std::string kept = buffer_.substr(0, most_line_bytes + 1);
  buffer_.clear();
  while (read_more(piece_bytes)) {
    const auto end = buffer_.find('\n');
    if (end != std::string::npos) {
      buffer_.erase(0, end);
      break;
    }
    buffer_.clear();
  }
  buffer_.insert(0, kept);
}

Lines LineFile::next() {
  std::size_t searched = 0;
  auto end = buffer_.rfind('\n');
  while (end == std::string::npos) {
    searched = buffer_.size();
    if (searched > most_line_bytes) {
      drop_rest_of_line();
      end = buffer_.rfind('\n');
      break;
    }
    if (!read_more(piece_bytes)) break;
    const auto found = std::string_view(buffer_).substr(searched).rfind('\n');
    if (found != std::string_view::npos) end = searched + found;
  }
  Lines lines;
  lines.first = line_;
  if (end == std::string::npos) {
    lines.text = std::exchange(buffer_, {});
  } else {
    lines.text = buffer_.substr(0, end + 1);
    buffer_.erase(0, end + 1);
  }
  line_ += static_cast<int>(std::count(lines.text.begin(), lines.text.end(), '\n'));
  lines.last = ended_ && buffer_.empty();
  if (lines.last && error_ != 0)
    lines.trouble = Trouble{path_, "can't be read: " + std::generic_category().message(error_)};
  return lines;
}

std::variant<std::string, Trouble> LineFile::rest(std::size_t limit) {
  const auto most = std::min(expected_bytes(descriptor_), limit + 1);
  while (buffer_.size() <= limit && read_more(most)) {
  }
  if (error_ != 0) return Trouble{path_, "can't be read: " + std::generic_category().message(error_)};
  if (buffer_.size() > limit) buffer_.resize(limit + 1);
  return std::exchange(buffer_, {});
}

}  // namespace sealworthy::cli
