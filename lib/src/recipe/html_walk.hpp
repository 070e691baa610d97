#pragma once

/// Walking an HTML page by the events of libxml2's parser, with the place of each in the page.

#include <libxml/tree.h>

#include <cstddef>
#include <string_view>

namespace sealworthy::recipe {

/// The attributes of an element, names in lower case.
class Attributes {
 public:
  explicit Attributes(const unsigned char** pairs) : pairs_(pairs) {}
  /// The value; the name itself for one without a value; empty: there is none.
  [[nodiscard]] std::string_view operator[](std::string_view name) const;

 private:
  const unsigned char** pairs_;
};

class HtmlWalk {
 public:
  HtmlWalk(const HtmlWalk&) = delete;
  HtmlWalk& operator=(const HtmlWalk&) = delete;

 protected:
  /// `page`: UTF-8; it must outlive the walk.
  explicit HtmlWalk(std::string_view page) : page_(page) {}
  virtual ~HtmlWalk() = default;

  /// Calls the three below for everything on the page but the text of scripts and style sheets, which stands
  /// in the page as it is. Every start has its end, unless the walk is stopped. Throws bad_alloc alone.
  void walk();
  virtual void start(std::string_view name, const Attributes& attributes) = 0;
  virtual void end(std::string_view name) = 0;
  virtual void characters(std::string_view text) = 0;

  void stop();
  [[nodiscard]] bool stopped() const { return stopped_; }
  [[nodiscard]] std::string_view page() const { return page_; }
  /// The byte where what was just called for begins; for a start: the byte behind its tag.
  [[nodiscard]] std::size_t place() const { return last_; }
  /// Open elements, with the one that starts or ends.
  [[nodiscard]] int depth() const { return depth_; }

 private:
  template <class Work>
  void guard(Work&& work) noexcept;
  [[nodiscard]] std::size_t offset() const;

  std::string_view page_;
  xmlParserCtxtPtr parser_ = nullptr;
  std::size_t last_ = 0;
  int depth_ = 0;
  bool failed_ = false, stopped_ = false;
};

/// Elements that part lines of text.
bool parts_lines(std::string_view element);

}  // namespace sealworthy::recipe
