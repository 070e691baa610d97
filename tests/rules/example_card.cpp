#include "rules/example_card.hpp"

#include <algorithm>

namespace sealworthy::test {
namespace {

void quote(std::string_view text, std::string& out) {
  out += '"';
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    if (c == '\n')
      out += "\\n";
    else
      out += c;
  }
  out += '"';
}

void write(const yaml::Node& node, std::string& out) {
  const char* between = "";
  switch (node.kind) {
    case yaml::Node::Kind::null:
      out += "~";
      break;
    case yaml::Node::Kind::scalar:
      quote(node.text, out);
      break;
    case yaml::Node::Kind::sequence:
      out += '[';
      for (const auto& item : node.items) {
        out += between;
        write(item, out);
        between = ", ";
      }
      out += ']';
      break;
    case yaml::Node::Kind::map:
      out += '{';
      for (const auto& entry : node.entries) {
        out += between;
        quote(entry.key, out);
        out += ": ";
        write(entry.value, out);
        between = ", ";
      }
      out += '}';
      break;
  }
}

std::string written(const yaml::Node& node) {
  std::string out;
  write(node, out);
  return out;
}

/// Keys of a card and their values as YAML, in the order of first writing.
class Keys {
 public:
  void set(std::string_view key, std::string value) {
    const auto at = find(key);
    if (at == keys_.end())
      keys_.emplace_back(key, std::move(value));
    else
      at->second = std::move(value);
  }
  void remove(std::string_view key) {
    if (const auto at = find(key); at != keys_.end()) keys_.erase(at);
  }
  [[nodiscard]] std::string text() const {
    std::string out;
    for (const auto& [key, value] : keys_) out += key + ": " + value + "\n";
    return out;
  }

 private:
  std::vector<std::pair<std::string, std::string>>::iterator find(std::string_view key) {
    return std::find_if(keys_.begin(), keys_.end(), [&](const auto& k) { return k.first == key; });
  }
  std::vector<std::pair<std::string, std::string>> keys_;
};

Keys keys_of(const yaml::Node& base) {
  Keys keys;
  for (const auto& entry : base.entries)
    if (entry.key != "base") keys.set(entry.key, written(entry.value));
  return keys;
}

/// The base's steps with one more sentence.
std::string with_sentence(const yaml::Node& base, std::string_view sentence) {
  std::string steps = "[";
  if (const auto* before = base.find("steps"); before != nullptr)
    for (const auto& step : before->items) steps += written(step) + ", ";
  quote(sentence, steps);
  return steps + "]";
}

bool read_options(const yaml::Node& change, CheckOptions& options) {
  if (const auto* today = change.find("today")) options.today = std::string(today->text);
  if (const auto* kitchen = change.find("kitchen")) {
    auto read = Kitchen::read("kitchen.yaml", written(*kitchen));
    if (!std::holds_alternative<Kitchen>(read)) return false;
    options.kitchen = std::get<Kitchen>(read);
  }
  return true;
}

}  // namespace

std::string base_card(const yaml::Node& base) { return keys_of(base).text(); }

std::optional<ExampleCard> make_card(const checks::Example& example, const std::vector<yaml::Node>& bases) {
  if (const auto* page = example.change.is_map() ? example.change.find("page") : nullptr)
    return ExampleCard{std::string(page->text), "example.txt", {}};
  const auto base = std::find_if(bases.begin(), bases.end(),
                                 [&](const auto& b) { return b.find("base")->text == example.base; });
  if (base == bases.end()) return std::nullopt;
  Keys keys = keys_of(*base);
  ExampleCard made;
  if (example.change.is_scalar()) keys.set("steps", with_sentence(*base, example.change.text));
  for (const auto& entry : example.change.entries) {
    if (entry.key == "on" || entry.key == "kitchen" || entry.key == "today") continue;
    if (entry.value.is_null())
      keys.remove(entry.key);
    else
      keys.set(entry.key, written(entry.value));
  }
  if (!read_options(example.change, made.options)) return std::nullopt;
  made.card = keys.text();
  return made;
}

}  // namespace sealworthy::test
