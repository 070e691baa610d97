#include "yaml/builder.hpp"

#include <algorithm>
#include <cstring>
#include <type_traits>
namespace sealworthy::yaml {
namespace {

// Bytes of arena that a byte of a card comes to: 3.1 to 5.4, measured over the cards of tests/bench. One
// block then holds nearly every card.
constexpr std::size_t arena_per_byte = 5;

Node bare_node(Node::Kind kind, Position at) {
  Node node;
  node.kind = kind;
  node.at = at;
  return node;
}

static_assert(std::is_trivially_destructible_v<Node> && std::is_trivially_destructible_v<Entry>);

}  // namespace

void Builder::begin(const Chunk& chunk, std::span<const StandIn> stand_ins) {
  places_.emplace(chunk, stand_ins);
  stand_ins_ = stand_ins;
  next_stand_in_ = 0;
  arena_ = std::make_shared<Arena>(chunk.text.size() * arena_per_byte + 64);
  frames_.clear();
  items_.clear();
  entries_.clear();
  anchors_.clear();
  root_ = {};
  total_ = 0;
  last_quoted_.reset();
  started_ = false;
}

Document Builder::finish(int number) {
  void* place = arena_->memory.allocate(sizeof(Node), alignof(Node));
  const Node* root = new (place) Node(root_);
  return {std::move(arena_), root, number};
}

template <class T>
std::span<const T> Builder::keep(std::vector<T>& stack, std::size_t first) {
  const std::size_t n = stack.size() - first;
  if (n == 0) return {};
  T* place = static_cast<T*>(arena_->memory.allocate(n * sizeof(T), alignof(T)));
  std::uninitialized_copy(stack.begin() + static_cast<std::ptrdiff_t>(first), stack.end(), place);
  stack.resize(first);
  return {place, n};
}

std::string_view Builder::keep(std::string_view text) {
  if (text.empty()) return {};
  char* place = static_cast<char*>(arena_->memory.allocate(text.size(), 1));
  std::memcpy(place, text.data(), text.size());
  return {place, text.size()};
}

void Builder::OnDocumentStart(const YAML::Mark& mark) {
  if (started_)
    throw Stop{{places_->of(mark), "The document was at its end here, but there is more text.",
                "Check the brackets and quotes above; a new recipe begins with a line of three dashes: ---"}};
  started_ = true;
}

void Builder::OnDocumentEnd() { refuse_open_quote(); }

void Builder::OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) {
  add(bare_node(Node::Kind::null, null_place(mark)), 1, 0, anchor, mark);
}

void Builder::OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       const std::string& value) {
  if (places_->chunk().tabs) refuse_tab_before(mark);
  const bool is_plain = tag == "?";
  Node node = bare_node(Node::Kind::scalar, places_->of(mark));
  if (const StandIn* stands_for = meet(mark, is_plain, value)) {
    node.text = keep(stands_for->text);
    return add(node, 1, 0, anchor, mark);
  }
  if (is_plain) {
    refuse_dash_in_text(mark, value.size());
    if (places_->chunk().hashes) refuse_cut_by_hash(mark);
  } else {
    refuse_tag(mark, tag);
    last_quoted_ = mark;
  }
  node.quoted = tag == "!" || (!is_plain && tag.ends_with(":str"));
  node.text = keep(value);
  add(node, 1, 0, anchor, mark);
}

/// The stand-in that this scalar is, if it is one (shorten.hpp has the conditions).
const StandIn* Builder::meet(const YAML::Mark& mark, bool is_plain, const std::string& value) {
  if (all_met()) return nullptr;
  const StandIn& next = stand_ins_[next_stand_in_];
  if (mark.line != next.line || mark.column != next.column) return nullptr;
  if (!is_plain || in_flow() || value.size() != 1 || value.front() != ShortText::letter) return nullptr;
  ++next_stand_in_;
  return &next;
}

void Builder::OnAlias(const YAML::Mark& mark, YAML::anchor_t anchor) {
  if (anchor >= anchors_.size() || anchors_[anchor].nodes == 0)
    throw Stop{{places_->of(mark), "This `*` refers to something that contains it.",
                "If the asterisk belongs to the text, put the whole text in quotes."}};
  const Anchored& target = anchors_[anchor];
  if (static_cast<int>(frames_.size()) + target.height > limits_.depth)
    throw Stop{{places_->of(mark),
                "Through this `*`, lists and maps stand inside each other more than " +
                    std::to_string(limits_.depth) + " deep.",
                "Write it out flat."}};
  Node node = target.node;
  node.at = places_->of(mark);
  add(node, target.nodes, target.height, 0, mark);
}

void Builder::OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                              YAML::EmitterStyle::value style) {
  refuse_tag(mark, tag);
  open(mark, anchor, style, false);
}

void Builder::OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                         YAML::EmitterStyle::value style) {
  refuse_tag(mark, tag);
  open(mark, anchor, style, true);
}

void Builder::OnSequenceEnd() {
  Node node = bare_node(Node::Kind::sequence, frames_.back().at);
  node.items = keep(items_, frames_.back().first);
  close(node);
}

void Builder::OnMapEnd() {
  Node node = bare_node(Node::Kind::map, frames_.back().at);
  node.entries = keep(entries_, frames_.back().first);
  refuse_repeated_keys(node.entries);
  close(node);
}

void Builder::open(const YAML::Mark& mark, YAML::anchor_t anchor, YAML::EmitterStyle::value style, bool map) {
  if (places_->chunk().tabs) refuse_tab_before(mark);
  if (!frames_.empty() && frames_.back().map && !frames_.back().has_key)
    throw Stop{{places_->of(mark), "A list or map stands here where a name should be.",
                "Put the text before the colon in quotes."}};
  if (static_cast<int>(frames_.size()) >= limits_.depth)
    throw Stop{
        {places_->of(mark),
         "Lists and maps stand inside each other more than " + std::to_string(limits_.depth) + " deep.",
         "If the brackets belong to a text, put the whole text in quotes."}};
  count(1, mark);
  frames_.push_back({.map = map,
                     .flow = style == YAML::EmitterStyle::Flow,
                     .at = places_->of(mark),
                     .anchor = anchor,
                     .first = map ? entries_.size() : items_.size()});
}

void Builder::close(const Node& node) {
  const Frame frame = frames_.back();
  frames_.pop_back();
  total_ -= frame.nodes;  // add counts them again with those above
  add(node, frame.nodes, frame.height, frame.anchor, {});
}

void Builder::add(const Node& node, std::size_t nodes, int height, YAML::anchor_t anchor,
                  const YAML::Mark& mark) {
  count(nodes, mark);
  if (anchor != 0) {
    if (anchors_.size() <= anchor) anchors_.resize(anchor + 1);
    anchors_[anchor] = {node, nodes, height};
  }
  if (frames_.empty()) {
    root_ = node;
    return;
  }
  Frame& frame = frames_.back();
  frame.nodes += nodes;
  frame.height = std::max(frame.height, height + 1);
  if (!frame.map)
    items_.push_back(node);
  else if (frame.has_key)
    entries_.back().value = node;
  else
    return add_key(node, mark);
  frame.has_key = false;
}

void Builder::add_key(const Node& node, const YAML::Mark& mark) {
  if (!node.is_scalar())
    throw Stop{
        {places_->of(mark),
         node.is_null() ? "There is no name before this colon." : "A list or map stands here as a name.",
         "Write a name, a colon, a space and the value; a text that holds a colon goes in quotes."}};
  frames_.back().has_key = true;
  frames_.back().key_at = places_->offset(mark);
  entries_.push_back({.key = node.text, .key_at = node.at, .value = {}});
}

void Builder::count(std::size_t nodes, const YAML::Mark& mark) {
  total_ += nodes;
  if (total_ > limits_.nodes)
    throw Stop{{places_->of(mark),
                "The document holds more than " + std::to_string(limits_.nodes) +
                    " values (what a `*` repeats is counted each time).",
                "Split it into several documents."}};
}

}  // namespace sealworthy::yaml
