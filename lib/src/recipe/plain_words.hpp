#pragma once

/// Words of a page without the markup that web pages put around them.

#include <string>
#include <string_view>

namespace sealworthy::recipe {

/// True if the text may hold a tag or an entity.
inline bool has_markup(std::string_view text) { return text.find_first_of("<&") != std::string_view::npos; }

/// Tags taken out (those that part lines become a line end) and entities resolved ("&frac12;", "&#8211;",
/// "&amp;"). What is no tag and no entity stays as it is ("at < 1,000 ft"). Cost: one pass.
std::string without_markup(std::string_view text);

/// A page's text in UTF-8: UTF-8 as it is (`page` is returned, `room` untouched); UTF-16 with its byte order
/// mark, and Windows-1252 and Latin-1 where the page declares them, are converted into `room`. An empty view
/// with data() == nullptr: bytes of no known encoding.
std::string_view as_utf8(std::string_view page, std::string& room);

}  // namespace sealworthy::recipe
