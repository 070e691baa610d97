#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <istream>
#include <streambuf>

#include "yaml/builder.hpp"
#include "yaml/explain.hpp"
#include "yaml/shorten.hpp"
#include "yaml/split.hpp"

namespace sealworthy::yaml {
namespace {

/// A stream over bytes that it does not own, without the copy that a string stream makes.
class ViewBuffer : public std::streambuf {
 public:
  void show(std::string_view text) {
    char* begin = const_cast<char*>(text.data());  // only ever read: the get area of a streambuf is not const
    setg(begin, begin, begin + text.size());
  }
};

/// Reads the documents of one file; what the parser and the builder need is set up once.
class FileReader {
 public:
  explicit FileReader(const Limits& limits) : limits_(limits), builder_(limits), stream_(&buffer_) {}

  DocumentOrError read(Chunk& chunk, int number) {
    if (auto error = survey(chunk)) return BadDocument{number, std::move(*error)};
    if (chunk.openers > limits_.nodes)
      return BadDocument{
          number,
          {{chunk.line, 1},
           "The document holds more than " + std::to_string(limits_.nodes) + " commas and brackets.",
           "Split it into several documents."}};
    if (read_short(chunk)) return builder_.finish(number);
    builder_.begin(chunk);
    try {
      parse(chunk.text);
    } catch (const Stop& stop) {
      return BadDocument{number, stop.error};
    } catch (const YAML::Exception& exception) {
      return BadDocument{number, explain(exception, builder_.places())};
    } catch (const std::bad_alloc&) {
      throw;
    } catch (const std::exception&) {  // "internal error" of the parser: no place is known
      return BadDocument{number,
                         {{chunk.line, 1},
                          "The document is not understood as YAML.",
                          "Check its indentation, quotes, brackets and colons."}};
    }
    return builder_.finish(number);
  }

 private:
  /// The quick way. False: the full text must be read, to know what it holds or what is wrong with it.
  bool read_short(const Chunk& chunk) {
    shorten(chunk.text, short_);
    if (short_.stand_ins.empty()) return false;
    builder_.begin(chunk, short_.stand_ins);
    try {
      parse(short_.text);
    } catch (const Stop&) {
      return false;
    } catch (const YAML::Exception&) {
      return false;
    }
    return builder_.all_met();
  }

  void parse(std::string_view text) {
    buffer_.show(text);
    stream_.clear();
    YAML::Parser parser(stream_);
    parser.HandleNextDocument(builder_);
    if (!parser) return;
    parser.HandleNextDocument(builder_);  // the builder refuses the start of a second document
    builder_.refuse_rest();
  }

  Limits limits_;
  Builder builder_;
  ShortText short_;
  ViewBuffer buffer_;
  std::istream stream_;
};

/// A carriage return alone is a line break too (YAML 1.2.2, 5.4), but the parser takes it for text.
void plain_breaks(std::string& text) {
  for (std::size_t at = text.find('\r'); at != std::string::npos; at = text.find('\r', at + 1))
    if (at + 1 == text.size() || text[at + 1] != '\n') text[at] = '\n';
}

/// A tab on an otherwise empty line, or before a comment at the start of a line, indents nothing, but the
/// parser refuses it.
void harmless_tabs(std::string& text) {
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t first = std::min(text.find_first_not_of(" \t\r", begin), text.size());
    const bool empty = first == text.size() || text[first] == '\n';
    if (empty || (text[begin] == '\t' && text[first] == '#'))
      std::replace(text.begin() + static_cast<std::ptrdiff_t>(begin),
                   text.begin() + static_cast<std::ptrdiff_t>(first), '\t', ' ');
    begin = std::min(text.find('\n', first), text.size() - 1) + 1;
  }
}

/// A copy of the same length, where one is needed.
std::optional<std::string> smoothed(std::string_view text) {
  const bool returns = text.find('\r') != std::string_view::npos;
  const bool tabs = text.find('\t') != std::string_view::npos;
  if (!returns && !tabs) return std::nullopt;
  std::string copy(text);
  if (returns) plain_breaks(copy);
  if (tabs) harmless_tabs(copy);
  return copy;
}

}  // namespace

std::vector<DocumentOrError> read_documents(std::string_view text, const Limits& limits) {
  std::vector<DocumentOrError> documents;
  if (auto error = unfit_file(text, limits)) {
    documents.emplace_back(BadDocument{1, std::move(*error)});
    return documents;
  }
  const auto copy = smoothed(text);
  std::vector<Chunk> chunks = split(copy ? std::string_view(*copy) : text);
  if (chunks.empty()) return documents;
  documents.reserve(chunks.size());
  FileReader reader(limits);
  int number = 0;
  for (Chunk& chunk : chunks) documents.push_back(reader.read(chunk, ++number));
  return documents;
}

}  // namespace sealworthy::yaml
