#include <fmt/format.h>

#include <algorithm>
#include <sealworthy/report.hpp>
#include <vector>

#include "report/cautions.hpp"
#include "report/places.hpp"
#include "report/quote.hpp"
#include "report/side_by_side.hpp"
#include "report/wrap.hpp"

namespace sealworthy {
namespace {

using report::cut;
using report::wrap;

constexpr int label_columns = 34;  // where a finding's message starts on a wide terminal
constexpr int detail_columns = 17;
constexpr int quote_columns = 10;

int clamped(const TextStyle& style) { return std::clamp(style.width, 40, 100); }

/// Colours of the signal words after ANSI Z535.4: red, orange, yellow, blue.
std::string painted(std::string_view word, std::string_view code, const TextStyle& style) {
  return style.color ? fmt::format("\033[{}m{}\033[0m", code, word) : std::string(word);
}

std::string_view color_of(Severity s) {
  switch (s) {
    case Severity::danger:
      return "1;31";
    case Severity::warning:
      return "38;5;208";
    case Severity::caution:
      return "33";
    case Severity::notice:
      return "34";
  }
  return "0";
}

std::string headline(const RecipeReport& report, const TextStyle& style) {
  std::string title =
      report.title.empty() ? fmt::format("recipe {} of the file", report.document) : report.title;
  switch (report.verdict) {
    case Verdict::tested:
      return title + ": " + painted("tested", "1;32", style) +
             (report.matched.holds_for.empty() ? "" : ", at " + report.matched.holds_for);
    case Verdict::hazard:
      return title + ": " + painted("HAZARD", "1;31", style) + ", do not can it as written";
    case Verdict::unproven:
      return title + ": " + painted("unproven", "33", style) + ", nothing published vouches for all of it";
    case Verdict::unreadable:
      return title + ": " + painted("unreadable", "38;5;208", style) + ", it was not checked";
  }
  return title;
}

std::string detail(std::string_view name, std::string_view text, const TextStyle& style) {
  return text.empty() ? "" : wrap(fmt::format("        {:<9}", name), text, detail_columns, clamped(style));
}

std::string source_line(const RecipeReport& report, const Finding& finding, const TextStyle& style) {
  const auto line = report::line_of(report, finding);
  if (line.data() == nullptr) return {};
  const int room = clamped(style) - quote_columns;
  const auto quote = report::quote(line, finding.at.column, finding.found, room);
  const auto place = quote.part ? fmt::format("{}:{}", finding.at.line, finding.at.column)
                                : fmt::format("{}", finding.at.line);
  return cut(fmt::format("{:>7} | {}", place, quote.text), clamped(style)) + "\n";
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  return fmt::format("{}", fmt::join(parts, between));
}

std::string finding_text(const RecipeReport& report, const Finding& finding, const TextStyle& style) {
  const auto place = finding.from_kitchen  ? std::string(", kitchen")
                     : finding.at.line > 0 ? fmt::format(", line {}", finding.at.line)
                                           : std::string();
  const std::string word(to_string(finding.severity));
  const std::string label = fmt::format("    {:<8}{}{}", word, to_string(finding.topic), place);
  const int width = clamped(style);
  std::string out;
  if (width < 72) {
    out = label + "\n" + wrap("      ", finding.message, 6, width);
  } else {
    out = wrap(fmt::format("{:<{}}", label, label_columns), finding.message, label_columns, width);
  }
  if (style.color) out.replace(4, word.size(), painted(word, color_of(finding.severity), style));
  if (!finding.from_kitchen) {
    out += source_line(report, finding, style);
  } else if (!report.kitchen.empty()) {
    out += detail("in", fmt::format("{}, line {}", report.kitchen, finding.at.line), style);
  }
  out += detail("why", finding.why, style);
  out += detail("means", finding.meaning, style);
  out += detail("instead", finding.instead, style);
  out += detail("source", joined(finding.sources, "; "), style);
  if (!finding.accepted_because.empty())
    out += detail("accepted", finding.accepted_because + " (the verdict stays as it is)", style);
  else if (!finding.accepted_until.empty())
    out += detail("accepted", "only until " + finding.accepted_until + ", so it counts again", style);
  return out;
}

std::string points_in(const RecipeReport& report, Point::State state) {
  std::vector<std::string> names;
  for (const auto& point : report.points) {
    const std::string name(to_string(point.kind));
    if (point.state == state && std::find(names.begin(), names.end(), name) == names.end())
      names.push_back(name);
  }
  return joined(names, ", ");
}

std::string match_text(const RecipeReport& report, const TextStyle& style) {
  const auto& matched = report.matched;
  if (matched.id.empty()) return {};
  const int width = clamped(style);
  const auto name = fmt::format("{} ({})", matched.title, matched.source);
  std::string out;
  if (report.verdict == Verdict::tested) {
    const auto held = std::count_if(report.points.begin(), report.points.end(),
                                    [](const Point& p) { return p.state == Point::State::held; });
    const auto assumed = static_cast<std::ptrdiff_t>(report.points.size()) - held;
    auto tail = fmt::format("{} of {} points held", held, report.points.size());
    if (assumed > 0) tail += fmt::format(", {} assumed", assumed);
    out = wrap("    follows  ", name + ": " + tail, 13, width);
    if (!report.assumed.empty()) out += wrap("    provided that ", joined(report.assumed, "; "), 18, width);
    return out;
  }
  out = wrap("    compared with ", name, 18, width);
  if (matched.from_memory)
    out +=
        wrap("    ",
             "The figures of this process rest on memory: nobody saw the page, so no card is tested by it.",
             4, width);
  if (report.verdict == Verdict::unproven) {
    if (const auto open = points_in(report, Point::State::unknown); !open.empty())
      out += wrap("    not known     ", open, 18, width);
    if (const auto other = points_in(report, Point::State::differs); !other.empty())
      out += wrap("    differs       ", other, 18, width);
  }
  return out;
}

}  // namespace

std::string TextWriter::recipe(const RecipeReport& report) {
  std::string out;
  if (report.path != last_path_) out += report.path + "\n";
  last_path_ = report.path;
  out += wrap("  ", headline(report, style_), 4, clamped(style_) + (style_.color ? 12 : 0));
  out += match_text(report, style_);
  std::size_t known = 0;
  for (const auto& finding : report.findings) {
    if (finding.known)
      ++known;
    else
      out += finding_text(report, finding, style_);
  }
  if (known > 0) out += fmt::format("    {} known from the baseline\n", known);
  if (report.compared) out += report::side_by_side(*report.compared, style_);
  return out;
}

std::string TextWriter::end(const Summary& summary) {
  const auto recipes = summary.recipes;
  std::vector<std::string> parts;
  for (const auto v : {Verdict::tested, Verdict::hazard, Verdict::unproven, Verdict::unreadable})
    if (const auto n = summary.count(v)) parts.push_back(fmt::format("{} {}", n, to_string(v)));
  std::string text = recipes == 0 ? "Nothing was checked."
                                  : fmt::format("{} {}: {}.", recipes, recipes == 1 ? "recipe" : "recipes",
                                                joined(parts, ", "));
  if (summary.accepted > 0) text += fmt::format(" {} accepted.", summary.accepted);
  if (summary.skipped > 0)
    text += fmt::format(" {} {} not about canning: left out (--all checks {}).", summary.skipped,
                        summary.skipped == 1 ? "page is" : "pages are", summary.skipped == 1 ? "it" : "them");
  if (summary.known > 0) text += fmt::format(" {} known from the baseline.", summary.known);
  const int width = clamped(style_);
  // What the tool can't see matters to who got a verdict.
  return "\n" + wrap("", text, 0, width) + (recipes == 0 ? std::string() : report::cautions_text(width));
}

}  // namespace sealworthy
