#include <algorithm>
#include <array>
#include <optional>

#include "recipe/fields.hpp"
#include "recipe/plain_words.hpp"
#include "recipe/reader.hpp"
#include "recipe/schema_org.hpp"
#include "recipe/text_lines.hpp"
#include "text/nearest.hpp"

namespace sealworthy::recipe {
namespace {

using yaml::Entry;
using yaml::Node;

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// Where an HTML tag that begins at `i` ends, with all that a script or a style sheet holds; `i` if none
/// does.
std::size_t end_of_tag(std::string_view text, std::size_t i) {
  const std::string_view rest = text.substr(i);
  const bool tag = rest.size() > 2 && (letter(rest[1]) || (rest[1] == '/' && letter(rest[2])));
  constexpr std::size_t longest = 4096;
  const std::size_t end = tag ? rest.substr(0, longest).find('>') : std::string_view::npos;
  if (end == std::string_view::npos) return i;
  for (const std::string_view name : {"script", "style"}) {
    if (lowered(rest.substr(1, name.size())) != name) continue;
    const std::size_t close = lowered(rest).find("</" + std::string(name));
    const std::size_t past = close == std::string::npos ? std::string::npos : rest.find('>', close);
    return past == std::string::npos ? text.size() : i + past + 1;
  }
  return i + end + 1;
}

/// What Markdown's marks leave: the same bytes, with spaces for what is no word.
void blank_marks(std::string& text, std::size_t from) {
  bool comment = false;
  for (std::size_t i = from; i < text.size(); ++i) {
    const std::string_view rest = std::string_view(text).substr(i);
    if (!comment && rest.starts_with("<!--")) comment = true;
    if (comment) {
      if (rest.starts_with("-->")) {
        comment = false;
        text.replace(i, 3, "   ");
      } else if (text[i] != '\n' && text[i] != '\r') {
        text[i] = ' ';
      }
      continue;
    }
    if (text[i] == '<') {
      const std::size_t end = end_of_tag(text, i);
      for (std::size_t k = i; k < end; ++k)
        if (text[k] != '\n' && text[k] != '\r') text[k] = ' ';
      if (end > i) i = end - 1;
    } else if (rest.starts_with("](")) {  // the address of a link
      const std::size_t end = std::min(rest.find_first_of(")\n"), rest.size());
      for (std::size_t k = 0; k < end; ++k) text[i + k] = ' ';
      if (i + end < text.size() && text[i + end] == ')') text[i + end] = ' ';
    } else if (text[i] == '[' || text[i] == '`' || rest.starts_with("**") || rest.starts_with("__")) {
      text[i] = ' ';
      if (rest.starts_with("**") || rest.starts_with("__")) text[++i] = ' ';
    } else if (text[i] == '*' || text[i] == '_') {
      const bool bullet = rest.size() > 1 && rest[1] == ' ';
      if (!bullet) text[i] = ' ';
    }
  }
}

std::vector<TextLine> split_lines(std::string_view text) {
  std::vector<TextLine> lines;
  while (!text.empty()) {
    const std::size_t end = text.find_first_of("\r\n");
    std::string_view line = trimmed(text.substr(0, end));
    const std::size_t past =
        end == std::string_view::npos ? text.size() : end + (text.substr(end, 2) == "\r\n" ? 2 : 1);
    text.remove_prefix(past);
    const bool underline = line.size() >= 3 && line.find_first_not_of("=-") == std::string_view::npos;
    if (underline && !lines.empty() && lines.back().kind == TextLine::Kind::plain) {
      lines.back().kind = TextLine::Kind::heading;
      lines.back().level = line.front() == '=' ? 1 : 2;
      continue;
    }
    if (line.empty() || underline || line.starts_with("~~~")) {
      lines.push_back({TextLine::Kind::blank, 0, {}});
      continue;
    }
    if (line.starts_with("{%") || line.starts_with("{{")) {
      lines.push_back({TextLine::Kind::markup, 0, line});
      continue;
    }
    if (line.starts_with('#')) {
      const std::size_t level = std::min(line.find_first_not_of('#'), line.size());
      if (level < line.size() && line[level] == ' ') {
        lines.push_back({TextLine::Kind::heading, static_cast<int>(level), trimmed(line.substr(level))});
        continue;
      }
    }
    while (line.starts_with("> ")) line = trimmed(line.substr(2));
    bool item = false;
    line = without_bullet(line, item);
    if (item && (line.starts_with("[ ] ") || line.starts_with("[x] "))) line = trimmed(line.substr(4));
    lines.push_back({item ? TextLine::Kind::item : TextLine::Kind::plain, 0, line});
  }
  return lines;
}

/// Where the YAML between two lines of three dashes ends: the byte of the closing line. nullopt: the page has
/// no front matter.
std::optional<std::size_t> front_matter(std::string_view text) {
  if (!text.starts_with("---\n") && !text.starts_with("---\r\n")) return std::nullopt;
  for (std::size_t at = text.find('\n'); at != std::string_view::npos; at = text.find('\n', at + 1)) {
    const std::string_view line = text.substr(at + 1, 5);
    if (line.starts_with("---\n") || line.starts_with("---\r\n") || line == "---" ||
        line.starts_with("...\n"))
      return at + 1;
  }
  return std::nullopt;
}

/// A card in the front matter, with the site's own keys left out.
struct OwnKeys {
  std::shared_ptr<const void> document;
  std::vector<Entry> entries;
  std::vector<Node> steps;
  Node root;
};

bool of_the_card(std::string_view key) {
  const auto known = card_keys();
  if (std::find(known.begin(), known.end(), key) != known.end()) return true;
  // One slip away from a key of the card: read_card tells so. "title" and the like are the site's.
  return std::any_of(known.begin(), known.end(), [&](std::string_view k) {
    return k.size() >= 6 && text::edit_distance(key, k, 1) <= 1;
  });
}

class MarkdownPage {
 public:
  MarkdownPage(std::string_view text, const TextWords& words)
      : words_(words), source_(std::make_shared<TextSource>()) {
    source_->text = text;
  }

  std::vector<Piece> read() {
    std::size_t body = 0;
    if (const auto end = front_matter(source_->text)) {
      body = source_->text.find('\n', *end);
      body = body == std::string::npos ? source_->text.size() : body + 1;
      const auto documents = yaml::read_documents(std::string_view(source_->text).substr(0, *end));
      if (!documents.empty()) {
        if (const auto* bad = std::get_if<yaml::BadDocument>(&documents.front())) {
          // A site's front matter may hold what a card may not; it matters only where a recipe is in it.
          if (names_a_recipe(std::string_view(source_->text).substr(0, *end)))
            return {BadPage{{}, bad->error}};
        } else {
          front_ = std::get<yaml::Document>(documents.front());
        }
      }
    }
    blank_marks(source_->text, body);
    lines_ = split_lines(std::string_view(source_->text).substr(body));
    if (front_ && front_->root().is_map()) {
      auto pieces = from_front();
      if (!pieces.empty()) return pieces;
    }
    return from_body();
  }

 private:
  static bool names_a_recipe(std::string_view front) {
    return front.find("\nrecipe") != std::string_view::npos ||
           front.find("\ncard:") != std::string_view::npos ||
           front.find("\ningredients:") != std::string_view::npos;
  }

  std::vector<Piece> from_front() {
    const Node& root = front_->root();
    std::vector<Piece> pieces;
    if (const Node* card = root.find("card")) {
      int number = 0;
      if (card->is_map()) pieces.emplace_back(yaml::Document(front_->arena(), card, 1));
      for (const Node& item : card->items)
        pieces.emplace_back(yaml::Document(front_->arena(), &item, ++number));
      if (!pieces.empty()) return pieces;
    }
    const Node* recipe = root.find("recipe");
    const Node* ingredients = root.find("ingredients");
    if (recipe != nullptr && recipe->is_scalar() && ingredients != nullptr) {
      pieces.emplace_back(own_card());
      return pieces;
    }
    const Node* fields = &root;
    for (const std::string_view key : {"recipe", "schema"})
      if (const Node* inner = root.find(key); inner != nullptr && inner->is_map()) fields = inner;
    if (fields->find("recipeIngredient") == nullptr && fields->find("ingredients") == nullptr) return pieces;
    Page page = schema_page(*fields, front_->arena());
    if (page.title.text.empty()) page.title = front_title();
    if (page.directions.empty()) {
      page.directions = paragraphs_of_lines(lines_, *source_, words_);
      page.arena = std::make_shared<std::pair<std::shared_ptr<const void>, std::shared_ptr<const void>>>(
          page.arena, source_);
    }
    pieces.emplace_back(std::move(page));
    return pieces;
  }

  yaml::Document own_card() {
    auto kept = std::make_shared<OwnKeys>();
    kept->document = std::make_shared<std::pair<std::shared_ptr<const void>, std::shared_ptr<const void>>>(
        front_->arena(), source_);
    kept->root = front_->root();
    bool steps = false;
    for (const Entry& entry : front_->root().entries) {
      if (of_the_card(entry.key)) kept->entries.push_back(entry);
      steps = steps || entry.key == "steps";
    }
    if (!steps) add_body_as_steps(*kept);
    kept->root.entries = kept->entries;
    const Node* root = &kept->root;
    return {std::move(kept), root, 1};
  }
  void add_body_as_steps(OwnKeys& kept) {
    for (const PageText& text : paragraphs_of_lines(lines_, *source_, words_)) {
      Node step;
      step.kind = Node::Kind::scalar;
      step.quoted = true;
      step.at = text.at;
      step.text = text.text;
      kept.steps.push_back(step);
    }
    if (kept.steps.empty()) return;
    Node list;
    list.kind = Node::Kind::sequence;
    list.at = kept.steps.front().at;
    list.items = kept.steps;
    kept.entries.push_back({"steps", list.at, list});
  }

  [[nodiscard]] PageText front_title() const {
    if (!front_ || !front_->root().is_map()) return {};
    for (const std::string_view key : {"title", "name", "headline"})
      if (const Node* node = front_->root().find(key); node != nullptr && node->is_scalar())
        return {node->text, node->at, false};
    return {};
  }

  std::vector<Piece> from_body() {
    std::vector<Piece> pieces;
    auto pages = pages_of_lines(lines_, source_, words_, front_title());
    for (Page& page : pages) {
      if (front_) {
        page.arena = std::make_shared<std::pair<std::shared_ptr<const void>, std::shared_ptr<const void>>>(
            page.arena, front_->arena());
        add_about(page);
      }
      pieces.emplace_back(std::move(page));
    }
    return pieces;
  }
  void add_about(Page& page) const {
    for (const std::string_view key : {"description", "tags", "categories", "category", "keywords"}) {
      const Node* node = front_->root().is_map() ? front_->root().find(key) : nullptr;
      if (node == nullptr) continue;
      if (node->is_scalar()) page.about.push_back({node->text, node->at, false});
      for (const Node& item : node->items)
        if (item.is_scalar()) page.about.push_back({item.text, item.at, false});
    }
  }

  const TextWords& words_;
  std::shared_ptr<TextSource> source_;
  std::optional<yaml::Document> front_;
  std::vector<TextLine> lines_;
};

}  // namespace

std::vector<Piece> read_markdown(std::string_view text, const TextWords& words) {
  std::string room;
  std::string_view utf8 = as_utf8(text, room);
  if (utf8.data() == nullptr && !text.empty())
    return {BadPage{{}, {{1, 1}, "These bytes are no UTF-8 text.", "Save the file as UTF-8."}}};
  if (utf8.starts_with("\xEF\xBB\xBF")) utf8.remove_prefix(3);
  return MarkdownPage(utf8, words).read();
}

}  // namespace sealworthy::recipe
