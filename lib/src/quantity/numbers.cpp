#include "quantity/numbers.hpp"

#include <charconv>
#include <utility>

namespace sealworthy::quantity {
namespace {

constexpr std::size_t longest_figure = 12;

bool digit(char c) { return c >= '0' && c <= '9'; }
bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
unsigned byte_at(std::string_view text, std::size_t at) {
  return at < text.size() ? static_cast<unsigned char>(text[at]) : 0U;
}
bool digit_at(std::string_view text, std::size_t at) { return at < text.size() && digit(text[at]); }
bool starts(std::string_view text, std::size_t at, std::string_view what) {
  return at <= text.size() && text.substr(at).starts_with(what);
}

struct Fraction {
  double value = 0;
  std::size_t end = 0;
};

/// "½" and the like.
std::optional<Fraction> vulgar_at(std::string_view text, std::size_t at) {
  const auto first = byte_at(text, at);
  if (first == 0xC2) {
    switch (byte_at(text, at + 1)) {
      case 0xBC:
        return Fraction{0.25, at + 2};
      case 0xBD:
        return Fraction{0.5, at + 2};
      case 0xBE:
        return Fraction{0.75, at + 2};
      default:
        return std::nullopt;
    }
  }
  if (first != 0xE2) return std::nullopt;
  // U+2150 to U+215E
  static constexpr std::array<double, 15> number_forms{1.0 / 7, 1.0 / 9, 1.0 / 10, 1.0 / 3, 2.0 / 3,
                                                       1.0 / 5, 2.0 / 5, 3.0 / 5,  4.0 / 5, 1.0 / 6,
                                                       5.0 / 6, 1.0 / 8, 3.0 / 8,  5.0 / 8, 7.0 / 8};
  const auto third = byte_at(text, at + 2);
  if (byte_at(text, at + 1) == 0x85 && third >= 0x90 && third - 0x90 < number_forms.size())
    return Fraction{number_forms[third - 0x90], at + 3};
  return std::nullopt;
}

/// The digits at `at` as a number, and where they end; nullopt where none stand or too many.
std::optional<Fraction> digits_at(std::string_view text, std::size_t at) {
  double value = 0;
  std::size_t end = at;
  while (digit_at(text, end)) {
    value = value * 10 + (text[end] - '0');
    ++end;
  }
  if (end == at || end - at > longest_figure) return std::nullopt;
  return Fraction{value, end};
}

/// Bytes of a fraction bar: "/", "⁄" or "∕".
std::size_t bar_at(std::string_view text, std::size_t at) {
  if (byte_at(text, at) == '/') return 1;
  if (starts(text, at, "\xE2\x81\x84") || starts(text, at, "\xE2\x88\x95")) return 3;
  return 0;
}

/// "n/m" in digits, or a vulgar fraction sign. Improper ones too ("3/2").
std::optional<std::pair<Fraction, Fraction>> parts_at(std::string_view text, std::size_t at) {
  const auto top = digits_at(text, at);
  if (!top) return std::nullopt;
  const auto bar = bar_at(text, top->end);
  if (bar == 0) return std::nullopt;
  const auto bottom = digits_at(text, top->end + bar);
  if (!bottom || bottom->value < 1 || bottom->value > 64) return std::nullopt;
  return std::pair{*top, *bottom};
}

std::optional<Fraction> proper_fraction_at(std::string_view text, std::size_t at) {
  if (const auto sign = vulgar_at(text, at)) return sign;
  const auto parts = parts_at(text, at);
  if (!parts || parts->first.value >= parts->second.value || parts->first.value < 1) return std::nullopt;
  return Fraction{parts->first.value / parts->second.value, parts->second.end};
}

/// "11/2" whose space was lost: the last digit over the bar is the top, the rest the whole.
std::optional<Number> fused(double top, double bottom, std::size_t end) {
  const double last = top - 10 * static_cast<double>(static_cast<long long>(top / 10));
  const double whole = (top - last) / 10;
  const bool kitchen = bottom == 2 || bottom == 3 || bottom == 4 || bottom == 8;
  if (!kitchen || whole < 1 || last < 1 || last >= bottom) return std::nullopt;
  Number number{whole + last / bottom, end};
  number.whole_part = whole;
  return number;
}

/// The fraction after a whole number: "1 1/2", "1-1/2", "1 ½", "1 and 1/2", "1 & 1/2".
std::optional<Fraction> fraction_after(std::string_view text, std::size_t at, std::size_t& starts_at) {
  std::size_t next = skip_space(text, at);
  if (const auto dash = dash_at(text, next)) {
    next = skip_space(text, next + dash);
  } else if (byte_at(text, next) == '&') {
    next = skip_space(text, next + 1);
  } else if (const Letters word(text, next); word.is("and")) {
    next = skip_space(text, word.end());
  }
  starts_at = next;
  return proper_fraction_at(text, next);
}

std::optional<double> parse(std::string_view digits) {
  double value = 0;
  const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (result.ec != std::errc{} || result.ptr != digits.data() + digits.size()) return std::nullopt;
  return value;
}

/// Digits with thousands commas and a decimal point or comma, as a clean figure for from_chars.
std::optional<Number> decimal_at(std::string_view text, std::size_t at) {
  std::array<char, 2 * longest_figure + 2> clean{};
  std::size_t size = 0;
  std::size_t end = at;
  const auto copy_digits = [&] {
    std::size_t count = 0;
    while (digit_at(text, end)) {
      if (size + 1 >= clean.size()) return longest_figure + 1;
      clean[size++] = text[end++];
      ++count;
    }
    return count;
  };
  const auto digits_after_comma = [&] {
    std::size_t count = 0;
    while (digit_at(text, end + 1 + count)) ++count;
    return count;
  };
  std::size_t group = copy_digits();
  if (group > longest_figure) return std::nullopt;
  bool whole = group > 0;
  const bool zero = group > 0 && clean[0] == '0';
  while (group > 0 && group <= 3 && !zero && byte_at(text, end) == ',' && digits_after_comma() == 3) {
    ++end;
    group = copy_digits();
    if (size > longest_figure) return std::nullopt;
  }
  const bool point = byte_at(text, end) == '.' || (byte_at(text, end) == ',' && group > 0);
  if (point && digit_at(text, end + 1)) {
    ++end;
    clean[size++] = '.';
    if (copy_digits() > longest_figure) return std::nullopt;
    whole = false;
  }
  if (size == 0) return std::nullopt;
  const auto value = parse({clean.data(), size});
  if (!value) return std::nullopt;
  Number number{*value, end};
  number.whole = whole;
  return number;
}

constexpr std::array<std::pair<std::string_view, double>, 26> number_words{
    {{"one", 1},      {"two", 2},        {"three", 3},     {"four", 4},      {"five", 5},
     {"six", 6},      {"seven", 7},      {"eight", 8},     {"nine", 9},      {"ten", 10},
     {"eleven", 11},  {"twelve", 12},    {"thirteen", 13}, {"fourteen", 14}, {"fifteen", 15},
     {"sixteen", 16}, {"seventeen", 17}, {"eighteen", 18}, {"twenty", 20},   {"thirty", 30},
     {"forty", 40},   {"fifty", 50},     {"sixty", 60},    {"hundred", 100}, {"a", 1},
     {"an", 1}}};
constexpr std::array<std::pair<std::string_view, double>, 9> fraction_words{{{"half", 2},
                                                                             {"halves", 2},
                                                                             {"third", 3},
                                                                             {"thirds", 3},
                                                                             {"quarter", 4},
                                                                             {"quarters", 4},
                                                                             {"fourth", 4},
                                                                             {"fourths", 4},
                                                                             {"eighth", 8}}};

template <class Table>
double look_up(const Table& table, std::string_view word) {
  for (const auto& [text, value] : table)
    if (text == word) return value;
  return 0;
}

/// Past "of", "a", "an" after a fraction word: "half of a", "half an".
std::size_t skip_article(std::string_view text, std::size_t at) {
  std::size_t end = at;
  for (int i = 0; i < 2; ++i) {
    const Letters word(text, skip_space(text, end));
    if (!word.is("of") && !word.is("a") && !word.is("an")) break;
    if (word.is("of")) {
      const Letters after(text, skip_space(text, word.end()));
      if (!after.is("a") && !after.is("an")) break;
    }
    end = word.end();
  }
  return end;
}

/// The next word, past spaces or one hyphen.
Letters next_word(std::string_view text, std::size_t at) {
  std::size_t next = at;
  if (const auto dash = dash_at(text, next)) next += dash;
  return {text, skip_space(text, next)};
}

/// "and a half", "and one-half", "and a quarter" after a whole number.
std::optional<Fraction> and_a_half(std::string_view text, std::size_t at) {
  const Letters joint = next_word(text, at);
  if (!joint.is("and")) return std::nullopt;
  const Letters article = next_word(text, joint.end());
  const double top = look_up(number_words, article.view());
  if (top == 0 || top > 7) return std::nullopt;
  const Letters bottom = next_word(text, article.end());
  const double parts = look_up(fraction_words, bottom.view());
  if (parts <= top) return std::nullopt;
  return Fraction{top / parts, bottom.end()};
}

std::optional<Number> read_words(std::string_view text, std::size_t at) {
  const Letters first(text, at);
  if (first.empty()) return std::nullopt;
  Number number;
  number.in_words = true;
  if (const double parts = look_up(fraction_words, first.view()); parts != 0 && !first.is("halves")) {
    number.value = 1 / parts;
    number.proper = true;
    number.end = skip_article(text, first.end());
    return number;
  }
  number.value = look_up(number_words, first.view());
  if (number.value == 0) return std::nullopt;
  number.end = first.end();
  const Letters second = next_word(text, first.end());
  if (const double parts = look_up(fraction_words, second.view()); parts > number.value) {
    number.value /= parts;
    number.proper = true;
    number.end = skip_article(text, second.end());
  } else if (second.is("couple") && first.is("a")) {
    number.value = 2;
    const Letters of = next_word(text, second.end());
    number.end = of.is("of") ? of.end() : second.end();
  } else if (const double more = look_up(number_words, second.view());
             number.value >= 20 && more >= 1 && more < 10 && second.view().size() > 2) {
    number.value += more;
    number.end = second.end();
  } else if (const auto fraction = and_a_half(text, first.end())) {
    number.whole_part = number.value;
    number.value += fraction->value;
    number.end = fraction->end;
  } else {
    number.whole = true;
  }
  return number;
}

}  // namespace

std::size_t skip_space(std::string_view text, std::size_t at) {
  for (;;) {
    const auto c = byte_at(text, at);
    if (at >= text.size()) return text.size();
    if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
      ++at;
    } else if (c == 0xC2 && (byte_at(text, at + 1) == 0xA0 || byte_at(text, at + 1) == 0xAD)) {
      at += 2;  // no-break space, soft hyphen
    } else if (c == 0xE2 && byte_at(text, at + 1) == 0x80 &&
               ((byte_at(text, at + 2) >= 0x80 && byte_at(text, at + 2) <= 0x8F) ||
                byte_at(text, at + 2) == 0xAF)) {
      at += 3;  // U+2000 to U+200F, narrow no-break space
    } else if ((c == 0xE2 && starts(text, at, "\xE2\x81\xA0")) ||
               (c == 0xE3 && starts(text, at, "\xE3\x80\x80")) ||
               (c == 0xEF && starts(text, at, "\xEF\xBB\xBF"))) {
      at += 3;  // word joiner, ideographic space, byte order mark
    } else {
      return at;
    }
  }
}

std::size_t dash_at(std::string_view text, std::size_t at) {
  const auto c = byte_at(text, at);
  if (c == '-') return 1;
  if (c != 0xE2) return 0;
  const auto second = byte_at(text, at + 1);
  const auto third = byte_at(text, at + 2);
  if (second == 0x80 && third >= 0x90 && third <= 0x95) return 3;  // U+2010 to U+2015
  if (second == 0x88 && third == 0x92) return 3;                   // U+2212
  return 0;
}

std::size_t inch_mark_at(std::string_view text, std::size_t at) {
  if (byte_at(text, at) == '"') return 1;
  if (starts(text, at, "\xE2\x80\xB3") || starts(text, at, "\xE2\x80\x9D")) return 3;
  if (starts(text, at, "''")) return 2;
  if (starts(text, at, "\xE2\x80\xB2\xE2\x80\xB2") || starts(text, at, "\xE2\x80\x99\xE2\x80\x99")) return 6;
  return 0;
}

Letters::Letters(std::string_view text, std::size_t at) : end_(at) {
  if (at >= text.size() || !letter(text[at])) return;
  raw_ = text[at];
  std::size_t size = 0;
  while (end_ < text.size() && letter(text[end_])) {
    if (size < buffer_.size()) buffer_[size] = static_cast<char>(text[end_] | 0x20);
    ++size;
    ++end_;
  }
  const auto next = byte_at(text, end_);
  const bool goes_on = next >= 0xC3 && next <= 0xDF;  // two-byte letters: é, ñ, Greek, Cyrillic
  if (!goes_on && size <= buffer_.size()) size_ = size;
}

std::optional<Number> read_figure(std::string_view text, std::size_t at) {
  if (const auto sign = vulgar_at(text, at)) {
    Number number{sign->value, sign->end};
    number.proper = true;
    return number;
  }
  if (const auto parts = parts_at(text, at)) {
    const auto [top, bottom] = *parts;
    if (top.value > bottom.value)
      if (const auto mixed = fused(top.value, bottom.value, bottom.end)) return mixed;
    Number number{top.value / bottom.value, bottom.end};
    number.proper = top.value < bottom.value && top.value > 0;
    return number;
  }
  auto number = decimal_at(text, at);
  if (!number || !number->whole) return number;
  std::size_t fraction_at = 0;
  const auto fraction = fraction_after(text, number->end, fraction_at);
  if (fraction && number->value > 0) {
    number->whole_part = number->value;
    number->fraction_at = fraction_at;
    number->value += fraction->value;
    number->end = fraction->end;
    number->whole = false;
  } else if (const auto half = and_a_half(text, number->end)) {
    number->whole_part = number->value;
    number->value += half->value;
    number->end = half->end;
    number->whole = false;
  }
  return number;
}

std::optional<Number> read_number(std::string_view text, std::size_t at) {
  if (at >= text.size()) return std::nullopt;
  if (letter(text[at])) return read_words(text, at);
  return read_figure(text, at);
}

std::optional<std::size_t> range_mark(std::string_view text, std::size_t at, bool or_too) {
  std::size_t next = skip_space(text, at);
  bool dashed = false;
  for (int i = 0; i < 2; ++i)
    if (const auto dash = dash_at(text, next)) {
      next = skip_space(text, next + dash);
      dashed = true;
    }
  const Letters word(text, next);
  const bool joint = word.is("to") || word.is("through") || word.is("thru") || (or_too && word.is("or"));
  if (!dashed && !joint) return std::nullopt;
  if (joint) {
    next = word.end();
    while (byte_at(text, next) == '.') ++next;
    if (const auto dash = dash_at(text, next)) next += dash;
    next = skip_space(text, next);
  }
  return next;
}

}  // namespace sealworthy::quantity
