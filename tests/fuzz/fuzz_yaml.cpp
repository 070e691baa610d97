// Any bytes: read_documents, then read_card and read_kitchen; pack and unpack; and what we read against what
// yaml-cpp's own node tree reads from the same bytes, which also holds the shortened text against the full
// one (yaml/shorten.hpp).

#include <yaml-cpp/yaml.h>

#include <cstdint>
#include <cstdio>
#include <cstdlib>

#include "recipe/kitchen.hpp"
#include "recipe/recipe.hpp"
#include "yaml/document.hpp"

namespace {

using namespace sealworthy;

void require(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "not so: %s\n", what);
  std::abort();
}

void require_place(const Position& at, const Position& last) {
  require(at.line >= 1 && at.column >= 1, "places count from 1");
  require(at.line <= last.line, "a place is within the text");
}

bool same(const yaml::Node& a, const yaml::Node& b) {
  if (a.kind != b.kind || a.at != b.at || a.text != b.text || a.quoted != b.quoted ||
      a.items.size() != b.items.size() || a.entries.size() != b.entries.size())
    return false;
  for (std::size_t i = 0; i < a.items.size(); ++i)
    if (!same(a.items[i], b.items[i])) return false;
  for (std::size_t i = 0; i < a.entries.size(); ++i)
    if (a.entries[i].key != b.entries[i].key || !same(a.entries[i].value, b.entries[i].value)) return false;
  return true;
}

bool same(const yaml::Node& a, const YAML::Node& b) {
  if (b.IsNull()) return a.is_null();
  if (b.IsScalar()) return a.is_scalar() && a.text == b.Scalar();
  if (b.IsSequence() && a.is_sequence() && a.items.size() == b.size()) {
    for (std::size_t i = 0; i < a.items.size(); ++i)
      if (!same(a.items[i], b[i])) return false;
    return true;
  }
  if (!b.IsMap() || !a.is_map() || a.entries.size() != b.size()) return false;
  std::size_t i = 0;
  for (const auto& entry : b) {
    const yaml::Entry& ours = a.entries[i++];
    if (ours.key != entry.first.Scalar() || !same(ours.value, entry.second)) return false;
  }
  return true;
}

/// Whether we may read a text more kindly than the node tree does: tabs, returns, byte order marks,
/// directives.
bool read_more_kindly(const std::string& text) {
  return text.find_first_of("\t\r") != std::string::npos || text.starts_with("\xEF\xBB\xBF") ||
         text.starts_with('%') || text.find("\n%") != std::string::npos;
}

void compare_with_node_tree(const std::string& text, const yaml::Document& document) {
  if (read_more_kindly(text)) return;
  try {
    const std::vector<YAML::Node> theirs = YAML::LoadAll(text);
    if (theirs.size() == 1) require(same(document.root(), theirs.front()), "both readers read the same");
  } catch (const YAML::Exception&) {
    require(false, "what we read, the other reader reads");
  }
}

void pack_and_unpack(const yaml::Document& document) {
  const std::vector<std::pair<std::string, yaml::Document>> one{{"fuzz.yaml", document}};
  const std::string bytes = yaml::pack(one);
  const auto back = yaml::unpack(bytes);
  require(back && back->size() == 1 && same(back->front().second.root(), document.root()),
          "a pack gives back what went in");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  const Position last{static_cast<int>(size) + 1, 0};
  const auto documents = yaml::read_documents(text);
  for (const auto& read : documents) {
    if (const auto* bad = std::get_if<yaml::BadDocument>(&read)) {
      require_place(bad->error.at, last);
      require(!bad->error.message.empty() && !bad->error.suggestion.empty(), "an error says what and how");
      continue;
    }
    const auto& document = std::get<yaml::Document>(read);
    const auto card = recipe::read_card(document);
    if (const auto* error = std::get_if<yaml::Error>(&card)) require_place(error->at, last);
    const auto kitchen = recipe::read_kitchen(document);
    if (const auto* error = std::get_if<yaml::Error>(&kitchen)) require_place(error->at, last);
    pack_and_unpack(document);
    if (documents.size() == 1) compare_with_node_tree(text, document);
  }
  const auto ignored = yaml::unpack(text);
  return 0;
}
