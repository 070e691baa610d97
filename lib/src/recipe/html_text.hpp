#pragma once

/// A web page that says nowhere in schema.org's words what its recipe is: its text, line by line.

#include <string_view>
#include <vector>

#include "recipe/page.hpp"
#include "recipe/reader.hpp"

namespace sealworthy::recipe {

/// The recipes that the text of a page tells, read like plain text. The text is that of `article` and `main`,
/// or of the whole body where these hold no recipe; without navigation, the head and foot of the
/// site, asides and readers' comments. Headings, paragraphs, list items, table rows, `br` and the lines of
/// `pre` part lines; each stands at its first letter in the page. `page`: UTF-8. Never throws but for
/// bad_alloc. Cost: one pass of the parser.
std::vector<Piece> read_html_text(std::string_view page, const TextWords& words);

}  // namespace sealworthy::recipe
