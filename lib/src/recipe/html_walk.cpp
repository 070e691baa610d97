#include "recipe/html_walk.hpp"

#include <libxml/HTMLparser.h>
#include <libxml/parser.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <mutex>
#include <new>

namespace sealworthy::recipe {
namespace {

std::string_view view(const xmlChar* text) { return reinterpret_cast<const char*>(text); }

}  // namespace

std::string_view Attributes::operator[](std::string_view name) const {
  if (pairs_ == nullptr) return {};
  for (const unsigned char** a = pairs_; *a != nullptr; a += 2)
    if (view(*a) == name) return a[1] == nullptr ? name : view(a[1]);
  return {};
}

bool parts_lines(std::string_view element) {
  static constexpr std::array<std::string_view, 33> blocks{
      "p",       "li",         "br",      "div",     "h1",      "h2",  "h3",    "h4",     "h5",
      "h6",      "tr",         "ol",      "ul",      "dd",      "dt",  "td",    "th",     "dl",
      "section", "blockquote", "article", "main",    "caption", "pre", "aside", "footer", "header",
      "figure",  "figcaption", "details", "summary", "table",   "hr"};
  return std::find(blocks.begin(), blocks.end(), element) != blocks.end();
}

/// No exception may pass through the parser, which is C.
template <class Work>
void HtmlWalk::guard(Work&& work) noexcept {
  try {
    if (!failed_ && !stopped_) work(*this);
  } catch (...) {
    failed_ = true;
    xmlStopParser(parser_);
  }
}

/// The byte that the parser has come to.
std::size_t HtmlWalk::offset() const {
  const xmlParserInput* input = parser_->input;
  if (input == nullptr || input->cur == nullptr) return last_;
  const std::size_t at = static_cast<std::size_t>(input->cur - input->base) + input->consumed;
  return std::min(at, page_.size());
}

void HtmlWalk::stop() {
  stopped_ = true;
  xmlStopParser(parser_);
}

void HtmlWalk::walk() {
  static std::once_flag once;
  std::call_once(once, [] { xmlInitParser(); });
  parser_ = htmlNewParserCtxt();
  if (parser_ == nullptr) throw std::bad_alloc();
  htmlSAXHandler events{};
  events.startElement = [](void* self, const xmlChar* name, const xmlChar** attributes) {
    static_cast<HtmlWalk*>(self)->guard([&](HtmlWalk& walk) {
      const std::size_t tag_end = walk.page_.find('>', walk.offset());
      walk.last_ = tag_end == std::string_view::npos ? walk.page_.size() : tag_end + 1;
      ++walk.depth_;
      walk.start(view(name), Attributes(attributes));
    });
  };
  events.endElement = [](void* self, const xmlChar* name) {
    static_cast<HtmlWalk*>(self)->guard([&](HtmlWalk& walk) {
      walk.end(view(name));
      --walk.depth_;
      walk.last_ = walk.offset();
    });
  };
  events.characters = [](void* self, const xmlChar* text, int size) {
    static_cast<HtmlWalk*>(self)->guard([&](HtmlWalk& walk) {
      walk.characters({reinterpret_cast<const char*>(text), static_cast<std::size_t>(std::max(size, 0))});
      walk.last_ = walk.offset();
    });
  };
  events.ignorableWhitespace = events.characters;
  std::memcpy(parser_->sax, &events, sizeof events);
  parser_->userData = this;
  constexpr int options = HTML_PARSE_RECOVER | HTML_PARSE_NOERROR | HTML_PARSE_NOWARNING | HTML_PARSE_NONET |
                          HTML_PARSE_IGNORE_ENC | HTML_PARSE_NOIMPLIED;
  const xmlDocPtr document =
      htmlCtxtReadMemory(parser_, page_.data(), static_cast<int>(page_.size()), nullptr, "UTF-8", options);
  if (document != nullptr) xmlFreeDoc(document);
  htmlFreeParserCtxt(parser_);
  parser_ = nullptr;
  if (failed_) throw std::bad_alloc();
}

}  // namespace sealworthy::recipe
