#include "foods/fields.hpp"

#include <charconv>

#include "text/nearest.hpp"

namespace sealworthy::foods {

void Fields::error(Position at, std::string message, std::string suggestion) {
  errors.push_back({std::string(file), {at, std::move(message), std::move(suggestion)}});
}

bool Fields::known_keys(const yaml::Node& node, std::span<const std::string_view> keys) {
  if (!node.is_map()) {
    error(node.at, "a map of keys and values is wanted here");
    return false;
  }
  for (const auto& entry : node.entries) {
    bool known = false;
    for (const auto key : keys) known = known || key == entry.key;
    if (known) continue;
    const auto near = text::nearest(entry.key, keys);
    error(entry.key_at, "no such key: '" + std::string(entry.key) + "'",
          near ? "did you mean '" + std::string(*near) + "'?" : "");
  }
  return true;
}

std::span<const yaml::Node> Fields::items(const yaml::Node& node) {
  if (node.is_sequence()) return node.items;
  error(node.at, "a list is wanted here");
  return {};
}

std::string_view Fields::text(const yaml::Node& map, std::string_view key) {
  const auto found = text_or(map, key);
  if (found.empty() && map.find(key) == nullptr)
    error(map.at, "the key '" + std::string(key) + "' is missing");
  return found;
}

std::string_view Fields::text_or(const yaml::Node& map, std::string_view key) {
  const auto* node = map.find(key);
  if (node == nullptr) return {};
  if (!node->is_scalar()) {
    error(node->at, "'" + std::string(key) + "' takes one word or text");
    return {};
  }
  return node->text;
}

std::span<const yaml::Node> Fields::list(const yaml::Node& map, std::string_view key) {
  const auto* node = map.find(key);
  if (node == nullptr) return {};
  if (!node->is_sequence()) {
    error(node->at, "'" + std::string(key) + "' takes a list");
    return {};
  }
  for (const auto& item : node->items)
    if (!item.is_scalar()) {
      error(item.at, "'" + std::string(key) + "' takes a list of words");
      return {};
    }
  return node->items;
}

std::optional<double> Fields::number(const yaml::Node& map, std::string_view key) {
  const auto* node = map.find(key);
  if (node == nullptr) return std::nullopt;
  double value = 0;
  const auto text = node->text;
  const auto result = std::from_chars(text.data(), text.data() + text.size(), value);
  if (node->is_scalar() && result.ec == std::errc() && result.ptr == text.data() + text.size()) return value;
  error(node->at, "'" + std::string(key) + "' takes a number");
  return std::nullopt;
}

bool Fields::flag(const yaml::Node& map, std::string_view key) {
  const auto* node = map.find(key);
  if (node == nullptr) return false;
  if (node->text == "true") return true;
  if (node->text != "false") error(node->at, "'" + std::string(key) + "' is true or false");
  return false;
}

}  // namespace sealworthy::foods
