#include "text/words.hpp"

#include <utf8.h>

#include <algorithm>
#include <array>
#include <cctype>

namespace sealworthy::text {
namespace {

bool ascii_letter(char32_t c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool digit(char32_t c) { return c >= '0' && c <= '9'; }

/// Vulgar fractions of Latin-1 and Number Forms.
bool vulgar(char32_t c) { return (c >= 0xBC && c <= 0xBE) || (c >= 0x2150 && c <= 0x215E) || c == 0x2189; }

bool dash(char32_t c) { return c == '-' || (c >= 0x2010 && c <= 0x2015) || c == 0x2212; }
bool inch_mark(char32_t c) { return c == '"' || c == 0x2033 || c == 0x201D; }

/// The plain letters of an accented one, for the alphabets that recipes in English borrow from; empty if
/// none.
std::string_view plain(char32_t c) {
  struct Range {
    char32_t low, high;
    std::string_view letters;
  };
  static constexpr std::array<Range, 21> ranges{
      {{0xC0, 0xC5, "a"}, {0xC6, 0xC6, "ae"}, {0xC7, 0xC7, "c"}, {0xC8, 0xCB, "e"}, {0xCC, 0xCF, "i"},
       {0xD1, 0xD1, "n"}, {0xD2, 0xD6, "o"},  {0xD8, 0xD8, "o"}, {0xD9, 0xDC, "u"}, {0xDF, 0xDF, "ss"},
       {0xE0, 0xE5, "a"}, {0xE6, 0xE6, "ae"}, {0xE7, 0xE7, "c"}, {0xE8, 0xEB, "e"}, {0xEC, 0xEF, "i"},
       {0xF1, 0xF1, "n"}, {0xF2, 0xF6, "o"},  {0xF8, 0xF8, "o"}, {0xF9, 0xFC, "u"}, {0x152, 0x153, "oe"},
       {0xFD, 0xFF, "y"}}};
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
    const char* it = text.data() + from;
    const char* end = text.data() + text.size();
    const char* next = it;
    try {
      const auto c = static_cast<char32_t>(utf8::next(next, end));
      return {c, static_cast<std::size_t>(next - it)};
    } catch (const utf8::exception&) {
      return {0xFFFD, 1};
    }
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
      const auto piece = peek(at);
      const auto c = piece.c;
      if (ascii_letter(c) || digit(c)) {
        folded.push_back(static_cast<char>(std::tolower(static_cast<int>(c))));
      } else if (c == '\'' || c == 0x2019) {
        if (!ascii_letter(peek(at + piece.size).c)) break;
        folded.push_back('\'');
      } else if (const auto letters = plain(c); !letters.empty()) {
        put(letters);
      } else if (c >= 0x300 && c <= 0x36F) {  // a combining accent adds nothing
      } else if (c > 0x17F && c != 0xFFFD && !dash(c) && !vulgar(c) && !inch_mark(c) &&
                 !(c >= 0x2000 && c <= 0x206F)) {
        put(text.substr(at, piece.size));  // letters of other alphabets stay as written
      } else {
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
      const auto piece = peek(at);
      const auto c = piece.c;
      const bool after_number = !words.empty() && words.back().number && words.back().end == at;
      if (digit(c) || vulgar(c) || (c == '.' && digit(peek(at + 1).c) && !after_number)) {
        number();
      } else if (ascii_letter(c) || !plain(c).empty() || (c > 0x17F && c < 0x2000) || c > 0x2E80) {
        if (c == 0xFFFD || c == 0xFEFF)
          at += piece.size;
        else
          word();
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

bool ends(std::string_view word, std::string_view tail) {
  return word.size() > tail.size() && word.ends_with(tail);
}
bool vowel(char c) { return c == 'a' || c == 'e' || c == 'i' || c == 'o' || c == 'u'; }

}  // namespace

Words::Words(std::string_view text) {
  folded_.reserve(text.size() * 2 +
                  8);  // folding at most doubles a byte count ("ß" keeps it), so views stay valid
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

std::string singular(std::string_view word) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 18> odd{
      {{"leaves", "leaf"},
       {"loaves", "loaf"},
       {"halves", "half"},
       {"calves", "calf"},
       {"knives", "knife"},
       {"geese", "goose"},
       {"feet", "foot"},
       {"potatoes", "potato"},
       {"tomatoes", "tomato"},
       {"mangoes", "mango"},
       {"cookies", "cookie"},
       {"chiles", "chile"},
       {"chilies", "chili"},
       {"chillies", "chilli"},
       {"olives", "olive"},
       {"chives", "chive"},
       {"cloves", "clove"},
       {"radishes", "radish"}}};
  for (const auto& [many, one] : odd)
    if (word == many) return std::string(one);
  static constexpr std::array<std::string_view, 14> same{
      "asparagus", "molasses", "couscous", "hummus",  "swiss", "bass", "watercress",
      "cress",     "less",     "citrus",   "octopus", "grass", "lens", "was"};
  if (std::find(same.begin(), same.end(), word) != same.end()) return std::string(word);
  const auto size = word.size();
  if (ends(word, "ies") && size > 4) return std::string(word.substr(0, size - 3)) + "y";
  if (ends(word, "oes") && size > 4) return std::string(word.substr(0, size - 2));
  if (ends(word, "sses") || ends(word, "shes") || ends(word, "ches") || ends(word, "xes") ||
      ends(word, "zzes"))
    return std::string(word.substr(0, size - 2));
  if (ends(word, "ss") || ends(word, "us") || ends(word, "is")) return std::string(word);
  if (ends(word, "s") && size > 2 && (size > 3 || !vowel(word[size - 2])))
    return std::string(word.substr(0, size - 1));
  return std::string(word);
}

}  // namespace sealworthy::text
