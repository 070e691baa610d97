#include <algorithm>
#include <array>
#include <cstring>
#include <optional>
#include <string>

#include "json/document.hpp"
#include "recipe/fields.hpp"
#include "recipe/html_text.hpp"
#include "recipe/html_walk.hpp"
#include "recipe/plain_words.hpp"
#include "recipe/reader.hpp"
#include "recipe/schema_org.hpp"
#include "text/locator.hpp"

namespace sealworthy::recipe {
namespace {

constexpr int deepest = 400;               ///< open elements; pages of people have fewer than a hundred
constexpr std::size_t most_recipes = 200;  ///< of one page
constexpr std::size_t most_scripts = 200;

/// Whether a page may hold a schema.org recipe: the type's name in quotes or behind a slash. Most pages of a
/// site hold none and are passed over by this alone.
bool may_hold_recipe(std::string_view page) {
  constexpr std::string_view name = "Recipe";
  const char* at = page.data();
  const char* const end = page.data() + page.size();
  while (at < end) {
    const void* found = memmem(at, static_cast<std::size_t>(end - at), name.data(), name.size());
    if (found == nullptr) return false;
    at = static_cast<const char*>(found) + name.size();
    const char before = found == page.data() ? ' ' : static_cast<const char*>(found)[-1];
    const char after = at < end ? *at : ' ';
    const bool ends = after == '"' || after == '\'' || after == '/' || after == ' ' || after == '>';
    if (ends && (before == '"' || before == '\'' || before == '/' || before == ':' || before == '#'))
      return true;
  }
  return false;
}

/// Finds the schema.org recipes of one page: JSON-LD in scripts, and microdata.
class PageReader : private HtmlWalk {
 public:
  /// `tell_bad_scripts`: a script that can't be read may be what matters on this page.
  PageReader(std::string_view page, bool tell_bad_scripts)
      : HtmlWalk(page), places_(page), tell_bad_scripts_(tell_bad_scripts) {}

  std::vector<Piece> read() {
    walk();
    finish_recipe();
    return std::move(pieces_);
  }

 private:
  struct Segment {
    std::string text;
    std::size_t offset = 0;
  };
  struct Capture {
    std::string property;
    int depth = 0;
    std::vector<Segment> segments;
  };

  void start(std::string_view name, const Attributes& attributes) override {
    if (depth() > deepest) {
      refuse("This page is nested too deep to be read.", "");
      return;
    }
    if (name == "script" && attributes["type"].find("ld+json") != std::string_view::npos) script();
    const std::string_view type = attributes["itemtype"];
    const bool scope = !attributes["itemscope"].empty() || !type.empty();
    if (!recipe_depth_ && scope && type.ends_with("schema.org/Recipe")) {
      recipe_depth_ = depth();
      page_of_recipe_ = Page{};
      page_of_recipe_.title.at = places_.at(place());
      kept_ = std::make_shared<Kept>();
      return;
    }
    if (!recipe_depth_) return;
    if (capture_) {
      if (parts_lines(name)) capture_->segments.emplace_back();
      return;
    }
    const std::string_view property = attributes["itemprop"];
    if (foreign_depth_) return;
    if (scope && !wanted(property)) {
      foreign_depth_ = depth();  // an author, a rating: their names are not the recipe's
      return;
    }
    if (!wanted(property)) return;
    const std::string_view content = attributes["content"];
    if (!content.empty() && name == "meta") {
      keep(property, content, place());
    } else {
      capture_ = Capture{std::string(property), depth(), {}};
      capture_->segments.emplace_back();
    }
  }

  void end(std::string_view name) override {
    if (capture_ && capture_->depth == depth()) {
      for (const Segment& segment : capture_->segments)
        keep(capture_->property, segment.text, segment.offset);
      capture_.reset();
    } else if (capture_ && parts_lines(name)) {
      capture_->segments.emplace_back();
    }
    if (foreign_depth_ == depth()) foreign_depth_ = 0;
    if (recipe_depth_ == depth()) finish_recipe();
  }

  void characters(std::string_view text) override {
    if (!capture_) return;
    Segment& segment = capture_->segments.back();
    const std::size_t first = text.find_first_not_of(" \t\r\n");
    if (segment.text.empty() && first != std::string_view::npos) segment.offset = place() + first;
    if (!segment.text.empty() || first != std::string_view::npos) segment.text += text;
  }

  static bool wanted(std::string_view property) {
    static constexpr std::array<std::string_view, 8> properties{
        "name",        "recipeIngredient", "ingredients", "recipeInstructions",
        "recipeYield", "description",      "keywords",    "recipeCategory"};
    return std::find(properties.begin(), properties.end(), property) != properties.end();
  }

  void keep(std::string_view property, std::string_view text, std::size_t offset) {
    std::string words;
    for (const char c : text) {
      const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
      if (!blank)
        words += c;
      else if (!words.empty() && words.back() != ' ')
        words += ' ';
    }
    while (words.ends_with(' ')) words.pop_back();
    if (words.empty()) return;
    Page& page = page_of_recipe_;
    const PageText one{kept_->compose(std::move(words)), places_.at(offset), false};
    if (property == "name") {
      if (page.title.text.empty()) page.title = one;
    } else if (property == "recipeIngredient" || property == "ingredients") {
      page.ingredients.push_back(one);
    } else if (property == "recipeInstructions") {
      page.directions.push_back(one);
    } else if (property == "recipeYield") {
      page.yields.push_back(one);
    } else {
      page.about.push_back(one);
    }
  }

  void finish_recipe() {
    if (!recipe_depth_) return;
    recipe_depth_ = 0;
    capture_.reset();
    page_of_recipe_.arena = kept_;
    const Page& page = page_of_recipe_;
    if (!page.ingredients.empty() || !page.directions.empty()) add(std::move(page_of_recipe_));
    page_of_recipe_ = Page{};
  }

  void add(Page page) {
    if (pieces_.size() < most_recipes) {
      pieces_.emplace_back(std::move(page));
    } else {
      refuse("This page holds more recipes than are read of one page.", "Split it into several pages.");
    }
  }
  void refuse(std::string message, std::string suggestion) {
    pieces_.emplace_back(BadPage{{}, {places_.at(place()), std::move(message), std::move(suggestion)}});
    stop();
  }

  /// The text of a script element stands in the page as it is.
  void script() {
    const std::size_t begin = place();
    std::size_t end = begin;
    while (end < page().size() && !(page()[end] == '<' && lowered(page().substr(end, 8)) == "</script"))
      ++end;
    const std::string_view text = page().substr(begin, end - begin);
    if (text.find("Recipe") == std::string_view::npos) return;
    if (++scripts_ > most_scripts)
      return refuse("This page holds more scripts with recipes than are read of one page.",
                    "Split it into several pages.");
    const yaml::DocumentOrError document =
        json::read_document(text, 1, places_.at(begin), {most_bytes(FileKind::html), 64, 1'000'000});
    if (const auto* bad = std::get_if<yaml::BadDocument>(&document)) {
      if (tell_bad_scripts_) pieces_.emplace_back(BadPage{{}, bad->error});
      return;
    }
    for (Page& page : schema_recipes(std::get<yaml::Document>(document)))
      if (!stopped()) add(std::move(page));
  }

  text::Locator places_;
  bool tell_bad_scripts_;
  std::vector<Piece> pieces_;
  Page page_of_recipe_;
  std::shared_ptr<Kept> kept_;
  std::optional<Capture> capture_;
  int recipe_depth_ = 0, foreign_depth_ = 0;  ///< of the open elements; 0: none
  std::size_t scripts_ = 0;
};

}  // namespace

std::vector<Piece> read_html(std::string_view text, const TextWords& words) {
  const bool wide = text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF");
  if (!wide && !words.all && !may_hold_recipe(text) && !words.canning(text)) return {};
  std::string room;
  const std::string_view utf8 = as_utf8(text, room);
  if (utf8.data() == nullptr)
    return {BadPage{{},
                    {{1, 1},
                     "These bytes are no UTF-8 text, and the page names no other encoding.",
                     "Save the page as UTF-8."}}};
  const bool matters = words.all || words.canning(utf8);
  std::vector<Piece> pieces;
  if (may_hold_recipe(utf8)) pieces = PageReader(utf8, matters || words.named).read();
  if (pieces.empty() && matters) pieces = read_html_text(utf8, words);
  return pieces;
}

}  // namespace sealworthy::recipe
