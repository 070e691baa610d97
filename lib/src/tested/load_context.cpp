#include "tested/load_context.hpp"

#include "text/nearest.hpp"

namespace sealworthy::tested {

void LoadContext::wrong(Printed check, Position at, const std::string& message) const {
  const unsigned bit = 1U << static_cast<unsigned>(check);
  printed_needed |= bit;
  if ((printed & bit) == 0)
    add(at, message,
        "if the source prints it so, say `as-printed: [" +
            std::string(printed_names[static_cast<std::size_t>(check)]) + "]`");
}

void LoadContext::add(Position at, const std::string& message, std::string suggestion) const {
  sink.add(at, product + ": " + message, std::move(suggestion));
}

void LoadContext::read_groups(const yaml::Node* node) {
  if (node == nullptr) return;
  for (const auto& entry : node->entries) {
    std::vector<std::string> foods;
    product = entry.key;
    read_foods(entry.value, foods);
    groups.emplace(entry.key, std::move(foods));
  }
}

void LoadContext::read_foods(const yaml::Node& node, std::vector<std::string>& foods) const {
  if (node.is_sequence()) {
    for (const auto& item : node.items) read_foods(item, foods);
    return;
  }
  if (const auto group = groups.find(node.text); group != groups.end()) {
    foods.insert(foods.end(), group->second.begin(), group->second.end());
    return;
  }
  // "kind:fish" and "tag:leafy" name more than one food; who matches looks them up.
  if (node.text.find(':') == std::string_view::npos && catalogue.find(node.text) == nullptr) {
    std::vector<std::string_view> ids;
    for (const auto& food : catalogue.all()) ids.emplace_back(food.id);
    for (const auto& [name, members] : groups) ids.push_back(name);
    const auto near = text::nearest(node.text, ids);
    add(node.at, "no such food as '" + std::string(node.text) + "' in rules/foods",
        near ? "did you mean '" + std::string(*near) + "'?" : "");
    return;
  }
  foods.emplace_back(node.text);
}

}  // namespace sealworthy::tested
