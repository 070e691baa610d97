#include <libxml/HTMLparser.h>
#include <libxml/parser.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <mutex>
#include <optional>
#include <string>

#include "json/document.hpp"
#include "recipe/fields.hpp"
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

bool is(const xmlChar* a, std::string_view b) {
  return a != nullptr && std::string_view(reinterpret_cast<const char*>(a)) == b;
}

/// Elements that part lines of text.
bool parts_lines(std::string_view name) {
  static constexpr std::array<std::string_view, 17> blocks{"p",  "li", "br", "div", "h1",     "h2",
                                                           "h3", "h4", "h5", "h6",  "tr",     "ol",
                                                           "ul", "dd", "dt", "td",  "section"};
  return std::find(blocks.begin(), blocks.end(), name) != blocks.end();
}

/// Takes the parser's events of one page.
class PageReader {
 public:
  explicit PageReader(std::string_view page) : page_(page), places_(page) {}

  std::vector<Piece> read() {
    static std::once_flag once;
    std::call_once(once, [] { xmlInitParser(); });
    htmlParserCtxtPtr parser = htmlNewParserCtxt();
    if (parser == nullptr) throw std::bad_alloc();
    parser_ = parser;
    htmlSAXHandler events{};
    events.startElement = [](void* self, const xmlChar* name, const xmlChar** attributes) {
      static_cast<PageReader*>(self)->guard([&](PageReader& r) { r.start(name, attributes); });
    };
    events.endElement = [](void* self, const xmlChar* name) {
      static_cast<PageReader*>(self)->guard([&](PageReader& r) { r.end(name); });
    };
    events.characters = [](void* self, const xmlChar* text, int size) {
      static_cast<PageReader*>(self)->guard([&](PageReader& r) {
        r.characters({reinterpret_cast<const char*>(text), static_cast<std::size_t>(std::max(size, 0))});
      });
    };
    events.ignorableWhitespace = events.characters;
    std::memcpy(parser->sax, &events, sizeof events);
    parser->userData = this;
    constexpr int options = HTML_PARSE_RECOVER | HTML_PARSE_NOERROR | HTML_PARSE_NOWARNING |
                            HTML_PARSE_NONET | HTML_PARSE_IGNORE_ENC | HTML_PARSE_NOIMPLIED;
    const xmlDocPtr document =
        htmlCtxtReadMemory(parser, page_.data(), static_cast<int>(page_.size()), nullptr, "UTF-8", options);
    if (document != nullptr) xmlFreeDoc(document);
    htmlFreeParserCtxt(parser);
    if (failed_) throw std::bad_alloc();
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

  /// No exception may pass through the parser, which is C.
  template <class Work>
  void guard(Work&& work) noexcept {
    try {
      if (!failed_ && !stopped_) work(*this);
    } catch (...) {
      failed_ = true;
      xmlStopParser(parser_);
    }
  }

  /// The byte that the parser has come to.
  [[nodiscard]] std::size_t offset() const {
    const xmlParserInput* input = parser_->input;
    if (input == nullptr || input->cur == nullptr) return last_;
    const std::size_t at = static_cast<std::size_t>(input->cur - input->base) + input->consumed;
    return std::min(at, page_.size());
  }

  static std::string_view attribute(const xmlChar** attributes, std::string_view name) {
    if (attributes == nullptr) return {};
    for (const xmlChar** a = attributes; *a != nullptr; a += 2)
      if (is(*a, name)) return a[1] == nullptr ? name : std::string_view(reinterpret_cast<const char*>(a[1]));
    return {};
  }

  void start(const xmlChar* raw_name, const xmlChar** attributes) {
    const std::string_view name(reinterpret_cast<const char*>(raw_name));
    const std::size_t tag_end = page_.find('>', offset());
    last_ = tag_end == std::string_view::npos ? page_.size() : tag_end + 1;
    if (++depth_ > deepest) {
      stop("This page is nested too deep to be read.", "");
      return;
    }
    if (name == "script" && attribute(attributes, "type").find("ld+json") != std::string_view::npos) script();
    const std::string_view type = attribute(attributes, "itemtype");
    const bool scope = !attribute(attributes, "itemscope").empty() || !type.empty();
    if (!recipe_depth_ && scope && type.ends_with("schema.org/Recipe")) {
      recipe_depth_ = depth_;
      page_of_recipe_ = Page{};
      page_of_recipe_.title.at = places_.at(last_);
      kept_ = std::make_shared<Kept>();
      return;
    }
    if (!recipe_depth_) return;
    if (capture_) {
      if (parts_lines(name)) capture_->segments.emplace_back();
      return;
    }
    const std::string_view property = attribute(attributes, "itemprop");
    if (foreign_depth_) return;
    if (scope && !wanted(property)) {
      foreign_depth_ = depth_;  // an author, a rating: their names are not the recipe's
      return;
    }
    if (!wanted(property)) return;
    const std::string_view content = attribute(attributes, "content");
    if (!content.empty() && name == "meta") {
      keep(property, content, last_);
    } else {
      capture_ = Capture{std::string(property), depth_, {}};
      capture_->segments.emplace_back();
    }
  }

  void end(const xmlChar* raw_name) {
    const std::string_view name(reinterpret_cast<const char*>(raw_name));
    if (capture_ && capture_->depth == depth_) {
      for (const Segment& segment : capture_->segments)
        keep(capture_->property, segment.text, segment.offset);
      capture_.reset();
    } else if (capture_ && parts_lines(name)) {
      capture_->segments.emplace_back();
    }
    if (foreign_depth_ == depth_) foreign_depth_ = 0;
    if (recipe_depth_ == depth_) finish_recipe();
    --depth_;
    last_ = offset();
  }

  void characters(std::string_view text) {
    if (capture_) {
      Segment& segment = capture_->segments.back();
      const std::size_t first = text.find_first_not_of(" \t\r\n");
      if (segment.text.empty() && first != std::string_view::npos) segment.offset = last_ + first;
      if (!segment.text.empty() || first != std::string_view::npos) segment.text += text;
    }
    last_ = offset();
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
      stop("This page holds more recipes than are read of one page.", "Split it into several pages.");
    }
  }
  void stop(std::string message, std::string suggestion) {
    stopped_ = true;
    pieces_.emplace_back(BadPage{{}, {places_.at(last_), std::move(message), std::move(suggestion)}});
    xmlStopParser(parser_);
  }

  /// The text of a script element stands in the page as it is.
  void script() {
    const std::size_t begin = last_;
    std::size_t end = begin;
    while (end < page_.size() && !(page_[end] == '<' && lowered(page_.substr(end, 8)) == "</script")) ++end;
    const std::string_view text = page_.substr(begin, end - begin);
    if (text.find("Recipe") == std::string_view::npos) return;
    if (++scripts_ > most_scripts)
      return stop("This page holds more scripts with recipes than are read of one page.",
                  "Split it into several pages.");
    const yaml::DocumentOrError document =
        json::read_document(text, 1, places_.at(begin), {most_bytes(FileKind::html), 64, 1'000'000});
    if (const auto* bad = std::get_if<yaml::BadDocument>(&document)) {
      pieces_.emplace_back(BadPage{{}, bad->error});
      return;
    }
    for (Page& page : schema_recipes(std::get<yaml::Document>(document)))
      if (!stopped_) add(std::move(page));
  }

  std::string_view page_;
  text::Locator places_;
  htmlParserCtxtPtr parser_ = nullptr;
  std::vector<Piece> pieces_;
  Page page_of_recipe_;
  std::shared_ptr<Kept> kept_;
  std::optional<Capture> capture_;
  int depth_ = 0, recipe_depth_ = 0, foreign_depth_ = 0;
  std::size_t last_ = 0;  ///< past the last event
  std::size_t scripts_ = 0;
  bool failed_ = false, stopped_ = false;
};

}  // namespace

std::vector<Piece> read_html(std::string_view text) {
  const bool wide = text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF");
  if (!wide && !may_hold_recipe(text)) return {};
  std::string room;
  const std::string_view utf8 = as_utf8(text, room);
  if (utf8.data() == nullptr)
    return {BadPage{{},
                    {{1, 1},
                     "These bytes are no UTF-8 text, and the page names no other encoding.",
                     "Save the page as UTF-8."}}};
  if (wide && !may_hold_recipe(utf8)) return {};
  return PageReader(utf8).read();
}

}  // namespace sealworthy::recipe
