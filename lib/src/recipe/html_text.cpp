#include "recipe/html_text.hpp"

#include <algorithm>
#include <array>
#include <memory>
#include <string>
#include <utility>

#include "quantity/amount.hpp"
#include "recipe/fields.hpp"
#include "recipe/html_walk.hpp"
#include "recipe/text_lines.hpp"
#include "text/locator.hpp"

namespace sealworthy::recipe {
namespace {

constexpr std::size_t longest_heading = 60;
constexpr int deepest = 400;  ///< open elements; pages of people have fewer than a hundred

template <std::size_t N>
bool one_of(std::string_view word, const std::array<std::string_view, N>& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// What is not the page's own text.
bool beside_the_text(std::string_view element) {
  static constexpr std::array<std::string_view, 17> elements{
      "nav",      "script", "style", "footer", "aside", "noscript", "select", "button", "template",
      "textarea", "iframe", "svg",   "object", "video", "audio",    "head",   "dialog"};
  return one_of(element, elements);
}

/// True if one of the names of a `class` or `id` is among `known`.
template <std::size_t N>
bool called_one_of(std::string_view names, const std::array<std::string_view, N>& known) {
  while (!names.empty()) {
    const std::size_t end = std::min(names.find_first_of(" \t\r\n"), names.size());
    if (one_of(lowered(names.substr(0, end)), known)) return true;
    names.remove_prefix(std::min(end + 1, names.size()));
  }
  return false;
}

/// What sites call the part that holds their readers' comments.
bool of_comments(std::string_view names) {
  static constexpr std::array<std::string_view, 10> known{
      "comment",      "comments",     "comment-list",    "commentlist",   "comments-area",
      "comment-body", "comment-form", "comment-respond", "disqus_thread", "comments-section"};
  return called_one_of(names, known);
}

/// What sites put into an article's asides and footers that is no part of it. Any other element of these
/// names may hold the recipe itself.
bool of_the_site(std::string_view names) {
  static constexpr std::array<std::string_view, 12> known{
      "related", "related-posts", "share", "sharing", "social",      "newsletter",
      "sidebar", "widget",        "toc",   "promo",   "breadcrumbs", "author-box"};
  return called_one_of(names, known);
}

/// "h3" -> 3; 0: no heading.
int heading_level(std::string_view element) {
  const bool heading = element.size() == 2 && element[0] == 'h' && element[1] >= '1' && element[1] <= '6';
  return heading ? element[1] - '0' : 0;
}

class TextOfPage : private HtmlWalk {
 public:
  struct Line {
    TextLine::Kind kind = TextLine::Kind::plain;
    int level = 0;
    std::string text;
    std::size_t offset = 0;  ///< of its first letter in the page
    bool main = false;       ///< in `article` or `main`
  };

  explicit TextOfPage(std::string_view page) : HtmlWalk(page) {}

  void read() {
    walk();
    finish_line(true);
  }
  [[nodiscard]] const std::vector<Line>& lines() const { return lines_; }
  /// The page's first big heading, without the head of the site; without text where there is none.
  [[nodiscard]] const Line& heading() const { return heading_; }
  /// Its `title`.
  [[nodiscard]] const Line& title() const { return title_; }
  [[nodiscard]] bool too_deep() const { return stopped(); }

 private:
  void start(std::string_view name, const Attributes& attributes) override {
    if (depth() > deepest) return stop();
    if (name == "title") in_title_ = depth();
    if (skipped_ != 0) return;
    const bool main = name == "article" || name == "main" || attributes["role"] == "main";
    if (main && main_ == 0) main_ = depth();
    const bool site_header = name == "header" && main_ == 0;
    // An aside or a footer of the recipe itself is a tip or a note, and may change it.
    const bool own_note = main_ != 0 && (name == "aside" || name == "footer") &&
                          !of_the_site(attributes["class"]) && !of_the_site(attributes["id"]);
    if ((beside_the_text(name) && !own_note) || !attributes["hidden"].empty() ||
        (name != "body" && (of_comments(attributes["class"]) || of_comments(attributes["id"])))) {
      finish_line(true);
      skipped_ = depth();
      return;
    }
    if (site_header && header_ == 0) header_ = depth();
    if (name == "pre" && pre_ == 0) pre_ = depth();
    if (name == "td" || name == "th") {
      blank_ = true;
    } else if (parts_lines(name)) {
      finish_line(name != "br");
      if (const int level = heading_level(name); level != 0) {
        line_.kind = TextLine::Kind::heading;
        line_.level = level;
      } else if (name == "li" && line_.kind != TextLine::Kind::heading) {
        line_.kind = TextLine::Kind::item;
      }
    }
  }

  void end(std::string_view name) override {
    if (in_title_ == depth()) in_title_ = 0;
    if (skipped_ != 0) {
      if (skipped_ == depth()) skipped_ = 0;
      return;
    }
    if (name == "td" || name == "th") {
      blank_ = true;
    } else if (parts_lines(name) && name != "br") {
      finish_line(true);
      if (heading_level(name) != 0 || name == "li") line_ = {};
    }
    if (main_ == depth()) main_ = 0;
    if (header_ == depth()) header_ = 0;
    if (pre_ == depth()) pre_ = 0;
  }

  void characters(std::string_view text) override {
    if (in_title_ != 0) {
      if (title_.text.empty()) title_.offset = place();
      add(text, title_);
    } else if (skipped_ == 0) {
      add(text, line_);
    }
  }

  /// Runs of blanks become one, a no-break space is a blank, a soft hyphen nothing.
  void add(std::string_view text, Line& line) {
    for (std::size_t i = 0; i < text.size(); ++i) {
      const std::string_view rest = text.substr(i, 2);
      if (pre_ != 0 && text[i] == '\n') {
        finish_line(line_.text.empty());
      } else if (rest == "\xC2\xA0" || text[i] == ' ' || text[i] == '\t' || text[i] == '\n' ||
                 text[i] == '\r') {
        blank_ = true;
        if (rest == "\xC2\xA0") ++i;
      } else if (rest == "\xC2\xAD") {
        ++i;
      } else {
        if (line.text.empty()) {
          line.offset = place() + i;
          line.main = main_ != 0;
        } else if (blank_) {
          line.text += ' ';
        }
        blank_ = false;
        line.text += text[i];
      }
    }
  }

  /// `parted`: what comes belongs to another paragraph.
  void finish_line(bool parted) {
    blank_ = false;
    if (!line_.text.empty()) {
      const bool better = heading_.text.empty() || (line_.main && !heading_.main);
      if (line_.level == 1 && header_ == 0 && better) heading_ = line_;
      // The head of the site tells its name, not the recipe's text.
      if (header_ == 0) lines_.push_back(std::exchange(line_, {}));
      line_ = {};
    }
    if (parted && !lines_.empty() && lines_.back().kind != TextLine::Kind::blank)
      lines_.push_back({TextLine::Kind::blank, 0, {}, 0, lines_.back().main});
  }

  std::vector<Line> lines_;
  Line line_, heading_, title_;
  int main_ = 0, header_ = 0, pre_ = 0, skipped_ = 0,
      in_title_ = 0;  ///< depth of the element; 0: none is open
  bool blank_ = false;
};

using Line = TextOfPage::Line;

/// Sites that use no big heading for it head the recipe with a small one.
const Line& title_of(const TextOfPage& page, const std::vector<const Line*>& lines, const TextWords& words) {
  if (!page.heading().text.empty()) return page.heading();
  for (const Line* line : lines) {
    const Section section = words.section(line->text.substr(0, longest_heading));
    if (section == Section::ingredients) break;
    if (line->kind == TextLine::Kind::heading && section == Section::none) return *line;
  }
  return page.title();
}

std::vector<Page> pages_of(const std::vector<const Line*>& lines, const Line& title, std::string_view page,
                           const TextWords& words) {
  auto source = std::make_shared<TextSource>();
  text::Locator places(page);
  const Position title_at = places.at(title.offset);
  source->text = title.text + "\n";
  for (const Line* line : lines) {
    source->places.emplace_back(source->text.size(), places.at(line->offset));
    source->text += line->text + "\n";
  }
  const std::string_view all(source->text);
  const bool headed = std::any_of(lines.begin(), lines.end(), [&](const Line* line) {
    return line->text.size() < longest_heading && words.section(line->text) == Section::ingredients;
  });
  bool before = headed;  // the list of ingredients
  std::vector<TextLine> out;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = *lines[i];
    const std::string_view text = all.substr(source->places[i].first, line.text.size());
    before = before && words.section(text.substr(0, longest_heading)) != Section::ingredients;
    bool item = false;
    const std::string_view without = without_bullet(text, item);
    TextLine one{line.kind, line.level, without};
    if (item && one.kind == TextLine::Kind::plain) one.kind = TextLine::Kind::item;
    // Links to other pages and the like stand in lists too.
    if (before && one.kind == TextLine::Kind::item && !quantity::read_amount(without, quantity::Units::us))
      one.kind = TextLine::Kind::plain;
    out.push_back(one);
  }
  return pages_of_lines(out, source, words, {all.substr(0, title.text.size()), title_at, false});
}

}  // namespace

std::vector<Piece> read_html_text(std::string_view page, const TextWords& words) {
  TextOfPage text(page);
  text.read();
  if (text.too_deep()) return {BadPage{{}, {{1, 1}, "This page is nested too deep to be read.", ""}}};
  std::vector<Piece> pieces;
  for (const bool main : {true, false}) {
    std::vector<const Line*> lines;
    for (const Line& line : text.lines())
      if (line.main || !main) lines.push_back(&line);
    for (Page& one : pages_of(lines, title_of(text, lines, words), page, words))
      pieces.emplace_back(std::move(one));
    if (!pieces.empty()) break;
  }
  return pieces;
}

}  // namespace sealworthy::recipe
