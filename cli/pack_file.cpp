#include "pack_file.hpp"

#define XXH_INLINE_ALL
#include <fcntl.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>
#include <xxhash.h>

#include <algorithm>
#include <cstring>
#include <filesystem>
#include <system_error>

#include "terminal.hpp"

namespace sealworthy::cli {
namespace {

constexpr std::array<char, 8> magic{'S', 'W', 'P', 'A', 'C', 'K', '0', '1'};

template <class T>
void append(std::string& to, const T& value) {
  to.append(reinterpret_cast<const char*>(&value), sizeof value);
}

}  // namespace

std::uint64_t PackFile::check_of(const CacheKey& key, std::string_view bytes) {
  return XXH3_64bits_withSeed(bytes.data(), bytes.size(), key[0]);
}

std::unique_ptr<PackFile> PackFile::open(const std::string& path) {
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return nullptr;
  struct stat status {};
  const bool sized = fstat(file, &status) == 0 && status.st_size >= static_cast<off_t>(sizeof(Header));
  const auto size = sized ? static_cast<std::size_t>(status.st_size) : 0;
  void* map = sized ? mmap(nullptr, size, PROT_READ, MAP_SHARED, file, 0) : MAP_FAILED;
  close(file);
  if (map == MAP_FAILED) return nullptr;

  std::unique_ptr<PackFile> pack(new PackFile);
  pack->path_ = path;
  pack->map_ = static_cast<const char*>(map);
  pack->size_ = size;
  Header header{};
  std::memcpy(&header, pack->map_, sizeof header);
  const auto room = size - sizeof header;
  if (header.magic != magic || header.count > room / sizeof(Slot)) return nullptr;
  const auto index_size = static_cast<std::size_t>(header.count) * sizeof(Slot);
  if (room - index_size != header.data_size) return nullptr;
  pack->index_ = reinterpret_cast<const Slot*>(pack->map_ + sizeof header);
  pack->count_ = static_cast<std::size_t>(header.count);
  pack->data_ = {pack->map_ + sizeof header + index_size, static_cast<std::size_t>(header.data_size)};
  pack->used_ = std::make_unique<std::atomic<unsigned char>[]>(pack->count_);
  return pack;
}

PackFile::~PackFile() {
  if (map_ != nullptr) munmap(const_cast<char*>(map_), size_);
}

std::string_view PackFile::data_of(const Slot& slot) const {
  if (slot.offset > data_.size() || slot.size > data_.size() - slot.offset) return {};
  return data_.substr(static_cast<std::size_t>(slot.offset), static_cast<std::size_t>(slot.size));
}

std::optional<std::string_view> PackFile::find(const CacheKey& key) {
  const auto* end = index_ + count_;
  const auto* slot =
      std::lower_bound(index_, end, key, [](const Slot& a, const CacheKey& b) { return a.key < b; });
  if (slot == end || slot->key != key) return std::nullopt;
  const auto bytes = data_of(*slot);
  if (bytes.empty() || check_of(key, bytes) != slot->check) return std::nullopt;
  used_[static_cast<std::size_t>(slot - index_)].store(1, std::memory_order_relaxed);
  return bytes;
}

bool PackFile::write(const std::string& path, const Entries& entries) {
  std::string head;
  std::size_t data_size = 0;
  for (const auto& [key, bytes] : entries) data_size += bytes.size();
  append(head, Header{magic, entries.size(), data_size});
  std::uint64_t offset = 0;
  for (const auto& [key, bytes] : entries) {
    append(head, Slot{key, offset, bytes.size(), check_of(key, bytes)});
    offset += bytes.size();
  }
  const auto unfinished = path + ".tmp";
  bool good = false;
  {
    Output out(unfinished);
    good = out.ok() && out.write(head);
    std::string data;
    data.reserve(data_size);
    for (const auto& [key, bytes] : entries) data += bytes;
    good = good && out.write(data);
  }
  std::error_code error;
  if (good) std::filesystem::rename(unfinished, path, error);
  if (good && !error) return true;
  std::filesystem::remove(unfinished, error);
  return false;
}

}  // namespace sealworthy::cli
