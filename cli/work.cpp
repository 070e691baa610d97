#include "work.hpp"

#include <sealworthy/checker.hpp>
#include <utility>

namespace sealworthy::cli {
namespace {

constexpr std::size_t batch = 16;

/// Only the text tells of what kind such a file is.
bool told_by_text(const std::string& path) {
  const auto mark = path.find_last_of("./");
  return mark == std::string::npos || path[mark] == '/';
}

bool to_open(const std::string& path) { return told_by_text(path) || recipe_a_line(path, {}); }

}  // namespace

bool WorkQueue::one_piece() const { return files_.empty() || (files_.size() == 1 && !to_open(files_[0])); }

Work WorkQueue::begin(std::span<const std::string> file) {
  auto opened = LineFile::open(file.front());
  if (auto* trouble = std::get_if<Trouble>(&opened)) return {file, {}, std::move(*trouble)};
  auto& lines = std::get<std::unique_ptr<LineFile>>(opened);
  const auto beginning = told_by_text(file.front()) ? lines->beginning() : std::string_view();
  if (!recipe_a_line(file.front(), beginning))
    return {file, {}, lines->rest(most_bytes(file.front(), beginning))};
  current_ = file;
  lines_ = std::move(lines);
  return {file, lines_->next(), {}};
}

std::optional<Work> WorkQueue::next() {
  std::optional<Work> work;
  if (lines_) {
    work = Work{current_, lines_->next(), {}};
  } else if (files_.empty()) {
    return work;
  } else if (to_open(files_.front())) {
    work = begin(files_.first(1));
    files_ = files_.subspan(1);
  } else {
    std::size_t n = 1;
    while (n < batch && n < files_.size() && !to_open(files_[n])) ++n;
    work = Work{files_.first(n), {}, {}};
    files_ = files_.subspan(n);
  }
  if (work->lines && work->lines->last) lines_.reset();
  return work;
}

}  // namespace sealworthy::cli
