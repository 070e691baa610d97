#include "text/words.hpp"

#include <utf8.h>
#include <utf8/unchecked.h>

#include <algorithm>
#include <array>

namespace sealworthy::text {
namespace {

/// The lower case of an ASCII letter or digit, else 0: every letter of every card comes through here.
constexpr auto lower_case = [] {
  std::array<char, 256> table{};
  for (std::size_t c = '0'; c <= '9'; ++c) table[c] = static_cast<char>(c);
  for (std::size_t c = 'a'; c <= 'z'; ++c) table[c] = table[c - 'a' + 'A'] = static_cast<char>(c);
  return table;
}();
char lower(char c) { return lower_case[static_cast<unsigned char>(c)]; }
bool ascii_letter(char32_t c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool digit(char32_t c) { return c >= '0' && c <= '9'; }

/// Vulgar fractions of Latin-1 and Number Forms.
bool vulgar(char32_t c) { return (c >= 0xBC && c <= 0xBE) || (c >= 0x2150 && c <= 0x215E) || c == 0x2189; }

bool dash(char32_t c) { return c == '-' || (c >= 0x2010 && c <= 0x2015) || c == 0x2212; }
bool inch_mark(char32_t c) { return c == '"' || c == 0x2033 || c == 0x201D; }

/// Marks that show nothing and part nothing: soft hyphen, combining accents, zero-width marks, byte order
/// mark, variation selectors.
bool invisible(char32_t c) {
  return c == 0xAD || (c >= 0x300 && c <= 0x36F) || (c >= 0x200B && c <= 0x200F) || c == 0x2060 ||
         c == 0xFEFF || (c >= 0xFE00 && c <= 0xFE0F);
}

/// Letters of other alphabets; punctuation, symbols and pictures are none.
bool other_letter(char32_t c) {
  if (c <= 0x17F || invisible(c) || c == 0xFFFD) return false;
  const bool punctuation = (c >= 0x2000 && c <= 0x2E80) || (c >= 0x3000 && c <= 0x303F);
  const bool picture = c >= 0x1F000 && c <= 0x1FAFF;
  return !punctuation && !picture;
}

/// The plain letters of an accented one of Latin-1 and Latin Extended-A; empty if none.
std::string_view plain(char32_t c) {
  struct Range {
    char32_t low, high;
    std::string_view letters;
  };
  static constexpr std::array ranges{
      Range{0xC0, 0xC5, "a"},    Range{0xC6, 0xC6, "ae"},  Range{0xC7, 0xC7, "c"},
      Range{0xC8, 0xCB, "e"},    Range{0xCC, 0xCF, "i"},   Range{0xD0, 0xD0, "d"},
      Range{0xD1, 0xD1, "n"},    Range{0xD2, 0xD6, "o"},   Range{0xD8, 0xD8, "o"},
      Range{0xD9, 0xDC, "u"},    Range{0xDD, 0xDD, "y"},   Range{0xDE, 0xDE, "th"},
      Range{0xDF, 0xDF, "ss"},   Range{0xE0, 0xE5, "a"},   Range{0xE6, 0xE6, "ae"},
      Range{0xE7, 0xE7, "c"},    Range{0xE8, 0xEB, "e"},   Range{0xEC, 0xEF, "i"},
      Range{0xF0, 0xF0, "d"},    Range{0xF1, 0xF1, "n"},   Range{0xF2, 0xF6, "o"},
      Range{0xF8, 0xF8, "o"},    Range{0xF9, 0xFC, "u"},   Range{0xFD, 0xFD, "y"},
      Range{0xFE, 0xFE, "th"},   Range{0xFF, 0xFF, "y"},   Range{0x100, 0x105, "a"},
      Range{0x106, 0x10D, "c"},  Range{0x10E, 0x111, "d"}, Range{0x112, 0x11B, "e"},
      Range{0x11C, 0x123, "g"},  Range{0x124, 0x127, "h"}, Range{0x128, 0x131, "i"},
      Range{0x132, 0x133, "ij"}, Range{0x134, 0x135, "j"}, Range{0x136, 0x138, "k"},
      Range{0x139, 0x142, "l"},  Range{0x143, 0x14B, "n"}, Range{0x14C, 0x151, "o"},
      Range{0x152, 0x153, "oe"}, Range{0x154, 0x159, "r"}, Range{0x15A, 0x161, "s"},
      Range{0x162, 0x167, "t"},  Range{0x168, 0x173, "u"}, Range{0x174, 0x175, "w"},
      Range{0x176, 0x178, "y"},  Range{0x179, 0x17E, "z"}, Range{0x17F, 0x17F, "s"}};
  if (c < ranges.front().low || c > ranges.back().high) return {};
  for (const auto& range : ranges)
    if (c >= range.low && c <= range.high) return range.letters;
  return {};
}

struct Scanner {
  std::string_view text;
  std::vector<char>& folded;
  std::vector<Word>& words;
  std::size_t at = 0;
  char mark = 0;
  bool joined = false;
  int depth = 0;

  struct Piece {
    char32_t c = 0;
    std::size_t size = 1;
  };

  [[nodiscard]] Piece peek(std::size_t from) const {
    if (from >= text.size()) return {0, 0};
    const auto byte = static_cast<unsigned char>(text[from]);
    if (byte < 0x80) return {byte, 1};
    const std::size_t size = byte >= 0xF0 ? 4 : byte >= 0xE0 ? 3 : 2;
    const auto piece = text.substr(from, size);
    if (byte < 0xC2 || piece.size() < size || !utf8::is_valid(piece.begin(), piece.end())) return {0xFFFD, 1};
    auto it = piece.begin();
    return {static_cast<char32_t>(utf8::unchecked::next(it)), size};
  }

  void put(std::string_view letters) { folded.insert(folded.end(), letters.begin(), letters.end()); }

  void finish(std::size_t begin, std::size_t start, bool number) {
    Word word;
    word.text = {folded.data() + start, folded.size() - start};
    word.begin = static_cast<std::uint32_t>(begin);
    word.end = static_cast<std::uint32_t>(at);
    word.number = number;
    word.hyphened = joined && !words.empty();
    word.before = mark;
    word.depth = depth;
    words.push_back(word);
    mark = 0;
    joined = false;
  }

  void number() {
    const auto begin = at;
    const auto start = folded.size();
    while (at < text.size()) {
      const auto piece = peek(at);
      const auto c = piece.c;
      const bool separator = c == '/' || c == '.' || c == ',' || c == 0x2044;
      const auto after = peek(at + piece.size).c;
      if (!digit(c) && !vulgar(c) && !(separator && digit(after))) break;
      put(c == 0x2044 ? std::string_view("/") : text.substr(at, piece.size));
      at += piece.size;
    }
    finish(begin, start, true);
  }

  void word() {
    const auto begin = at;
    const auto start = folded.size();
    while (at < text.size()) {
      if (const char letter = lower(text[at]); letter != 0) {  // nearly every letter
        folded.push_back(letter);
        ++at;
        continue;
      }
      const auto piece = peek(at);
      const auto c = piece.c;
      if (c == '\'' || c == 0x2019) {
        if (!ascii_letter(peek(at + piece.size).c)) break;
        folded.push_back('\'');
      } else if (const auto letters = plain(c); !letters.empty()) {
        put(letters);
      } else if (other_letter(c)) {
        put(text.substr(at, piece.size));  // stays as written
      } else if (!invisible(c)) {
        break;
      }
      at += piece.size;
    }
    finish(begin, start, false);
  }

  void symbol(std::string_view as, std::size_t size) {
    const auto begin = at;
    const auto start = folded.size();
    at += size;
    put(as);
    finish(begin, start, false);
  }

  void strengthen(char c) {
    static constexpr std::string_view order = "(),:;.";
    if (mark == 0 || order.find(c) > order.find(mark)) mark = c;
  }

  void run() {
    while (at < text.size()) {
      if (text[at] == ' ') {
        joined = false;
        ++at;
        continue;
      }
      const auto piece = peek(at);
      const auto c = piece.c;
      const bool after_number = !words.empty() && words.back().number && words.back().end == at;
      if (digit(c) || vulgar(c) || (c == '.' && digit(peek(at + 1).c) && !after_number)) {
        number();
      } else if (ascii_letter(c) || !plain(c).empty() || other_letter(c)) {
        word();
      } else if (invisible(c)) {
        at += piece.size;
      } else if (inch_mark(c) && after_number) {
        symbol("\"", piece.size);
      } else if (c == '%' || c == '+' || c == '&') {
        symbol(text.substr(at, 1), 1);
      } else if (c == 0xB0) {
        symbol("\xC2\xB0", piece.size);
      } else {
        if (dash(c)) joined = !words.empty() && words.back().end == at;
        if (c == '(' || c == '[') ++depth;
        if ((c == ')' || c == ']') && depth > 0) --depth;
        if (c == '\n' || c == '!' || c == '?') strengthen('.');
        if (c == '(' || c == ')' || c == ',' || c == ':' || c == ';') strengthen(static_cast<char>(c));
        if (c == '.') strengthen('.');
        if (!dash(c)) joined = false;
        at += piece.size;
      }
    }
  }
};

}  // namespace

Words::Words(std::string_view text) {
  folded_.reserve(text.size());  // no letter folds to more bytes than it has, so views stay valid
  words_.reserve(text.size() / 4 + 2);
  Scanner scanner{text, folded_, words_};
  scanner.run();
}

std::string fold(std::string_view text) {
  const Words words(text);
  std::string out;
  out.reserve(text.size());
  for (const auto& word : words) {
    if (!out.empty()) out += ' ';
    out += word.text;
  }
  return out;
}

}  // namespace sealworthy::text
