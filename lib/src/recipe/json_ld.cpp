#include <algorithm>
#include <initializer_list>
#include <string>

#include "recipe/fields.hpp"
#include "recipe/plain_words.hpp"
#include "recipe/schema_org.hpp"

namespace sealworthy::recipe {
namespace {

using yaml::Node;

bool names_recipe(std::string_view type) {
  const std::size_t slash = type.find_last_of("/:#");
  return (slash == std::string_view::npos ? type : type.substr(slash + 1)) == "Recipe";
}

/// The values of a list or a map that may hold more, so that the first is taken first.
void push_children(const Node& node, std::vector<const Node*>& open) {
  const std::size_t first = open.size();
  for (const Node& item : node.items) open.push_back(&item);
  for (const yaml::Entry& entry : node.entries) open.push_back(&entry.value);
  std::reverse(open.begin() + static_cast<std::ptrdiff_t>(first), open.end());
}

class PageMaker {
 public:
  PageMaker(const Node& map, std::shared_ptr<const void> arena) : map_(map) {
    kept_->document = std::move(arena);
  }

  Page make() {
    Page page;
    if (const Node* name = first({"name", "headline", "title"})) page.title = whole(*name);
    // A site may fill both, one for old readers: what is told twice counts once.
    for (const std::string_view key : {"recipeIngredient", "ingredients", "recipeingredient"}) {
      std::vector<PageText> lines;
      if (const Node* node = map_.find(key)) add(*node, lines);
      for (const PageText& line : lines)
        if (key == "recipeIngredient" || !holds(page.ingredients, line)) page.ingredients.push_back(line);
    }
    if (const Node* steps = first({"recipeInstructions", "instructions", "directions", "steps", "method"}))
      add(*steps, page.directions);
    if (const Node* yield = first({"recipeYield", "yield", "yields", "makes"})) add(*yield, page.yields);
    for (const std::string_view key : {"description", "keywords", "recipeCategory", "cookingMethod"})
      if (const Node* node = map_.find(key)) add(*node, page.about);
    page.arena = kept_;
    return page;
  }

 private:
  [[nodiscard]] const Node* first(std::initializer_list<std::string_view> keys) const {
    for (const std::string_view key : keys)
      if (const Node* node = map_.find(key); node != nullptr && !node->is_null()) return node;
    return nullptr;
  }

  static bool holds(const std::vector<PageText>& list, const PageText& line) {
    return std::any_of(list.begin(), list.end(), [&](const PageText& one) { return one.text == line.text; });
  }

  std::string_view plain(const Node& scalar) {
    return has_markup(scalar.text) ? kept_->compose(without_markup(scalar.text)) : scalar.text;
  }

  PageText whole(const Node& node) {
    if (!node.is_scalar()) return {{}, node.at, false};
    return {trimmed(plain(node)), node.at, false};
  }

  void add_lines(const Node& scalar, std::vector<PageText>& out) {
    std::string_view rest = plain(scalar);
    while (!rest.empty()) {
      const std::size_t end = rest.find('\n');
      if (const auto line = trimmed(rest.substr(0, end)); !line.empty())
        out.push_back({line, scalar.at, false});
      rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
    }
  }

  /// Texts of a tree in the order in which they stand: of a section its name and its steps, of a step its
  /// name, unless its text says the same, and its text, of a quantity its value and unit; of a map with none
  /// of these all that it says.
  void add(const Node& root, std::vector<PageText>& out) {
    std::vector<const Node*> open{&root};
    while (!open.empty()) {
      const Node& node = *open.back();
      open.pop_back();
      if (node.is_scalar()) {
        add_lines(node, out);
      } else if (node.is_sequence()) {
        push_children(node, open);
      } else if (node.is_map()) {
        const Node* value = node.find("value");
        const Node* items = node.find("itemListElement");
        if (items == nullptr) items = node.find("steps");
        const Node* text = node.find("text");
        const Node* name = node.find("name");
        if (value != nullptr && value->is_scalar()) {
          const Node* unit = node.find("unitText");
          const std::string_view words =
              unit != nullptr && unit->is_scalar() ? unit->text : std::string_view();
          out.push_back(
              {kept_->compose(std::string(value->text) + " " + std::string(words)), value->at, false});
        }
        if (items != nullptr) open.push_back(items);
        if (text != nullptr) open.push_back(text);
        if (name != nullptr && !says_again(text, *name)) open.push_back(name);
        if (const Node* item = node.find("item"); item != nullptr && text == nullptr && name == nullptr)
          open.push_back(item);
        else if (value == nullptr && items == nullptr && text == nullptr && name == nullptr)
          add_all(node, out);
      }
    }
  }

  /// Sites cut a step's name out of its text, often with dots behind it.
  static bool says_again(const Node* text, const Node& name) {
    if (text == nullptr || !text->is_scalar() || !name.is_scalar()) return false;
    std::string_view words = trimmed(name.text);
    while (words.ends_with('.') || words.ends_with("\xE2\x80\xA6"))
      words.remove_suffix(words.ends_with('.') ? 1 : 3);
    return text->text.find(trimmed(words)) != std::string_view::npos;
  }

  /// {"food": "corn", "quantity": "2 cups"}: keys of nobody's schema, in one line.
  void add_all(const Node& map, std::vector<PageText>& out) {
    std::string words;
    for (const yaml::Entry& entry : map.entries) {
      const bool own = entry.key.starts_with('@') || entry.key == "url" || entry.key == "image";
      if (!own && entry.value.is_scalar()) words.append(words.empty() ? "" : ", ").append(plain(entry.value));
    }
    if (!words.empty()) out.push_back({kept_->compose(std::move(words)), map.at, false});
  }

  const Node& map_;
  std::shared_ptr<Kept> kept_ = std::make_shared<Kept>();
};

}  // namespace

bool is_schema_recipe(const yaml::Node& node) {
  const Node* type = node.is_map() ? node.find("@type") : nullptr;
  if (type == nullptr) return false;
  if (type->is_scalar()) return names_recipe(type->text);
  for (const Node& item : type->items)
    if (item.is_scalar() && names_recipe(item.text)) return true;
  return false;
}

Page schema_page(const yaml::Node& map, const std::shared_ptr<const void>& arena) {
  Page page = PageMaker(map, arena).make();
  if (page.title.at.line == 0) page.title.at = map.at;
  return page;
}

std::vector<Page> schema_recipes(const yaml::Document& document) {
  std::vector<Page> pages;
  std::vector<const Node*> open{&document.root()};
  while (!open.empty()) {
    const Node& node = *open.back();
    open.pop_back();
    if (is_schema_recipe(node)) {
      pages.push_back(schema_page(node, document.arena()));
      continue;
    }
    push_children(node, open);
  }
  return pages;
}

}  // namespace sealworthy::recipe
