#pragma once

#include <yaml-cpp/eventhandler.h>

#include <cstdint>
#include <memory>
#include <memory_resource>
#include <string>
#include <vector>

#include "yaml/document.hpp"
#include "yaml/places.hpp"

namespace sealworthy::yaml {

/// Thrown through the parser to stop it at the first wrong thing; caught in read_documents.
struct Stop {
  Error error;
};

/// The memory of one document.
struct Arena {
  explicit Arena(std::size_t first) : memory(first) {}
  std::pmr::monotonic_buffer_resource memory;
};

/// Builds the nodes of one document from the parser's events. Children are gathered on two stacks that serve
/// all documents of a file, and move to the arena when their parent ends. An alias shares the spans of its
/// anchor and counts with all the nodes under it, so a bomb costs no more than the events that it is written
/// in.
class Builder : public YAML::EventHandler {
 public:
  explicit Builder(const Limits& limits) : limits_(limits) {}

  /// `stand_ins`: what the parser is shown in place of some texts of the chunk; they must outlive the
  /// document.
  void begin(const Chunk& chunk, std::span<const StandIn> stand_ins = {});
  /// Whether every stand-in was met where it stands and as it stands. Otherwise the document is worth
  /// nothing.
  [[nodiscard]] bool all_met() const { return next_stand_in_ == stand_ins_.size(); }
  /// Refuses a directive that the parser took after the end of the document.
  void refuse_rest();
  /// The document, once the parser has handled it.
  Document finish(int number);
  [[nodiscard]] Places& places() { return *places_; }

  void OnDocumentStart(const YAML::Mark& mark) override;
  void OnDocumentEnd() override;
  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override;
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t anchor) override;
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override;
  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value style) override;
  void OnSequenceEnd() override;
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value style) override;
  void OnMapEnd() override;

 private:
  struct Frame {
    bool map = false;
    bool flow = false;
    bool has_key = false;  ///< a key waits for its value
    Position at;
    YAML::anchor_t anchor = 0;
    std::size_t first = 0;   ///< where its children begin on their stack
    std::size_t key_at = 0;  ///< byte of the last key
    std::size_t nodes = 1;   ///< itself and all under it, aliases followed
    int height = 1;          ///< levels of maps and sequences
  };
  struct Anchored {
    Node node;
    std::size_t nodes = 0;  ///< 0: not complete yet
    int height = 0;
  };

  void open(const YAML::Mark& mark, YAML::anchor_t anchor, YAML::EmitterStyle::value style, bool map);
  void close(const Node& node);
  void add(const Node& node, std::size_t nodes, int height, YAML::anchor_t anchor, const YAML::Mark& mark);
  void add_key(const Node& node, const YAML::Mark& mark);
  void count(std::size_t nodes, const YAML::Mark& mark);
  void refuse_tab_before(const YAML::Mark& mark);
  void refuse_cut_by_hash(const YAML::Mark& mark);
  void refuse_tag(const YAML::Mark& mark, const std::string& tag);
  void refuse_dash_in_text(const YAML::Mark& mark, std::size_t length);
  void refuse_open_quote();
  void refuse_repeated_keys(std::span<const Entry> entries) const;
  [[nodiscard]] Position null_place(const YAML::Mark& mark);
  [[nodiscard]] Position null_after_key(const Frame& frame);
  [[nodiscard]] std::optional<Position> null_after_dash(std::size_t offset);
  [[nodiscard]] bool in_flow() const { return !frames_.empty() && frames_.back().flow; }
  template <class T>
  std::span<const T> keep(std::vector<T>& stack, std::size_t first);
  std::string_view keep(std::string_view text);
  [[nodiscard]] const StandIn* meet(const YAML::Mark& mark, bool is_plain, const std::string& value);

  Limits limits_;
  std::optional<Places> places_;
  std::span<const StandIn> stand_ins_;
  std::size_t next_stand_in_ = 0;
  std::shared_ptr<Arena> arena_;
  std::vector<Frame> frames_;
  std::vector<Node> items_;
  std::vector<Entry> entries_;
  std::vector<Anchored> anchors_;  ///< by the parser's anchor number
  Node root_;
  std::size_t total_ = 0;
  std::optional<YAML::Mark> last_quoted_;
  bool started_ = false;
};

}  // namespace sealworthy::yaml
