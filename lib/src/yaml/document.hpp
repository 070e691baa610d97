#pragma once

/// Bytes -> Document: what a YAML text says, each key and value with its line and column.
/// The only room that knows yaml-cpp. Cards, kitchens and rules all come through here.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <sealworthy/position.hpp>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sealworthy::yaml {

struct Entry;

/// One value of a document. Cheap to copy: views into the Document's arena, which must outlive it.
struct Node {
  enum class Kind : std::uint8_t { null, scalar, sequence, map };
  Kind kind = Kind::null;
  bool quoted = false;             ///< a scalar in quotes or a block: never null, never a number by accident
  Position at;                     ///< first character of the value (for null: where the value would stand)
  std::string_view text;           ///< the scalar as YAML reads it (quotes removed, escapes resolved)
  std::span<const Node> items;     ///< of a sequence
  std::span<const Entry> entries;  ///< of a map, in the order written; keys are unique scalars

  [[nodiscard]] bool is_null() const { return kind == Kind::null; }
  [[nodiscard]] bool is_scalar() const { return kind == Kind::scalar; }
  [[nodiscard]] bool is_sequence() const { return kind == Kind::sequence; }
  [[nodiscard]] bool is_map() const { return kind == Kind::map; }
  /// The value under a key, or nullptr. Linear: maps here are short.
  [[nodiscard]] const Node* find(std::string_view key) const;
  [[nodiscard]] const Entry* entry(std::string_view key) const;
};

struct Entry {
  std::string_view key;
  Position key_at;
  Node value;
};

/// Why a document can't be read, in words for a cook, with a suggestion where one is known.
struct Error {
  Position at;
  std::string message;
  std::string suggestion;
};

/// Limits that keep cost in proportion to input; each is tested.
struct Limits {
  std::size_t bytes = 1 << 20;  ///< size of one file
  int depth = 64;               ///< nesting of maps and sequences
  std::size_t nodes = 200'000;  ///< nodes of one document after aliases are followed
};

/// A read document. Copies share the arena that all its Nodes and views live in.
class Document {
 public:
  Document() = default;
  Document(std::shared_ptr<const void> arena, const Node* root, int number)
      : arena_(std::move(arena)), root_(root), number_(number) {}
  [[nodiscard]] const Node& root() const { return *root_; }
  [[nodiscard]] int number() const { return number_; }  ///< from 1 within its file
  [[nodiscard]] const std::shared_ptr<const void>& arena() const { return arena_; }

 private:
  std::shared_ptr<const void> arena_;
  const Node* root_ = nullptr;
  int number_ = 1;
};

struct BadDocument {
  int number = 1;
  Error error;
};

using DocumentOrError = std::variant<Document, BadDocument>;

/// Every document of a file, in order; a bad one does not stop those after it. An empty text gives no
/// documents;
/// `---` markers with nothing between give none either, and are not counted. Handles a BOM, CRLF and CR;
/// refuses invalid UTF-8, control characters, a NUL byte (the whole file: it is binary), a tab in
/// indentation, duplicate keys, keys that are not scalars, local tags (`!word`), and whatever breaks Limits.
/// `!!tags` and directives are ignored, a merge key is a key like any other, an alias shares the nodes of its
/// anchor.
///
/// Stricter than YAML where a cook's slip would lose text in silence: a plain text that goes on with a line
/// that begins with a dash, ` #` and a digit inside a text ("1 #10 can"), a `!` at the start, a quote that
/// only the end closes.
///
/// Never throws but for bad_alloc. Cost: about half of YAML::LoadAll of the same bytes
/// (tests/bench/bench_yaml.cpp); one pass of yaml-cpp's event parser, over a shortened text (shorten.hpp), no
/// yaml-cpp node tree. Memory and time are linear in the input: the parser queues all tokens of a flow
/// collection before it reports the first, so brackets and commas are counted before it sees the text (at
/// most Limits::nodes); nesting stops at Limits::depth from inside its recursion; aliases are shared and
/// counted by what they stand for.
std::vector<DocumentOrError> read_documents(std::string_view text, const Limits& limits = {});

/// A compact form of documents that needs no YAML parsing: the rules are compiled into the library this way.
/// Aliases are written out.
std::string pack(std::span<const std::pair<std::string, Document>> named_documents);
/// Views into `bytes`, which must outlive the result. The bytes are our own; a damaged pack gives nullopt.
std::optional<std::vector<std::pair<std::string_view, Document>>> unpack(std::string_view bytes);

}  // namespace sealworthy::yaml
