#pragma once

/// --cache DIR: the reports of files that were checked before, found by what decides them: the bytes of the
/// file, the program with its rules, the kitchen, the options, and the day where a date stands in the card or
/// the kitchen (nothing else can depend on it).
///
/// The folder holds packs (pack_file.hpp). A run adds one with what it had to check; when there are many, or
/// they are large together, they become one, from which the entries that went unused the longest are left
/// out. Runs may share the folder at the same time: packs are never changed, and the loss of one costs time
/// only. Damaged or foreign files are passed over.

#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <sealworthy/finding.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "pack_file.hpp"

namespace sealworthy::cli {

class ReportCache {
 public:
  static constexpr std::size_t most_bytes = std::size_t{256} << 20;
  static constexpr std::size_t most_packs = 8;

  /// `common`: what is the same for all files of the run (options, texts of --rules); `today`: ISO date.
  /// `most` bounds the folder, in bytes.
  ReportCache(std::string folder, std::string_view common, std::string today, std::size_t most = most_bytes);

  /// `reader`: by what the file's text is read, the end of its name. `kitchen`: path of the kitchen file, or
  /// empty.
  CacheKey key(std::string_view text, std::string_view reader, const std::string& kitchen);
  /// Safe from several threads, as is add().
  std::optional<std::vector<RecipeReport>> find(const CacheKey& key, std::string_view path);
  void add(const CacheKey& key, const std::vector<RecipeReport>& reports);
  /// Writes what was added. False if it could not.
  bool finish();

 private:
  struct KitchenText {
    std::uint64_t hash = 0;
    bool dated = false;
  };
  KitchenText kitchen_text(const std::string& path);
  bool flush();
  bool merge();
  [[nodiscard]] std::string new_name() const;

  std::string folder_;
  std::uint64_t common_ = 0;
  std::string today_;
  std::size_t most_;
  std::vector<std::unique_ptr<PackFile>> packs_;  // newest first
  std::mutex mutex_;
  std::map<std::string, KitchenText> kitchens_;
  PackFile::Entries added_;
  std::size_t added_bytes_ = 0;
  bool good_ = true;
};

/// What tells this build of the program, with the rules in it, from any other.
std::string program_identity();

}  // namespace sealworthy::cli
