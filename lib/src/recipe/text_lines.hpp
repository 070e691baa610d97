#pragma once

/// A recipe written as text, line by line: what plain text and Markdown share.

#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "recipe/page.hpp"
#include "recipe/reader.hpp"

namespace sealworthy::recipe {

/// One line with its marks taken off.
struct TextLine {
  /// markup: a place where the site's generator puts something ("{{ ... }}"), which nobody can read here.
  enum class Kind { blank, plain, item, heading, markup };
  Kind kind = Kind::plain;
  int level = 0;          ///< of a heading; 0: a line that may be one by its words
  std::string_view text;  ///< without bullet, number, "#"; views into the arena's copy of the source
};

/// Keeps the text that lines view into and tells where they stand.
struct TextSource {
  std::string text;  ///< as long as the source, marks that are no words blanked out
  Position start{1, 1};
  /// Of a text that was put together of pieces of its source: the byte where each begins, ascending, and
  /// where it stands. Empty: the text is the source.
  std::vector<std::pair<std::size_t, Position>> places;
};

/// The recipes that the lines tell. Each begins at a title and has a list of ingredients, under a heading or
/// told by its look (amounts or bullets), and directions after it. `title`: where no line tells one. A text
/// without ingredients gives none.
std::vector<Page> pages_of_lines(const std::vector<TextLine>& lines,
                                 const std::shared_ptr<const TextSource>& source, const TextWords& words,
                                 const PageText& title);

/// The paragraphs and items of lines, headings and other sections left out: a text that is all directions.
std::vector<PageText> paragraphs_of_lines(const std::vector<TextLine>& lines, const TextSource& source,
                                          const TextWords& words);

/// Takes "1.", "2)", "Step 3:" and bullets off; `item` is set if there was one.
std::string_view without_bullet(std::string_view line, bool& item);

}  // namespace sealworthy::recipe
