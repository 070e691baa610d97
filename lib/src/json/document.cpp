#include "json/document.hpp"

#include <algorithm>
#include <cstring>
#include <memory>
#include <memory_resource>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "text/locator.hpp"

namespace sealworthy::json {
namespace {

using yaml::Entry;
using yaml::Node;

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

struct Arena {
  explicit Arena(std::size_t first) : memory(first) {}
  std::pmr::monotonic_buffer_resource memory;
};

/// Takes the parser's events. The parser tells no places: they are found by walking the text beside it, which
/// is easy since what was reported is known to be sound.
class Builder : public nlohmann::json_sax<nlohmann::json> {
 public:
  Builder(std::string_view text, Position start, const yaml::Limits& limits)
      : text_(text),
        places_(text, start),
        limits_(limits),
        arena_(std::make_shared<Arena>(text.size() + 256)) {}

  [[nodiscard]] yaml::DocumentOrError finish(int number) {
    if (wrong_) return yaml::BadDocument{number, *wrong_};
    auto* root = static_cast<Node*>(arena_->memory.allocate(sizeof(Node), alignof(Node)));
    new (root) Node(items_.back());
    return yaml::Document(arena_, root, number);
  }

  bool null() override { return add(token(4), Node::Kind::null, {}, false); }
  bool boolean(bool value) override {
    return add(token(value ? 4 : 5), Node::Kind::scalar, value ? "true" : "false", false);
  }
  bool number_integer(number_integer_t /*value*/) override { return number(); }
  bool number_unsigned(number_unsigned_t /*value*/) override { return number(); }
  bool number_float(number_float_t /*value*/, const string_t& /*text*/) override { return number(); }
  bool string(string_t& value) override { return add(string_token(), Node::Kind::scalar, keep(value), true); }
  bool binary(binary_t& /*value*/) override { return false; }
  bool key(string_t& name) override {
    keys_.push_back({keep(name), string_token()});
    return true;
  }
  bool start_object(std::size_t /*size*/) override { return open(true); }
  bool start_array(std::size_t /*size*/) override { return open(false); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool parse_error(std::size_t position, const std::string& /*token*/,
                   const nlohmann::detail::exception& /*error*/) override {
    if (wrong_) return false;
    // The parser counts the byte that it stumbled over.
    explain(std::min(position == 0 ? 0 : position - 1, text_.size()));
    return false;
  }

 private:
  struct Key {
    std::string_view name;
    Position at;
  };
  struct Frame {
    bool map = false;
    Position at;
    std::size_t first = 0;  ///< where its children begin among items_ or entries_
  };

  std::size_t next_token() {
    cursor_ = std::min(text_.find_first_not_of(" \t\r\n,:", cursor_), text_.size());
    return cursor_;
  }
  Position token(std::size_t size) {
    const Position at = places_.at(next_token());
    cursor_ += size;
    return at;
  }
  Position string_token() {
    const Position at = places_.at(next_token());
    ++cursor_;
    while (cursor_ < text_.size() && text_[cursor_] != '"') cursor_ += text_[cursor_] == '\\' ? 2 : 1;
    ++cursor_;
    return at;
  }
  bool number() {
    const std::size_t first = next_token();
    const Position at = places_.at(first);
    cursor_ = std::min(text_.find_first_not_of("+-.0123456789eE", first), text_.size());
    return add(at, Node::Kind::scalar, keep(text_.substr(first, cursor_ - first)), false);
  }

  std::string_view keep(std::string_view text) {
    if (text.empty()) return {};
    auto* copy = static_cast<char*>(arena_->memory.allocate(text.size(), 1));
    std::memcpy(copy, text.data(), text.size());
    return {copy, text.size()};
  }
  template <class T>
  std::span<const T> keep(std::vector<T>& stack, std::size_t first) {
    const std::size_t count = stack.size() - first;
    if (count == 0) return {};
    auto* copy = static_cast<T*>(arena_->memory.allocate(count * sizeof(T), alignof(T)));
    std::uninitialized_copy(stack.begin() + static_cast<std::ptrdiff_t>(first), stack.end(), copy);
    stack.resize(first);
    return {copy, count};
  }

  bool refuse(Position at, std::string message, std::string suggestion) {
    wrong_ = yaml::Error{at, std::move(message), std::move(suggestion)};
    return false;
  }

  bool add(Position at, Node::Kind kind, std::string_view text, bool quoted) {
    Node node;
    node.kind = kind;
    node.quoted = quoted;
    node.at = at;
    node.text = text;
    return place(node);
  }
  bool place(const Node& node) {
    if (++nodes_ > limits_.nodes)
      return refuse(node.at, "This file holds too many values to be a recipe.",
                    "Split it into several files.");
    if (!frames_.empty() && frames_.back().map) {
      entries_.push_back({keys_.back().name, keys_.back().at, node});
      keys_.pop_back();
    } else {
      items_.push_back(node);
    }
    return true;
  }

  bool open(bool map) {
    const Position at = token(1);
    if (frames_.size() >= static_cast<std::size_t>(limits_.depth))
      return refuse(at, "This is nested too deep to be a recipe.", "");
    frames_.push_back({map, at, map ? entries_.size() : items_.size()});
    return true;
  }
  bool close() {
    token(1);
    const Frame frame = frames_.back();
    frames_.pop_back();
    Node node;
    node.at = frame.at;
    node.kind = frame.map ? Node::Kind::map : Node::Kind::sequence;
    if (frame.map) {
      node.entries = keep(entries_, frame.first);
      if (!all_differ(node.entries)) return false;
    } else {
      node.items = keep(items_, frame.first);
    }
    return place(node);
  }
  bool all_differ(std::span<const Entry> entries) {
    std::vector<const Entry*> sorted;
    sorted.reserve(entries.size());
    for (const Entry& entry : entries) sorted.push_back(&entry);
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const Entry* a, const Entry* b) { return a->key < b->key; });
    const auto twice = std::adjacent_find(sorted.begin(), sorted.end(),
                                          [](const Entry* a, const Entry* b) { return a->key == b->key; });
    if (twice == sorted.end()) return true;
    return refuse((*(twice + 1))->key_at, "\"" + std::string((*twice)->key) + "\" stands twice here.",
                  "Keep one of the two.");
  }

  void explain(std::size_t offset) {
    std::size_t at = std::min(text_.find_first_not_of(" \t\r\n", offset), text_.size());
    const std::string_view rest = text_.substr(at);
    const std::size_t before = at == 0 ? std::string_view::npos : text_.find_last_not_of(" \t\r\n", at - 1);
    if (rest.empty()) {
      refuse(places_.at(at), "The JSON ends before it is complete.",
             "A closing quote, brace or bracket is missing.");
    } else if (rest.starts_with("//") || rest.starts_with("/*") || rest.starts_with("#")) {
      refuse(places_.at(at), "JSON has no comments.", "Take the comment out.");
    } else if ((rest.front() == '}' || rest.front() == ']') && before != std::string_view::npos &&
               text_[before] == ',') {
      refuse(places_.at(before), "A comma stands before the closing bracket.", "Take the comma out.");
    } else if (rest.front() == '\'') {
      refuse(places_.at(at), "JSON takes no single quotes.", "Use double quotes.");
    } else if (static_cast<unsigned char>(rest.front()) >= 0x80) {
      refuse(places_.at(at), "These bytes are no UTF-8 text.", "Save the file as UTF-8.");
    } else {
      refuse(places_.at(at), "This is no JSON that can be read.",
             "A comma, a quote or a bracket may be missing before this place.");
    }
  }

  std::string_view text_;
  text::Locator places_;
  yaml::Limits limits_;
  std::shared_ptr<Arena> arena_;
  std::vector<Frame> frames_;
  std::vector<Key> keys_;
  std::vector<Node> items_;
  std::vector<Entry> entries_;
  std::optional<yaml::Error> wrong_;
  std::size_t nodes_ = 0;
  std::size_t cursor_ = 0;  ///< past the last token reported
};

}  // namespace

yaml::DocumentOrError read_document(std::string_view text, int number, Position start,
                                    const yaml::Limits& limits) {
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  if (text.size() > limits.bytes)
    return yaml::BadDocument{number, {start, "This file is too large to be a recipe.", ""}};
  // The parser takes a zero byte for the end, and all behind it would be passed over.
  if (const std::size_t zero = text.find('\0'); zero != std::string_view::npos)
    return yaml::BadDocument{number,
                             {text::Locator(text, start).at(zero), "A zero byte stands here; JSON has none.",
                              "Save the file as UTF-8 text."}};
  Builder builder(text, start, limits);
  nlohmann::json::sax_parse(text.data(), text.data() + text.size(), &builder);
  return builder.finish(number);
}

}  // namespace sealworthy::json
