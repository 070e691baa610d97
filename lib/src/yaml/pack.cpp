#include <memory_resource>
#include <new>

#include "yaml/document.hpp"

// The form of a pack. Numbers are unsigned LEB128; a text is its length and its bytes.
//   magic "SWPACK" and a version byte, the number of documents, then each document:
//     name, number within its file, root node
//   node: kind (low 2 bits) with 4 for a quoted scalar, line, column, then
//     scalar: text    sequence: count, nodes    map: count, entries of key, line, column, node
// A node keeps no offsets: reading is one pass from front to back.

namespace sealworthy::yaml {
namespace {

constexpr std::string_view magic = "SWPACK\x01";
constexpr unsigned quoted_bit = 4;
constexpr int deepest = 64;
constexpr std::size_t least_node = 3;   // bytes: kind, line, column
constexpr std::size_t least_entry = 6;  // key length, line, column, node

class Writer {
 public:
  explicit Writer(std::string& out) : out_(out) {}

  void number(std::uint64_t n) {
    for (; n >= 0x80; n >>= 7U) out_.push_back(static_cast<char>(n | 0x80U));
    out_.push_back(static_cast<char>(n));
  }
  void text(std::string_view t) {
    number(t.size());
    out_.append(t);
  }
  void place(Position at) {
    number(static_cast<std::uint64_t>(at.line));
    number(static_cast<std::uint64_t>(at.column));
  }
  void node(const Node& n) {  // recursion is bounded by Limits::depth
    out_.push_back(static_cast<char>(static_cast<unsigned>(n.kind) | (n.quoted ? quoted_bit : 0U)));
    place(n.at);
    if (n.is_scalar()) text(n.text);
    if (n.is_sequence()) {
      number(n.items.size());
      for (const Node& item : n.items) node(item);
    }
    if (n.is_map()) {
      number(n.entries.size());
      for (const Entry& e : n.entries) {
        text(e.key);
        place(e.key_at);
        node(e.value);
      }
    }
  }

 private:
  std::string& out_;
};

/// Reads a pack; once something is wrong, `good` stays false and everything read is empty.
class Reader {
 public:
  Reader(std::string_view bytes, std::pmr::memory_resource& memory) : rest_(bytes), memory_(memory) {}

  [[nodiscard]] bool good() const { return good_; }
  [[nodiscard]] bool at_end() const { return rest_.empty(); }

  std::uint64_t number() {
    std::uint64_t n = 0;
    for (unsigned shift = 0; shift < 63 && !rest_.empty(); shift += 7) {
      const auto byte = static_cast<unsigned char>(rest_.front());
      rest_.remove_prefix(1);
      n |= static_cast<std::uint64_t>(byte & 0x7FU) << shift;
      if (byte < 0x80) return n;
    }
    return fail(), 0;
  }
  int small() {
    const std::uint64_t n = number();
    if (n > 0x7FFFFFFFU) return fail(), 0;
    return static_cast<int>(n);
  }
  /// A count of things of at least so many bytes each: never more than can follow.
  std::size_t count(std::size_t least) {
    const std::uint64_t n = number();
    if (n > rest_.size() / least) return fail(), 0;
    return static_cast<std::size_t>(n);
  }
  std::string_view text() {
    const std::size_t n = count(1);
    const std::string_view t = rest_.substr(0, n);
    rest_.remove_prefix(n);
    return t;
  }
  Position place() {
    const int line = small();
    return {line, small()};
  }
  void node(Node& n, int depth) {
    if (rest_.empty() || depth > deepest) return fail();
    const auto head = static_cast<unsigned char>(rest_.front());
    rest_.remove_prefix(1);
    if (head > (3U | quoted_bit)) return fail();
    n.kind = static_cast<Node::Kind>(head & 3U);
    n.quoted = (head & quoted_bit) != 0;
    n.at = place();
    if (n.is_scalar()) n.text = text();
    if (n.is_sequence()) {
      const std::span<Node> items = several<Node>(count(least_node));
      for (std::size_t i = 0; i < items.size() && good_; ++i) node(items[i], depth + 1);
      n.items = items;
    }
    if (n.is_map()) {
      const std::span<Entry> entries = several<Entry>(count(least_entry));
      for (std::size_t i = 0; i < entries.size() && good_; ++i) {
        entries[i].key = text();
        entries[i].key_at = place();
        node(entries[i].value, depth + 1);
      }
      n.entries = entries;
    }
  }
  template <class T>
  std::span<T> several(std::size_t n) {
    if (n == 0) return {};
    T* first = static_cast<T*>(memory_.allocate(n * sizeof(T), alignof(T)));
    std::uninitialized_value_construct_n(first, n);
    return {first, n};
  }
  void fail() {
    good_ = false;
    rest_ = {};
  }

 private:
  std::string_view rest_;
  std::pmr::memory_resource& memory_;
  bool good_ = true;
};

}  // namespace

std::string pack(std::span<const std::pair<std::string, Document>> named_documents) {
  std::string out(magic);
  Writer writer(out);
  writer.number(named_documents.size());
  for (const auto& [name, document] : named_documents) {
    writer.text(name);
    writer.number(static_cast<std::uint64_t>(document.number()));
    writer.node(document.root());
  }
  return out;
}

std::optional<std::vector<std::pair<std::string_view, Document>>> unpack(std::string_view bytes) {
  if (!bytes.starts_with(magic)) return std::nullopt;
  bytes.remove_prefix(magic.size());
  auto arena = std::make_shared<std::pmr::monotonic_buffer_resource>(bytes.size() * 4 + 256);
  Reader reader(bytes, *arena);
  std::vector<std::pair<std::string_view, Document>> documents;
  const std::size_t n = reader.count(least_node + 2);
  documents.reserve(n);
  for (std::size_t i = 0; i < n && reader.good(); ++i) {
    const std::string_view name = reader.text();
    const int number = reader.small();
    Node& root = reader.several<Node>(1).front();
    reader.node(root, 0);
    documents.emplace_back(name, Document(arena, &root, number));
  }
  if (!reader.good() || !reader.at_end()) return std::nullopt;
  return documents;
}

}  // namespace sealworthy::yaml
