#pragma once

/// A trie over word ids: names and phrases are found in one pass over a line.

#include <cstdint>
#include <vector>

#include "foods/lexicon.hpp"

namespace sealworthy::foods {

/// Nodes are numbers; 0 is the root. Cost of a step: one probe of a hash table.
class Trie {
 public:
  using Node = std::uint32_t;
  static constexpr Node root = 0;
  static constexpr Node none = 0xFFFFFFFF;

  Trie() : slots_(8192) {}
  [[nodiscard]] Node child(Node node, WordId word) const {
    const std::uint64_t key = key_of(node, word);
    for (std::size_t slot = slot_of(key);; slot = (slot + 1) & (slots_.size() - 1)) {
      if (slots_[slot].key == key) return slots_[slot].child;
      if (slots_[slot].child == none) return none;
    }
  }
  /// The child, made if it is not there.
  Node add(Node node, WordId word);
  [[nodiscard]] std::size_t size() const { return nodes_; }  ///< nodes, the root included

 private:
  struct Slot {
    std::uint64_t key = ~std::uint64_t{0};
    Node child = none;
  };
  static std::uint64_t key_of(Node node, WordId word) { return (std::uint64_t{node} << 32) | word; }
  [[nodiscard]] std::size_t slot_of(std::uint64_t key) const {
    key *= 0x9E3779B97F4A7C15ULL;
    return static_cast<std::size_t>(key >> 32) & (slots_.size() - 1);
  }
  void grow();

  std::vector<Slot> slots_;
  Node nodes_ = 1;
};

}  // namespace sealworthy::foods
