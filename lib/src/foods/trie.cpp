#include "foods/trie.hpp"

namespace sealworthy::foods {

Trie::Node Trie::add(Node node, WordId word) {
  if (const Node known = child(node, word); known != none) return known;
  if (std::size_t{nodes_} * 2 > slots_.size()) grow();
  const std::uint64_t key = key_of(node, word);
  std::size_t slot = slot_of(key);
  while (slots_[slot].child != none) slot = (slot + 1) & (slots_.size() - 1);
  slots_[slot] = {key, nodes_};
  return nodes_++;
}

void Trie::grow() {
  std::vector<Slot> old(slots_.size() * 2);
  old.swap(slots_);
  for (const auto& entry : old) {
    if (entry.child == none) continue;
    std::size_t slot = slot_of(entry.key);
    while (slots_[slot].child != none) slot = (slot + 1) & (slots_.size() - 1);
    slots_[slot] = entry;
  }
}

}  // namespace sealworthy::foods
