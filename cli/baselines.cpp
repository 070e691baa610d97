#include "baselines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <system_error>

#include "commands.hpp"
#include "paths.hpp"
#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

constexpr std::size_t baseline_limit = std::size_t{1} << 30;
constexpr std::size_t most_told = 10;

/// Whole or not at all.
bool write_file(const std::string& path, const std::string& text) {
  const auto unfinished = path + ".tmp";
  bool good = false;
  {
    Output out(unfinished);
    good = out.ok() && out.write(text);
  }
  std::error_code error;
  if (good) std::filesystem::rename(unfinished, path, error);
  if (good && !error) return true;
  std::filesystem::remove(unfinished, error);
  return false;
}

}  // namespace

bool Baselines::open(const std::string& known_file, const std::string& new_file) {
  known_file_ = known_file;
  new_file_ = new_file;
  if (known_file.empty()) return true;
  const auto text = read_file(known_file, baseline_limit);
  if (const auto* trouble = std::get_if<Trouble>(&text)) {
    tell({known_file, {}, trouble->message, "a baseline is written by --write-baseline"});
    return false;
  }
  auto read = Baseline::read(known_file, std::get<std::string>(text));
  if (const auto* error = std::get_if<InputError>(&read)) {
    tell(*error);
    return false;
  }
  known_ = std::get<Baseline>(std::move(read));
  return true;
}

void Baselines::mark(RecipeReport& report) {
  if (known_) known_->mark(report);
  if (!new_file_.empty()) new_.add(report);
}

void Baselines::tell_stale() const {
  std::set<std::string> gone;
  std::error_code error;
  for (const auto& path : known_->paths())
    if (!std::filesystem::exists(path, error)) gone.insert(path);
  const auto stale = known_->stale(gone);
  if (stale.empty()) return;
  std::size_t all = 0;
  for (const auto& entry : stale) all += entry.count;
  auto text = fmt::format("{} {} of this baseline no longer {}; write it anew with --write-baseline", all,
                          all == 1 ? "finding" : "findings", all == 1 ? "occurs" : "occur");
  for (std::size_t i = 0; i < std::min(stale.size(), most_told); ++i)
    text += fmt::format("\n  {}: {} ({})", stale[i].path, stale[i].rule, stale[i].title);
  if (stale.size() > most_told) text += fmt::format("\n  and {} more", stale.size() - most_told);
  tell({known_file_, {}, text, {}});
}

bool Baselines::finish() {
  if (known_) tell_stale();
  if (new_file_.empty() || write_file(new_file_, new_.text())) return true;
  tell({new_file_, {}, "this file can't be written", {}});
  return false;
}

}  // namespace sealworthy::cli
