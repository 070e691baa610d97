#include "quantity/amount.hpp"

#include <algorithm>
#include <array>

#include "quantity/amount_reader.hpp"
#include "quantity/figure_errors.hpp"
#include "quantity/lexicon.hpp"
#include "quantity/scan.hpp"

namespace sealworthy::quantity {
namespace {

/// Past list bullets and the like before a line.
std::size_t skip_bullets(std::string_view text) {
  auto at = skip_space(text, 0);
  for (;;) {
    std::size_t size = 0;
    if (char_at(text, at, '*') || char_at(text, at, '|')) size = 1;
    if (starts_at(text, at, "\xC2\xB7")) size = 2;  // ·
    static constexpr std::array<std::string_view, 3> bullets{"\xE2\x80\xA2", "\xE2\x96\xA2",
                                                             "\xE2\x96\xAA"};  // • ▢ ▪
    for (const auto bullet : bullets)
      if (starts_at(text, at, bullet)) size = 3;
    if (const auto dash = dash_at(text, at); dash != 0 && char_at(text, at + dash, ' ')) size = dash;
    if (size == 0) return at;
    at = skip_space(text, at + size);
  }
}

bool is_mark(char c) { return c == ',' || c == ':' || c == '(' || c == '|' || c == ';' || c == '-'; }

template <std::size_t N>
bool one_of(const Letters& word, const std::array<std::string_view, N>& words) {
  return std::any_of(words.begin(), words.end(), [&](std::string_view known) { return word.is(known); });
}

/// Whether an amount met further on in a line is the ingredient's. A weight or volume is, unless it tells a
/// cut or a yield ("cut in 4 pieces", "to yield 5 cups"); a count is behind a mark, where it ends the line or
/// its part or stands for a jar ("4 per jar"), and behind "juice of".
bool belongs(std::string_view text, const Amount& amount, char mark, const Letters& before) {
  static constexpr std::array<std::string_view, 7> other_things{"in",    "into", "yield", "yields",
                                                                "makes", "make", "per"};
  static constexpr std::array<std::string_view, 2> of{"of", "from"};
  if (one_of(before, other_things)) return false;
  if (!std::holds_alternative<Interval<Count>>(amount.measure)) return amount.stated_any();
  if (one_of(before, of)) return true;
  if (mark == 0) return false;
  const auto after = skip_space(text, amount.end);
  const bool ends = after >= text.size() || text[after] == ',' || text[after] == ')' || text[after] == ';';
  return ends || !amount.unit.empty() || mark == ':' || phrase_at(text, after, "per").has_value();
}

/// An amount further on in the line.
std::optional<Amount> search(std::string_view text, Units units) {
  char mark = 0;
  Letters before;
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    const bool word = is_letter(c);
    const Letters letters = word ? Letters(text, at) : Letters();
    const bool may_start = (!word && c != ' ') || meaning(letters).role != Role::none;
    const auto number = may_start ? read_number(text, at) : std::nullopt;
    if (number) {
      const auto amount = AmountReader(text, units).read(at);
      if (amount && belongs(text, *amount, mark, before)) {
        auto found = *amount;
        found.about = found.about || meaning(before).role == Role::about;
        return found;
      }
      at = std::max(number->end, amount ? amount->end : 0);
      mark = 0;
      before = Letters();
    } else if (word) {
      before = letters;
      if (meaning(letters).role != Role::about) mark = 0;
      at = letters.end();
    } else {
      if (is_mark(c)) mark = c;
      // a figure that can't be read (too long) is passed whole
      const bool digit = is_digit(c);
      while (++at < text.size() && digit && is_digit(text[at])) {
      }
    }
  }
  return std::nullopt;
}

/// Past what may join an amount to the same amount in other units; nullopt where nothing does.
std::optional<std::size_t> past_joint(std::string_view text, std::size_t at) {
  static constexpr std::array<std::string_view, 2> words{"or", "about"};
  for (const auto word : words)
    if (const auto end = phrase_at(text, at, word)) return word == "or" ? *end : at;
  if (char_at(text, at, '/') || char_at(text, at, '|') || char_at(text, at, '=')) return at + 1;
  if (char_at(text, at, ',') && meaning({text, skip_space(text, at + 1)}).role == Role::about) return at + 1;
  return std::nullopt;
}

/// More than a home kitchen handles: a slip of the keyboard.
bool absurd(const Amount& amount) {
  if (const auto* mass = std::get_if<Interval<Mass>>(&amount.measure)) return mass->high > pounds(5000);
  if (const auto* volume = std::get_if<Interval<Volume>>(&amount.measure))
    return volume->high > us_cups(16 * 1000);
  return amount.stated.high > 100000;
}

}  // namespace

std::optional<Amount> read_equal(std::string_view line, std::size_t from, Units units) {
  const auto at = skip_space(line, from);
  const bool bracket = char_at(line, at, '(') || char_at(line, at, '[');
  const auto inside = bracket ? std::optional(at + 1) : past_joint(line, at);
  if (!inside) return std::nullopt;
  auto amount = AmountReader(line, units).read(*inside);
  if (!amount || !amount->stated_any()) return std::nullopt;
  amount->begin = at;
  const auto after = skip_space(line, amount->end);
  if (bracket && (char_at(line, after, ')') || char_at(line, after, ']'))) {
    amount->end = after + 1;
    return amount;
  }
  const bool measured =
      !std::holds_alternative<Interval<Count>>(amount->measure) && amount->measure.index() != 0;
  return measured ? amount : std::nullopt;
}

std::optional<FigureError> refuse_amount(std::string_view line, Units units) {
  const std::string advice = "write an amount like \"2 cups\", \"1 1/2 lb\" or \"2-3 onions\"";
  const auto at = skip_bullets(line);
  const auto sign = dash_at(line, at);
  const auto figure = sign != 0 ? read_figure(line, at + sign) : std::nullopt;
  if (figure && figure->value > 0) return refusal(line, "begins with an amount below zero", advice);
  const auto amount = read_amount(line, units);
  if (amount && absurd(*amount)) return refusal(line, "has an amount beyond any kitchen", advice);
  if (amount || !digit_at(line, at)) return std::nullopt;
  const auto zero = read_figure(line, at);
  return refusal(line, zero ? "begins with an amount of zero" : "begins with a figure that can't be read",
                 advice);
}

std::optional<Amount> read_amount(std::string_view line, Units units, bool anywhere) {
  if (auto amount = AmountReader(line, units).read(skip_bullets(line))) return amount;
  return anywhere ? search(line, units) : std::nullopt;
}

}  // namespace sealworthy::quantity
