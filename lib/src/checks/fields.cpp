#include "checks/fields.hpp"

#include <algorithm>
#include <charconv>

#include "text/nearest.hpp"

namespace sealworthy::checks {
namespace {

std::string suggest(std::string_view word, const std::vector<std::string_view>& known) {
  if (const auto near = text::nearest(word, known)) return "did you mean '" + std::string(*near) + "'?";
  std::string all = known.empty() ? "" : "one of:";
  for (const auto k : known) all.append(k == known.front() ? " " : ", ").append(k);
  return all;
}

}  // namespace

void ErrorSink::add(Position at, std::string message, std::string suggestion) const {
  errors.push_back({std::string(file), {at, std::move(message), std::move(suggestion)}});
}

Fields::Fields(const yaml::Node& map, std::string what, ErrorSink sink)
    : map_(map), what_(std::move(what)), sink_(sink) {
  constexpr std::size_t most_keys = 24;
  known_.reserve(most_keys);
  if (!map.is_map() && !map.is_null()) sink_.add(map.at, what_ + ": keys with values are wanted here");
}

const yaml::Node* Fields::find(std::string_view key) {
  known_.push_back(key);
  const yaml::Node* node = map_.is_map() ? map_.find(key) : nullptr;
  return node != nullptr && node->is_null() ? nullptr : node;
}

std::string Fields::text(std::string_view key, bool required) {
  const auto* node = find(key);
  if (node == nullptr) {
    if (required) sink_.add(map_.at, what_ + ": '" + std::string(key) + "' is missing");
    return {};
  }
  if (!node->is_scalar()) {
    sink_.add(node->at, what_ + ": '" + std::string(key) + "' must be one text");
    return {};
  }
  return std::string(node->text);
}

std::vector<std::string> Fields::list(std::string_view key) {
  std::vector<std::string> out;
  const auto* node = find(key);
  if (node == nullptr) return out;
  if (node->is_scalar()) out.emplace_back(node->text);
  for (const auto& item : node->items) {
    if (item.is_scalar())
      out.emplace_back(item.text);
    else
      sink_.add(item.at, what_ + ": '" + std::string(key) + "' must be a list of words");
  }
  if (node->is_map()) sink_.add(node->at, what_ + ": '" + std::string(key) + "' must be a list of words");
  return out;
}

std::optional<double> number_of(const yaml::Node& node) {
  double value = 0;
  const char* end = node.text.data() + node.text.size();
  const auto read = std::from_chars(node.text.data(), end, value);
  if (node.is_scalar() && read.ec == std::errc() && read.ptr == end) return value;
  return std::nullopt;
}

std::optional<double> Fields::number(std::string_view key) {
  const auto* node = find(key);
  if (node == nullptr) return std::nullopt;
  const auto value = number_of(*node);
  if (!value) sink_.add(node->at, what_ + ": '" + std::string(key) + "' must be a number");
  return value;
}

bool Fields::flag(std::string_view key, bool otherwise) {
  static const std::vector<std::string_view> words{"yes", "no", "true", "false"};
  const auto index = choice(key, words);
  return index ? *index % 2 == 0 : otherwise;
}

std::optional<std::size_t> Fields::word_index(const yaml::Node& node, std::string_view key,
                                              const std::vector<std::string_view>& words) const {
  const auto found = node.is_scalar() ? std::find(words.begin(), words.end(), node.text) : words.end();
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  sink_.add(node.at, what_ + ": '" + std::string(key) + "' can't be '" + std::string(node.text) + "'",
            suggest(node.text, words));
  return std::nullopt;
}

std::optional<std::size_t> Fields::choice(std::string_view key, const std::vector<std::string_view>& words,
                                          bool required) {
  if (const auto* node = find(key)) return word_index(*node, key, words);
  if (required) sink_.add(map_.at, what_ + ": '" + std::string(key) + "' is missing");
  return std::nullopt;
}

unsigned Fields::choices(std::string_view key, const std::vector<std::string_view>& words) {
  unsigned bits = 0;
  const auto* node = find(key);
  if (node == nullptr) return bits;
  const auto take = [&](const yaml::Node& item) {
    if (const auto index = word_index(item, key, words)) bits |= 1U << *index;
  };
  if (node->is_sequence())
    for (const auto& item : node->items) take(item);
  else
    take(*node);
  return bits;
}

void Fields::done() {
  if (!map_.is_map()) return;
  for (const auto& entry : map_.entries)
    if (std::find(known_.begin(), known_.end(), entry.key) == known_.end())
      sink_.add(entry.key_at, what_ + ": no such key as '" + std::string(entry.key) + "'",
                suggest(entry.key, known_));
}

}  // namespace sealworthy::checks
