#include "yaml/document.hpp"

namespace sealworthy::yaml {

const Entry* Node::entry(std::string_view key) const {
  for (const Entry& e : entries)
    if (e.key == key) return &e;
  return nullptr;
}

const Node* Node::find(std::string_view key) const {
  const Entry* e = entry(key);
  return e ? &e->value : nullptr;
}

}  // namespace sealworthy::yaml
