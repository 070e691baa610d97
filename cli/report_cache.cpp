#include "report_cache.hpp"

#define XXH_INLINE_ALL
#include <fmt/format.h>
#include <unistd.h>
#include <xxhash.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <sealworthy/stored.hpp>
#include <system_error>

#include "paths.hpp"

namespace sealworthy::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t flush_bytes = std::size_t{32} << 20;  // bounds memory in a run over very many files
constexpr std::size_t kitchen_limit = 1 << 20;

std::uint64_t hash_of(std::string_view text, std::uint64_t seed = 0) {
  return XXH3_64bits_withSeed(text.data(), text.size(), seed);
}

bool digit(char c) { return c >= '0' && c <= '9'; }

/// Does a date like 2026-08-31 stand in the text?
bool has_date(std::string_view text) {
  constexpr std::size_t first_dash = 4;
  constexpr std::size_t between = 3;
  for (auto at = text.find('-'); at != std::string_view::npos; at = text.find('-', at + 1)) {
    if (at < first_dash || at + between >= text.size()) continue;
    if (digit(text[at - 1]) && digit(text[at - 4]) && digit(text[at + 1]) && text[at + between] == '-')
      return true;
  }
  return false;
}

}  // namespace

ReportCache::ReportCache(std::string folder, std::string_view common, std::string today, std::size_t most)
    : folder_(std::move(folder)),
      common_(hash_of(common, hash_of(program_identity()))),
      today_(std::move(today)),
      most_(most) {
  std::error_code error;
  fs::create_directories(folder_, error);
  std::vector<std::string> names;
  for (auto it = fs::directory_iterator(folder_, error); !error && it != fs::directory_iterator();
       it.increment(error))
    if (it->path().extension() == ".pack") names.push_back(it->path().string());
  std::sort(names.rbegin(), names.rend());
  for (const auto& name : names)
    if (auto pack = PackFile::open(name)) packs_.push_back(std::move(pack));
}

ReportCache::KitchenText ReportCache::kitchen_text(const std::string& path) {
  if (path.empty()) return {};
  const std::scoped_lock lock(mutex_);
  if (const auto it = kitchens_.find(path); it != kitchens_.end()) return it->second;
  KitchenText text;
  const auto read = read_file(path, kitchen_limit);
  if (const auto* bytes = std::get_if<std::string>(&read))
    text = {hash_of(*bytes, hash_of(path)), has_date(*bytes)};
  return kitchens_[path] = text;
}

CacheKey ReportCache::key(std::string_view text, std::string_view reader, const std::string& kitchen) {
  const auto of_kitchen = kitchen_text(kitchen);
  auto context = hash_of(reader, common_) ^ of_kitchen.hash;
  if (of_kitchen.dated || has_date(text)) context = hash_of(today_, context);
  const auto hash = XXH3_128bits_withSeed(text.data(), text.size(), context);
  return {hash.high64, hash.low64};
}

std::optional<std::vector<RecipeReport>> ReportCache::find(const CacheKey& key, std::string_view path) {
  for (const auto& pack : packs_)
    if (const auto bytes = pack->find(key))
      if (auto reports = restore(*bytes, path)) return reports;
  return std::nullopt;
}

void ReportCache::add(const CacheKey& key, const std::vector<RecipeReport>& reports) {
  auto bytes = store(reports);
  const std::scoped_lock lock(mutex_);
  added_bytes_ += bytes.size();
  added_[key] = std::move(bytes);
  if (added_bytes_ >= flush_bytes) good_ = flush() && good_;
}

std::string ReportCache::new_name() const {
  const auto now = std::chrono::system_clock::now().time_since_epoch();
  return fmt::format("{}/{:020}-{}.pack", folder_,
                     std::chrono::duration_cast<std::chrono::nanoseconds>(now).count(), getpid());
}

bool ReportCache::flush() {
  const auto name = new_name();
  const bool written = PackFile::write(name, added_);
  added_.clear();
  added_bytes_ = 0;
  if (!written) return false;
  if (auto pack = PackFile::open(name)) packs_.insert(packs_.begin(), std::move(pack));
  return true;
}

/// One pack of all, the entries that this run used first, then the newest, as many as half of the room takes.
bool ReportCache::merge() {
  PackFile::Entries kept;
  std::size_t bytes = 0;
  for (const bool used : {true, false})
    for (const auto& pack : packs_)
      pack->each(used, [&](const CacheKey& key, std::string_view data) {
        if (data.empty() || bytes + data.size() > most_ / 2) return;
        if (kept.emplace(key, data).second) bytes += data.size();
      });
  if (!PackFile::write(new_name(), kept)) return false;
  std::error_code ignored;
  for (const auto& pack : packs_) fs::remove(pack->path(), ignored);
  packs_.clear();
  return true;
}

bool ReportCache::finish() {
  const std::scoped_lock lock(mutex_);
  if (!added_.empty()) good_ = flush() && good_;
  std::size_t bytes = 0;
  for (const auto& pack : packs_) bytes += pack->bytes();
  if (packs_.size() > most_packs || bytes > most_) good_ = merge() && good_;

  // What runs that were killed left behind; an hour old, so that it is nobody's work.
  std::error_code error;
  for (auto it = fs::directory_iterator(folder_, error); !error && it != fs::directory_iterator();
       it.increment(error)) {
    std::error_code ignored;
    if (it->path().extension() == ".tmp" &&
        fs::file_time_type::clock::now() - it->last_write_time(ignored) > std::chrono::hours(1))
      fs::remove(it->path(), ignored);
  }
  return good_;
}

}  // namespace sealworthy::cli
