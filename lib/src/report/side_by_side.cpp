#include "report/side_by_side.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "quantity/figures.hpp"
#include "report/wrap.hpp"

namespace sealworthy::report {
namespace {

using Mark = ComparedLine::Mark;

constexpr int widest = 80;
constexpr int two_columns = 60;

char sign(Mark mark) {
  switch (mark) {
    case Mark::same:
      return '=';
    case Mark::free:
    case Mark::allowed:
      return '~';
    case Mark::more:
      return '>';
    case Mark::less:
      return '<';
    case Mark::missing:
      return '-';
    case Mark::added:
      return '+';
    case Mark::unknown:
      break;
  }
  return '?';
}

std::vector<std::string> broken(std::string_view text, int width) {
  std::vector<std::string> lines;
  const auto wrapped = wrap("", text, 0, width);
  for (std::size_t from = 0; from < wrapped.size();) {
    const auto end = std::min(wrapped.find('\n', from), wrapped.size());
    lines.push_back(cut(wrapped.substr(from, end - from), width));
    from = end + 1;
  }
  return lines;
}

std::string padded(const std::string& text, int width) {
  return text + std::string(static_cast<std::size_t>(std::max(0, width - columns(text))), ' ');
}

void trim(std::string& text) {
  while (text.ends_with(' ')) text.pop_back();
}

std::string published_with_note(const ComparedLine& line) {
  if (line.note.empty()) return line.published;
  return line.published.empty() ? "(" + line.note + ")" : line.published + " (" + line.note + ")";
}

std::string in_columns(const ComparedLine& line, int half) {
  const auto left = broken(line.card, half), right = broken(published_with_note(line), half);
  std::string out;
  for (std::size_t i = 0; i < std::max({left.size(), right.size(), std::size_t{1}}); ++i) {
    std::string row = fmt::format("    {} ", i == 0 ? sign(line.mark) : ' ');
    row += padded(i < left.size() ? left[i] : std::string(), half) + "  ";
    row += i < right.size() ? right[i] : std::string();
    trim(row);
    out += row + "\n";
  }
  return out;
}

std::string stacked(const ComparedLine& line, int width) {
  const auto lead = fmt::format("    {} ", sign(line.mark));
  std::string out = wrap(lead, line.card.empty() ? "nothing" : line.card, 6, width);
  out += wrap("      formula: ", published_with_note(line), 8, width);
  return out;
}

std::string batch_words(double factor) {
  if (factor > 0.98 && factor < 1.02) return "the published batch";
  return quantity::kitchen_number(factor) + " times the published batch";
}

}  // namespace

std::string side_by_side(const Comparison& comparison, const TextStyle& style) {
  const int width = std::clamp(style.width, 40, widest);
  std::string out =
      wrap("    side by side  ", comparison.title + ", at " + batch_words(comparison.factor), 18, width);
  const int half = (width - 8) / 2;
  if (width >= two_columns) out += "      " + padded("your card", half) + "  tested formula\n";
  for (const auto& line : comparison.lines)
    out += width >= two_columns ? in_columns(line, half) : stacked(line, width);
  return out +
         wrap("    ",
              "= the same   ~ free or allowed   < less   > more   - missing   + added   ? can't be told", 6,
              width);
}

}  // namespace sealworthy::report
