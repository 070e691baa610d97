#pragma once

/// One file of the cache: entries by key, found without reading the file. Written whole and renamed, never
/// changed, so that runs at the same time can share it.

#include <array>
#include <atomic>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace sealworthy::cli {

using CacheKey = std::array<std::uint64_t, 2>;

class PackFile {
 public:
  /// nullptr for a file that is none, or is cut off.
  static std::unique_ptr<PackFile> open(const std::string& path);
  PackFile(const PackFile&) = delete;
  PackFile& operator=(const PackFile&) = delete;
  ~PackFile();

  /// The bytes of an entry, as long as this lives; nullopt where there is none or it is damaged. Safe from
  /// several threads. Cost: a binary search and a checksum.
  std::optional<std::string_view> find(const CacheKey& key);
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::size_t bytes() const { return size_; }

  /// Calls take(key, bytes) for entries that find() gave (`used`) or for the others.
  template <class Take>
  void each(bool used, Take take) const {
    for (std::size_t i = 0; i < count_; ++i)
      if ((used_[i].load(std::memory_order_relaxed) != 0) == used) take(index_[i].key, data_of(index_[i]));
  }

  using Entries = std::map<CacheKey, std::string>;
  /// False if it could not be written.
  static bool write(const std::string& path, const Entries& entries);

 private:
  struct Header {
    std::array<char, 8> magic;
    std::uint64_t count;
    std::uint64_t data_size;
  };
  struct Slot {
    CacheKey key;
    std::uint64_t offset;
    std::uint64_t size;
    std::uint64_t check;
  };
  PackFile() = default;
  [[nodiscard]] std::string_view data_of(const Slot& slot) const;
  static std::uint64_t check_of(const CacheKey& key, std::string_view bytes);

  std::string path_;
  const char* map_ = nullptr;
  std::size_t size_ = 0;
  const Slot* index_ = nullptr;
  std::size_t count_ = 0;
  std::string_view data_;
  std::unique_ptr<std::atomic<unsigned char>[]> used_;
};

}  // namespace sealworthy::cli
