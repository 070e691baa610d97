#include <fmt/format.h>

#include <algorithm>
#include <sealworthy/explain.hpp>

#include "knowledge/knowledge.hpp"
#include "report/wrap.hpp"
#include "text/nearest.hpp"

namespace sealworthy {
namespace {

using report::wrap;

int clamped(const TextStyle& style) { return std::clamp(style.width, 40, 100); }

/// A node in one line, as YAML's flow style has it.
std::string flow(const yaml::Node& node) {
  std::string out;
  switch (node.kind) {
    case yaml::Node::Kind::null:
      return "none";
    case yaml::Node::Kind::scalar:
      return std::string(node.text);
    case yaml::Node::Kind::sequence:
      for (const auto& item : node.items) out += (out.empty() ? "" : "; ") + flow(item);
      return out;
    case yaml::Node::Kind::map:
      for (const auto& entry : node.entries)
        out += (out.empty() ? "" : ", ") + std::string(entry.key) + " " + flow(entry.value);
      return out;
  }
  return out;
}

std::string example_text(const checks::Example& example) {
  if (example.change.is_scalar()) return "\"" + std::string(example.change.text) + "\"";
  std::string out = "the card " + example.base;
  std::string changes;
  for (const auto& entry : example.change.entries) {
    if (entry.key == "on") continue;
    changes += (changes.empty() ? " with " : "; ") + std::string(entry.key) + ": " + flow(entry.value);
  }
  return out + (changes.empty() ? " as it stands" : changes);
}

std::string_view read_text(Read read) {
  switch (read) {
    case Read::original:
      return "read in the original";
    case Read::reprint:
      return "read in a reprint";
    case Read::memory:
      return "from memory: nobody saw the page";
  }
  return "";
}

std::string part(std::string_view name, std::string_view text, const TextStyle& style) {
  return text.empty() ? "" : wrap(fmt::format("  {:<9}", name), text, 11, clamped(style));
}

std::string examples_text(const checks::Rule& rule, bool flags, const TextStyle& style) {
  std::string out;
  for (const auto& example : rule.examples) {
    if (example.flags != flags) continue;
    if (out.empty()) out = flags ? "  speaks up at, for example\n" : "  stays silent at, for example\n";
    out += wrap("    - ", example_text(example), 6, clamped(style));
  }
  return out;
}

std::string topic_text(const knowledge::ScienceTopic& topic, const TextStyle& style) {
  std::string out = topic.title + "\n";
  for (const auto& paragraph : topic.text) out += wrap("  ", paragraph, 2, clamped(style)) + "\n";
  return out + part("source", topic.source, style);
}

}  // namespace

std::optional<std::string> explain(const Checker& checker, std::string_view id, const TextStyle& style) {
  for (const auto& topic : checker.knowledge().topics)
    if (topic.id == id) return topic_text(topic, style);
  const auto* rule = checker.knowledge().rule(id);
  if (rule == nullptr) return std::nullopt;
  std::string out = fmt::format("{} ({}, {})\n", rule->id, to_string(rule->severity), to_string(rule->topic));
  out += wrap("  ", rule->says, 2, clamped(style));
  out += part("why", rule->why, style);
  out += part("instead", rule->instead, style);
  out += part("source", fmt::format("{} ({})", rule->source, read_text(rule->read)), style);
  out += examples_text(*rule, true, style);
  out += examples_text(*rule, false, style);
  return out;
}

std::string list_rules(const Checker& checker, const TextStyle& style) {
  std::vector<const checks::Rule*> rules;
  for (const auto& rule : checker.knowledge().rules) rules.push_back(&rule);
  std::stable_sort(rules.begin(), rules.end(),
                   [](const auto* a, const auto* b) { return a->topic < b->topic; });
  std::string out;
  for (const auto* rule : rules) {
    const auto lead =
        fmt::format("{:<9} {:<10} {}", to_string(rule->severity), to_string(rule->topic), rule->id);
    out += report::cut(lead, clamped(style)) + "\n";
  }
  for (const auto& topic : checker.knowledge().topics)
    out += report::cut(fmt::format("science              {}", topic.id), clamped(style)) + "\n";
  return out;
}

std::vector<std::string> suggest_rules(const Checker& checker, std::string_view word) {
  std::vector<std::string> out;
  std::vector<std::string_view> ids;
  for (const auto& rule : checker.knowledge().rules) ids.push_back(rule.id);
  for (const auto& topic : checker.knowledge().topics) ids.push_back(topic.id);
  if (const auto near = text::nearest(word, ids)) out.emplace_back(*near);
  constexpr std::size_t most = 5;
  for (const auto id : ids)
    if (out.size() < most && id.find(word) != std::string_view::npos &&
        std::find(out.begin(), out.end(), id) == out.end())
      out.emplace_back(id);
  return out;
}

}  // namespace sealworthy
