#include "recipe/text_lines.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include "quantity/amount.hpp"
#include "recipe/fields.hpp"
#include "text/locator.hpp"

namespace sealworthy::recipe {
namespace {

using Kind = TextLine::Kind;

bool digit(char c) { return c >= '0' && c <= '9'; }

std::size_t count_words(std::string_view text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), ' ')) + 1;
}

/// A sentence of directions rather than a line of ingredients.
bool reads_like_directions(std::string_view line) {
  const bool sentence = line.ends_with('.') && count_words(line) >= 5;
  return (sentence || line.size() > 90) && !quantity::read_amount(line, quantity::Units::us);
}

bool reads_like_ingredient(const TextLine& line) {
  if (line.text.size() > 120 || line.text.ends_with('.')) return false;
  return line.kind == Kind::item || quantity::read_amount(line.text, quantity::Units::us).has_value();
}

/// "About 9 half pints", a line of its own above the list. Cups are no jars, and may be an amount whose food
/// stands apart.
bool counts_jars(std::string_view line) {
  while (line.ends_with('.') || line.ends_with(' ')) line.remove_suffix(1);
  if (lowered(line).find("cup") != std::string::npos) return false;
  const auto read = quantity::read_yield(line);
  const auto* yield = std::get_if<quantity::Yield>(&read);
  return yield != nullptr && yield->jar.has_value();
}

class Assembler {
 public:
  Assembler(const std::vector<TextLine>& lines, std::shared_ptr<const TextSource> source,
            const TextWords& words)
      : lines_(lines), source_(std::move(source)), words_(words), places_(source_->text, source_->start) {}

  std::vector<Page> pages(const PageText& title) {
    std::vector<Page> out;
    const auto begins = beginnings();
    for (std::size_t i = 0; i < begins.size(); ++i) {
      const std::size_t last = i + 1 < begins.size() ? begins[i + 1] : lines_.size();
      Page page = read(begins[i], last, i == 0 ? title : PageText{});
      if (!page.ingredients.empty() && !page.directions.empty()) out.push_back(std::move(page));
    }
    return out;
  }

  std::vector<PageText> paragraphs() {
    section_ = Section::directions;
    std::vector<PageText> out;
    for (const TextLine& line : lines_) {
      if (line.kind == Kind::heading) {
        const Section section = section_of(line.text);
        section_ = section == Section::none ? Section::directions : section;
        flush(out);
      } else if (section_ != Section::other && section_ != Section::ingredients) {
        add_to_paragraph(line, out);
      }
    }
    flush(out);
    return out;
  }

 private:
  [[nodiscard]] static std::string_view heading_text(std::string_view text) {
    text = trimmed(text);
    while (text.ends_with(':') || text.ends_with('#') || text.ends_with(' ')) text.remove_suffix(1);
    return text;
  }
  [[nodiscard]] Section section_of(std::string_view text) const {
    return text.size() > 60 ? Section::none : words_.section(heading_text(text));
  }
  PageText placed(std::string_view text) {
    const std::string_view all(source_->text);
    const auto offset = static_cast<std::size_t>(text.data() - all.data());
    const auto& pieces = source_->places;
    if (pieces.empty()) return {text, places_.at(offset), true};
    const auto behind = std::upper_bound(pieces.begin(), pieces.end(), offset,
                                         [](std::size_t at, const auto& piece) { return at < piece.first; });
    return {text, behind == pieces.begin() ? source_->start : std::prev(behind)->second, false};
  }

  /// Lines where a recipe begins: the first, and the title of each further list of ingredients.
  std::vector<std::size_t> beginnings() const {
    std::vector<std::size_t> out{0};
    bool seen = false;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      const TextLine& line = lines_[i];
      const bool may = line.kind == Kind::heading || line.kind == Kind::plain;
      if (!may || section_of(line.text) != Section::ingredients) continue;
      if (seen) {
        const std::size_t title = title_above(i, out.back());
        if (title > out.back()) out.push_back(title);
      }
      seen = true;
    }
    return out;
  }
  /// The line that names the recipe whose ingredients begin at `i`.
  [[nodiscard]] std::size_t title_above(std::size_t i, std::size_t least) const {
    std::size_t found = i;
    for (std::size_t k = i; k-- > least;) {
      const TextLine& line = lines_[k];
      if (line.kind == Kind::heading) return section_of(line.text) == Section::none ? k : i;
      const bool alone = (k == 0 || lines_[k - 1].kind == Kind::blank);
      if (line.kind == Kind::plain && alone && line.text.size() < 80 && !line.text.ends_with('.') &&
          !words_.yield(line.text) && !counts_jars(line.text)) {
        found = k;
        break;
      }
      if (line.text.size() >= 80 || line.text.ends_with('.')) break;
    }
    return found;
  }

  Page read(std::size_t first, std::size_t last, const PageText& title) {
    Page page;
    page.arena = source_;
    page.title = title;
    section_ = Section::none;
    bool headed = false;  // the ingredients stand under a heading
    std::vector<PageText> directions;
    for (std::size_t i = first; i < last; ++i) {
      const TextLine& line = lines_[i];
      if (line.kind == Kind::blank) {
        flush(directions);
        continue;
      }
      std::string_view text = line.text;
      if (const Section section = take_heading(line, text); section != Section::none) {
        flush(directions);
        section_ = section;
        headed = headed || section == Section::ingredients;
        if (text.empty()) continue;
      } else if (line.kind == Kind::heading) {
        flush(directions);
        if (page.title.text.empty()) {
          page.title = placed(heading_text(text));
        } else if (section_ == Section::directions || section_ == Section::notes) {
          directions.push_back(placed(heading_text(text)));
        } else if (section_ == Section::other) {
          // What stands under a heading that nobody knows, once the recipe is told, may be meant to be done.
          section_ = page.ingredients.empty() ? Section::none : Section::notes;
        }
        continue;
      }
      if (page.title.text.empty() && section_ == Section::none && line.kind != Kind::markup) {
        page.title = placed(heading_text(text));
        continue;
      }
      if (line.kind == Kind::markup) {
        // What a site puts there is not known; among the ingredients it may be one.
        if (section_ == Section::ingredients) page.ingredients.push_back(placed(text));
        continue;
      }
      take(line, text, headed, page, directions);
    }
    flush(directions);
    page.directions.insert(page.directions.end(), directions.begin(), directions.end());
    // Some tell all above the list: "Stuff a roll into each jar. Pressure can 90 minutes."
    if (headed && page.directions.empty()) page.directions = std::exchange(page.about, {});
    return page;
  }

  /// The section that a line begins; what stands behind its colon is left in `text`.
  Section take_heading(const TextLine& line, std::string_view& text) const {
    if (line.kind == Kind::item || line.kind == Kind::markup) return Section::none;
    if (const Section whole = section_of(text); whole != Section::none) {
      text = {};
      return whole;
    }
    const std::size_t colon = text.find(':');
    if (line.kind != Kind::plain || colon == std::string_view::npos || colon > 30) return Section::none;
    const Section section = section_of(text.substr(0, colon));
    if (section != Section::none) text = trimmed(text.substr(colon + 1));
    return section;
  }

  void take(const TextLine& line, std::string_view text, bool headed, Page& page,
            std::vector<PageText>& directions) {
    switch (section_) {
      case Section::none:
        if (words_.yield(text) || (line.kind == Kind::plain && counts_jars(text))) {
          page.yields.push_back(placed(text));
        } else if (!headed && reads_like_ingredient(line)) {
          section_ = Section::ingredients;
          page.ingredients.push_back(placed(text));
        } else {
          page.about.push_back(placed(text));
        }
        return;
      case Section::ingredients:
        // "For the brine:"
        if (text.ends_with(':') && !quantity::read_amount(text, quantity::Units::us)) return;
        if (words_.yield(text)) {
          page.yields.push_back(placed(text));
        } else if (reads_like_directions(text)) {
          section_ = Section::directions;
          add_to_paragraph(line, directions);
        } else {
          page.ingredients.push_back(placed(text));
        }
        return;
      case Section::directions:
      case Section::notes:
        add_to_paragraph(line, text, directions);
        return;
      case Section::other:
        return;
    }
  }

  void add_to_paragraph(const TextLine& line, std::vector<PageText>& out) {
    add_to_paragraph(line, line.text, out);
  }
  void add_to_paragraph(const TextLine& line, std::string_view text, std::vector<PageText>& out) {
    const bool nothing = line.kind == Kind::blank || line.kind == Kind::markup;
    if (nothing || line.kind == Kind::item) flush(out);
    if (nothing || text.empty()) return;
    if (paragraph_.empty()) {
      paragraph_ = text;
    } else {
      paragraph_ = {paragraph_.data(),
                    static_cast<std::size_t>(text.data() + text.size() - paragraph_.data())};
    }
  }
  void flush(std::vector<PageText>& out) {
    if (!paragraph_.empty()) out.push_back(placed(paragraph_));
    paragraph_ = {};
  }

  const std::vector<TextLine>& lines_;
  std::shared_ptr<const TextSource> source_;
  const TextWords& words_;
  text::Locator places_;
  Section section_ = Section::none;
  std::string_view paragraph_;
};

}  // namespace

std::string_view without_bullet(std::string_view line, bool& item) {
  static constexpr std::array<std::string_view, 6> bullets{"- ",           "* ",       "+ ",
                                                           "\xE2\x80\xA2", "\xC2\xB7", "\xE2\x80\x93 "};
  item = false;
  for (const std::string_view bullet : bullets) {
    if (!line.starts_with(bullet)) continue;
    item = true;
    return trimmed(line.substr(bullet.size()));
  }
  std::size_t digits = 0;
  const bool step = lowered(line.substr(0, 5)) == "step ";
  const std::string_view rest = step ? line.substr(5) : line;
  while (digits < rest.size() && digits < 3 && digit(rest[digits])) ++digits;
  if (digits > 0 && digits + 1 < rest.size() &&
      (rest[digits] == '.' || rest[digits] == ')' || (step && rest[digits] == ':')) &&
      rest[digits + 1] == ' ') {
    item = true;
    return trimmed(rest.substr(digits + 1));
  }
  return line;
}

std::vector<Page> pages_of_lines(const std::vector<TextLine>& lines,
                                 const std::shared_ptr<const TextSource>& source, const TextWords& words,
                                 const PageText& title) {
  return Assembler(lines, source, words).pages(title);
}

std::vector<PageText> paragraphs_of_lines(const std::vector<TextLine>& lines, const TextSource& source,
                                          const TextWords& words) {
  return Assembler(lines, std::shared_ptr<const TextSource>(&source, [](const TextSource*) {}), words)
      .paragraphs();
}

}  // namespace sealworthy::recipe
