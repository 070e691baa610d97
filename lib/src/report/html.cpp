#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <sealworthy/html_report.hpp>
#include <sealworthy/science.hpp>
#include <sealworthy/study.hpp>
#include <string_view>
#include <unordered_map>
#include <variant>

#include "report/cautions.hpp"
#include "report/markup.hpp"
#include "report/page/files.hpp"
#include "report/places.hpp"
#include "report/quote.hpp"

namespace sealworthy {
namespace {

/// A JSON string that may stand inside a <script>: no "<" of a closing tag, and bytes that are no UTF-8 (a
/// path may hold them) replaced.
void append_string(std::string& out, std::string_view text) {
  const std::string quoted =
      nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  for (const char c : quoted) {
    if (c == '<')
      out += "\\u003c";
    else
      out += c;
  }
}

void append_number(std::string& out, double value) { fmt::format_to(std::back_inserter(out), "{:g}", value); }

void append_optional(std::string& out, const std::optional<double>& value) {
  if (value)
    append_number(out, *value);
  else
    out += "null";
}

template <class Range, class Each>
void append_list(std::string& out, const Range& range, const Each& each) {
  out += '[';
  bool first = true;
  for (const auto& item : range) {
    if (!first) out += ',';
    first = false;
    each(item);
  }
  out += ']';
}

}  // namespace

/// The distinct texts of the run, numbered as they come.
class HtmlWriter::Texts {
 public:
  /// Numbers the text; a new one is also put into the list for the card at hand.
  std::size_t number(std::string_view text) {
    if (const auto it = numbers_.find(text); it != numbers_.end()) return it->second;
    const std::size_t next = numbers_.size();
    numbers_.emplace(std::string(text), next);
    if (!new_.empty()) new_ += ',';
    append_string(new_, text);
    return next;
  }
  void append(std::string& out, std::string_view text) {
    fmt::format_to(std::back_inserter(out), "{}", number(text));
  }
  std::string take_new() { return std::exchange(new_, {}); }

 private:
  struct Hash : std::hash<std::string_view> {
    using is_transparent = void;
  };
  std::unordered_map<std::string, std::size_t, Hash, std::equal_to<>> numbers_;
  std::string new_;
};

namespace {

using report::filled;

constexpr int quote_columns = 200;  // of the words under a finding; the browser wraps them

template <class Texts>
void append_finding(std::string& out, const Finding& finding, Texts& texts) {
  out += '[';
  texts.append(out, finding.rule);
  fmt::format_to(std::back_inserter(out), ",{},", static_cast<int>(finding.severity));
  texts.append(out, to_string(finding.topic));
  fmt::format_to(std::back_inserter(out), ",{},{},", finding.at.line, finding.at.column);
  texts.append(out, finding.message);
  out += ',';
  texts.append(out, finding.why);
  out += ',';
  texts.append(out, finding.instead);
  out += ',';
  append_list(out, finding.sources, [&](const std::string& source) { texts.append(out, source); });
  out += finding.from_kitchen ? ",1," : ",0,";
  if (finding.accepted_because.empty())
    out += "null";
  else
    texts.append(out, finding.accepted_because);
  out += ']';
}

/// The words that findings point at: `"3":12` for a line, `"3:512":13` for what begins within one.
template <class Texts>
void append_quotes(std::string& out, const RecipeReport& report, Texts& texts) {
  std::map<std::string, std::string> quotes;
  for (const auto& finding : report.findings) {
    const auto line = report::line_of(report, finding);
    if (line.data() == nullptr) continue;
    auto quote = report::quote(line, finding.at.column, finding.found, quote_columns);
    const auto place = quote.part ? fmt::format("{}:{}", finding.at.line, finding.at.column)
                                  : fmt::format("{}", finding.at.line);
    quotes.emplace(place, std::move(quote.text));
  }
  bool first = true;
  for (const auto& [place, text] : quotes) {
    fmt::format_to(std::back_inserter(out), "{}\"{}\":", first ? "" : ",", place);
    first = false;
    texts.append(out, text);
  }
}

template <class Texts>
void append_table(std::string& out, const TableUse& use, Texts& texts) {
  out += '[';
  texts.append(out, use.jar);
  out += ',';
  texts.append(out, use.method);
  out += ',';
  append_optional(out, use.minutes);
  out += ',';
  append_optional(out, use.psi);
  out += ',';
  append_list(out, use.judged_at_ft, [&](double ft) { append_number(out, ft); });
  out += ',';
  append_list(out, use.steps, [&](const TableStep& step) {
    out += '[';
    append_number(out, step.from_ft);
    out += ',';
    append_optional(out, std::isfinite(step.to_ft) ? std::optional(step.to_ft) : std::nullopt);
    out += ',';
    append_number(out, step.minutes);
    out += ',';
    append_optional(out, step.psi);
    out += ']';
  });
  out += ']';
}

/// "[factor,[[mark,card,published,note,percent], ...]]"
template <class Texts>
void append_comparison(std::string& out, const Comparison& comparison, Texts& texts) {
  out += '[';
  append_number(out, comparison.factor);
  out += ',';
  append_list(out, comparison.lines, [&](const ComparedLine& line) {
    out += '[';
    texts.append(out, to_string(line.mark));
    for (const std::string* text : {&line.card, &line.published, &line.note}) {
      out += ',';
      texts.append(out, *text);
    }
    out += ',';
    append_optional(out, line.percent);
    out += ']';
  });
  out += ']';
}

/// "[[ft, boiling F] or null, [best, bound, strict, limit pH] or null]"
void append_study(std::string& out, const Study& study) {
  const auto hundredth = [&out](double value) { append_number(out, std::round(value * 100) / 100); };
  out += '[';
  if (study.altitude) {
    out += '[';
    append_number(out, std::round(in_feet(study.altitude->altitude)));
    out += ',';
    append_number(out, std::round(in_fahrenheit(study.altitude->boiling) * 10) / 10);
    out += ']';
  } else {
    out += "null";
  }
  out += ',';
  if (study.acidity) {
    out += '[';
    hundredth(study.acidity->best);
    out += ',';
    hundredth(study.acidity->bound);
    out += ',';
    hundredth(study.acidity->strict);
    out += ',';
    hundredth(study.acidity->limit);
    out += ']';
  } else {
    out += "null";
  }
  out += ']';
}

/// Where water boils, every 500 ft: "[[0,211.95], ...]".
std::string boiling_curve() {
  std::string out = "[";
  constexpr int step = 500, highest = 10000;
  for (int ft = 0; ft <= highest; ft += step) {
    const auto boils = science::boiling_point(feet(ft));
    const auto* temperature = std::get_if<Temperature>(&boils);
    if (temperature == nullptr) continue;
    fmt::format_to(std::back_inserter(out), "{}[{},{:.2f}]", out.size() > 1 ? "," : "", ft,
                   in_fahrenheit(*temperature));
  }
  return out + "]";
}

std::string cautions_markup() {
  std::string out;
  for (const auto& caution : report::cautions()) out += "<li>" + report::escaped(caution.text) + "</li>\n";
  return out;
}

}  // namespace

HtmlWriter::HtmlWriter() : texts_(std::make_unique<Texts>()) {}
HtmlWriter::~HtmlWriter() = default;

std::string HtmlWriter::begin() {
  return filled(report::page::check_html, {{"STYLE", std::string(report::page::style_css)},
                                           {"WHAT", report::escaped(report::what_it_is())},
                                           {"CAUTIONS", cautions_markup()},
                                           {"VERSION", std::string(version())}}) +
         R"({"verdicts":["tested","unproven","hazard","unreadable"],"severities":["notice","caution","warning","danger"],)"
         "\n\"boiling\":" +
         boiling_curve() + ",\n\"cards\":[";
}

std::string HtmlWriter::recipe(const RecipeReport& report) {
  Texts& texts = *texts_;
  std::string out = first_ ? "\n{\"p\":" : ",\n{\"p\":";
  first_ = false;
  append_string(out, report.path);
  fmt::format_to(std::back_inserter(out), ",\"d\":{},\"v\":{},\"t\":", report.document,
                 static_cast<int>(report.verdict));
  append_string(out, report.title);
  out += ",\"m\":";
  if (report.matched.id.empty()) {
    out += "null";
  } else {
    const auto& m = report.matched;
    out += '[';
    for (const std::string& text : {m.id, m.title, m.source, m.by, m.holds_for}) {
      texts.append(out, text);
      out += ',';
    }
    out += m.from_memory ? "1]" : "0]";
  }
  out += ",\"f\":";
  append_list(out, report.findings, [&](const Finding& finding) { append_finding(out, finding, texts); });
  out += ",\"l\":{";
  append_quotes(out, report, texts);
  out += "},\"a\":";
  append_list(out, report.verdict == Verdict::tested ? report.assumed : std::vector<std::string>(),
              [&](const std::string& text) { texts.append(out, text); });
  out += ",\"pt\":";
  append_list(out, report.points, [&](const Point& point) {
    out += '[';
    texts.append(out, to_string(point.kind));
    out += ',';
    texts.append(out, to_string(point.state));
    out += ',';
    texts.append(out, point.found);
    out += ',';
    texts.append(out, point.needed);
    out += ']';
  });
  out += ",\"tb\":";
  append_list(out, report.tables, [&](const TableUse& use) { append_table(out, use, texts); });
  if (report.compared) {
    out += ",\"c\":";
    append_comparison(out, *report.compared, texts);
  }
  if (report.study) {
    out += ",\"s\":";
    append_study(out, *report.study);
  }
  out += ",\"k\":";
  if (report.kitchen.empty())
    out += "null";
  else
    texts.append(out, report.kitchen);
  out += ",\"n\":[" + texts.take_new() + "]}";
  return out;
}

std::string HtmlWriter::end(const Summary& /*summary*/) {
  return std::string("\n]}\n</script>\n<script>") + std::string(report::page::check_js) +
         "</script>\n</body>\n</html>\n";
}

}  // namespace sealworthy
