#include <elf.h>
#include <link.h>
#include <sys/stat.h>

#include <cstring>
#include <string>

#include "report_cache.hpp"

namespace sealworthy::cli {
namespace {

/// The build id of the main program: a hash over all it holds, which the linker writes into a note.
int read_build_id(dl_phdr_info* info, std::size_t /*size*/, void* data) {
  auto& id = *static_cast<std::string*>(data);
  constexpr std::size_t alignment = 4;
  const auto padded = [](std::size_t n) { return (n + alignment - 1) / alignment * alignment; };
  for (int i = 0; i < info->dlpi_phnum; ++i) {
    const auto& header = info->dlpi_phdr[i];
    if (header.p_type != PT_NOTE) continue;
    // The loader tells addresses as integers.  NOLINTNEXTLINE(performance-no-int-to-ptr)
    const auto* at = reinterpret_cast<const char*>(info->dlpi_addr + header.p_vaddr);
    auto rest = static_cast<std::size_t>(header.p_memsz);
    while (rest >= sizeof(ElfW(Nhdr))) {
      ElfW(Nhdr) note{};
      std::memcpy(&note, at, sizeof note);
      const auto name = sizeof note;
      const auto text = name + padded(note.n_namesz);
      const auto next = text + padded(note.n_descsz);
      if (next > rest) break;
      if (note.n_type == NT_GNU_BUILD_ID && note.n_namesz == 4 && std::memcmp(at + name, "GNU", 4) == 0)
        id.assign(at + text, note.n_descsz);
      at += next;
      rest -= next;
    }
  }
  return 1;  // the main program comes first, and is the only one wanted
}

}  // namespace

std::string program_identity() {
  std::string id;
  dl_iterate_phdr(read_build_id, &id);
  if (!id.empty()) return id;
  struct stat status {};
  if (stat("/proc/self/exe", &status) != 0) return {};
  return std::to_string(status.st_size) + " " + std::to_string(status.st_mtim.tv_sec) + " " +
         std::to_string(status.st_mtim.tv_nsec) + " " + std::to_string(status.st_ino);
}

}  // namespace sealworthy::cli
