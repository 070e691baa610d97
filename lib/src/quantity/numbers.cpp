#include "quantity/numbers.hpp"

#include <array>
#include <charconv>
#include <utility>

#include "quantity/lexicon.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

constexpr std::size_t longest_figure = 12;

/// A value and where it ends.
struct Part {
  double value = 0;
  std::size_t end = 0;
};

/// "½" and the like.
std::optional<Part> vulgar_at(std::string_view text, std::size_t at) {
  const auto first = byte_at(text, at);
  if (first == 0xC2) {
    switch (byte_at(text, at + 1)) {
      case 0xBC:
        return Part{0.25, at + 2};
      case 0xBD:
        return Part{0.5, at + 2};
      case 0xBE:
        return Part{0.75, at + 2};
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
    return Part{number_forms[third - 0x90], at + 3};
  return std::nullopt;
}

/// The digits at `at` as a number, and where they end; nullopt where none stand or too many.
std::optional<Part> digits_at(std::string_view text, std::size_t at) {
  double value = 0;
  std::size_t end = at;
  while (digit_at(text, end)) {
    value = value * 10 + (text[end] - '0');
    ++end;
  }
  if (end == at || end - at > longest_figure) return std::nullopt;
  return Part{value, end};
}

/// Bytes of a fraction bar: "/", "⁄" or "∕".
std::size_t bar_at(std::string_view text, std::size_t at) {
  if (byte_at(text, at) == '/') return 1;
  if (starts_at(text, at, "\xE2\x81\x84") || starts_at(text, at, "\xE2\x88\x95")) return 3;
  return 0;
}

/// The figure under a fraction bar.
std::optional<Part> bottom_at(std::string_view text, std::size_t at) {
  const auto bottom = digits_at(text, at + bar_at(text, at));
  return bottom && bottom->value >= 1 && bottom->value <= 64 ? bottom : std::nullopt;
}

std::optional<Part> proper_fraction_at(std::string_view text, std::size_t at) {
  if (const auto sign = vulgar_at(text, at)) return sign;
  const auto top = digits_at(text, at);
  if (!top || top->value < 1 || bar_at(text, top->end) == 0) return std::nullopt;
  const auto bottom = bottom_at(text, top->end);
  if (!bottom || top->value >= bottom->value) return std::nullopt;
  return Part{top->value / bottom->value, bottom->end};
}

Number whole(const Part& digits) {
  Number number{digits.value, digits.end};
  number.whole = true;
  return number;
}

Number fraction(double value, std::size_t end) {
  Number number{value, end};
  number.proper = value > 0 && value < 1;
  return number;
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
std::optional<Part> fraction_after(std::string_view text, std::size_t at, std::size_t& starts_at) {
  std::size_t next = skip_space(text, at);
  if (const auto dash = dash_at(text, next)) {
    next = skip_space(text, next + dash);
  } else if (byte_at(text, next) == '&') {
    next = skip_space(text, next + 1);
  } else if (const auto both = phrase_at(text, next, "and")) {
    next = skip_space(text, *both);
  }
  starts_at = next;
  return proper_fraction_at(text, next);
}

/// "3/4", "3/2", "11/2".
Number quotient(const Part& top, const Part& bottom) {
  if (top.value > bottom.value)
    if (const auto mixed = fused(top.value, bottom.value, bottom.end)) return *mixed;
  return fraction(top.value / bottom.value, bottom.end);
}

std::size_t count_digits(std::string_view text, std::size_t at) {
  std::size_t count = 0;
  while (digit_at(text, at + count)) ++count;
  return count;
}

/// The digits of one figure, as from_chars wants them.
struct Digits {
  std::array<char, longest_figure + 1> clean{};
  std::size_t size = 0;
  std::size_t end = 0;

  bool take(std::string_view text, std::size_t count) {
    if (size + count > longest_figure) return false;
    for (std::size_t i = 0; i < count; ++i) clean[size++] = text[end++];
    return true;
  }
};

/// Digits with thousands commas and a decimal point or comma.
std::optional<Number> decimal_at(std::string_view text, std::size_t at) {
  Digits digits;
  digits.end = at;
  const auto first = count_digits(text, at);
  if (!digits.take(text, first)) return std::nullopt;
  const bool groups = first > 0 && first <= 3 && digits.clean[0] != '0';
  while (groups && char_at(text, digits.end, ',') && count_digits(text, digits.end + 1) == 3) {
    ++digits.end;
    if (!digits.take(text, 3)) return std::nullopt;
  }
  const bool point = char_at(text, digits.end, '.') || (char_at(text, digits.end, ',') && first > 0);
  const auto places = point ? count_digits(text, digits.end + 1) : 0;
  if (digits.size + places == 0) return std::nullopt;
  Number number;
  number.whole = places == 0;
  if (places > 0) {
    if (digits.size == longest_figure) return std::nullopt;
    digits.clean[digits.size++] = '.';
    ++digits.end;
    if (!digits.take(text, places)) return std::nullopt;
  }
  number.end = digits.end;
  const auto read = std::from_chars(digits.clean.data(), digits.clean.data() + digits.size, number.value);
  if (read.ec != std::errc{}) return std::nullopt;
  return number;
}

/// Past "of", "a", "an" after a fraction word: "half of a", "half an".
std::size_t skip_article(std::string_view text, std::size_t at) {
  const Letters first(text, skip_space(text, at));
  if (first.is("a") || first.is("an")) return first.end();
  if (!first.is("of")) return at;
  const Letters second(text, skip_space(text, first.end()));
  return second.is("a") || second.is("an") ? second.end() : at;
}

/// "and a half", "and one-half", "and a quarter" after a whole number.
std::optional<Part> and_a_half(std::string_view text, std::size_t at) {
  const auto next = past_hyphen(text, at);
  const auto joint = char_at(text, next, '&') ? std::optional(next + 1) : phrase_at(text, next, "and");
  if (!joint) return std::nullopt;
  const auto top_word = next_word(text, *joint);
  const auto& top = meaning(top_word);
  if (top.role != Role::number && top.role != Role::article) return std::nullopt;
  const auto bottom_word = next_word(text, top_word.end());
  const auto& bottom = meaning(bottom_word);
  if (bottom.role != Role::fraction || bottom.value <= top.value) return std::nullopt;
  return Part{top.value / bottom.value, bottom_word.end()};
}

std::optional<Number> read_words(std::string_view text, std::size_t at) {
  const Letters first(text, at);
  const auto& means = meaning(first);
  Number number;
  if (means.role == Role::fraction && !first.is("halves")) {
    number.value = 1 / means.value;
    number.proper = true;
    number.end = skip_article(text, first.end());
    return number;
  }
  if (means.role != Role::number && means.role != Role::article) return std::nullopt;
  number.value = means.value;
  number.end = first.end();
  const auto second = next_word(text, first.end());
  const auto& more = meaning(second);
  if (more.role == Role::fraction && more.value > number.value) {
    number.value /= more.value;
    number.proper = true;
    number.end = skip_article(text, second.end());
  } else if (second.is("couple") && first.is("a")) {
    number.value = 2;
    number.whole = true;
    number.end = phrase_at(text, second.end(), "of").value_or(second.end());
  } else if (more.role == Role::number && number.value >= 20 && more.value < 10) {
    number.value += more.value;
    number.whole = true;
    number.end = second.end();
  } else if (const auto fraction = and_a_half(text, first.end())) {
    number.whole_part = number.value;
    number.value += fraction->value;
    number.end = fraction->end;
  } else {
    number.whole = true;
    number.article = means.role == Role::article;
  }
  return number;
}

}  // namespace

std::optional<Number> read_figure(std::string_view text, std::size_t at) {
  if (const auto sign = vulgar_at(text, at)) return fraction(sign->value, sign->end);
  const auto top = digits_at(text, at);
  if (top && bar_at(text, top->end) != 0)
    if (const auto bottom = bottom_at(text, top->end)) return quotient(*top, *bottom);
  const bool plain = top && !char_at(text, top->end, ',') && !char_at(text, top->end, '.');
  auto number = plain ? std::optional(whole(*top)) : decimal_at(text, at);
  if (!number || !number->whole || number->value == 0) return number;
  std::size_t part_at = 0;
  auto part = fraction_after(text, number->end, part_at);
  if (!part) {
    part_at = 0;
    part = and_a_half(text, number->end);
  }
  if (!part) return number;
  number->whole_part = number->value;
  number->fraction_at = part_at;
  number->value += part->value;
  number->end = part->end;
  number->whole = false;
  return number;
}

std::optional<Number> read_number(std::string_view text, std::size_t at) {
  return letter_at(text, at) ? read_words(text, at) : read_figure(text, at);
}

std::optional<std::size_t> range_mark(std::string_view text, std::size_t at) {
  auto next = skip_space(text, at);
  bool dashed = false;
  for (int i = 0; i < 2; ++i)
    if (const auto dash = dash_at(text, next)) {
      next = skip_space(text, next + dash);
      dashed = true;
    }
  std::optional<std::size_t> joint;
  static constexpr std::array<std::string_view, 5> joints{"to", "or", "through", "thru", "up to"};
  for (const auto words : joints)
    if (!joint) joint = phrase_at(text, next, words);
  if (!joint) return dashed ? std::optional(next) : std::nullopt;
  next = *joint;
  while (char_at(text, next, '.')) ++next;
  if (const auto dash = dash_at(text, next)) next += dash;
  return skip_space(text, next);
}

}  // namespace sealworthy::quantity
