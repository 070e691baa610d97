#include <fmt/format.h>

#include <sealworthy/formats.hpp>

#include "report/markup.hpp"
#include "report/places.hpp"

namespace sealworthy {
namespace {

/// For text and attributes. XML 1.0 has no way to write most control characters: they become U+FFFD.
std::string xml(std::string_view text) {
  std::string out;
  for (const char c : report::escaped(report::valid_utf8(text))) {
    if (c == '\n' || c == '\r' || c == '\t')
      out += fmt::format("&#{};", static_cast<int>(c));
    else if (static_cast<unsigned char>(c) < 0x20)
      out += "\xEF\xBF\xBD";
    else
      out += c;
  }
  return out;
}

std::string line_text(const Finding& finding, std::string_view path) {
  auto out = std::string(path);
  if (finding.at.line > 0) out += fmt::format(":{}:{}", finding.at.line, finding.at.column);
  out += fmt::format(": {} ({}): {}", to_string(finding.severity), finding.rule, finding.message);
  if (!finding.why.empty()) out += "\n  why: " + finding.why;
  if (!finding.instead.empty()) out += "\n  instead: " + finding.instead;
  for (const auto& source : finding.sources) out += "\n  source: " + source;
  if (!finding.accepted_because.empty()) out += "\n  accepted: " + finding.accepted_because;
  if (finding.known) out += "\n  known from the baseline";
  return out + "\n";
}

std::string element(std::string_view name, std::string_view type, std::string_view message,
                    std::string_view text) {
  return fmt::format("      <{0} type=\"{1}\" message=\"{2}\">{3}</{0}>\n", name, xml(type), xml(message),
                     xml(text));
}

}  // namespace

std::string JunitWriter::begin() {
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites name=\"sealworthy\">\n";
}

std::string JunitWriter::recipe(const RecipeReport& report) {
  std::string out;
  if (tests_ > 0 && report.path != path_) out = close_suite();
  path_ = report.path;
  ++tests_;

  const Finding* worst = nullptr;  // the findings are sorted, worst first
  std::string failing;
  std::string rest;
  for (const auto& finding : report.findings) {
    const auto path = report::shown_path(report::file_of(report, finding), base_);
    const bool unreadable = report.verdict == Verdict::unreadable && finding.counts();
    if (!unreadable && !fail_.fails(finding)) {
      rest += line_text(finding, path);
      continue;
    }
    if (worst == nullptr) worst = &finding;
    failing += line_text(finding, path);
  }
  const auto shown = report::shown_path(report.path, base_);
  cases_ += fmt::format("    <testcase name=\"{}\" classname=\"{}\" time=\"0\">\n",
                        xml(report::name_of(report)), xml(shown));
  if (report.verdict == Verdict::unreadable) {
    ++errors_;
    cases_ += element("error", "unreadable", worst == nullptr ? "unreadable" : worst->message, failing);
  } else if (fail_.fails(report)) {
    ++failures_;
    const auto verdict = fmt::format("the verdict is {}", to_string(report.verdict));
    cases_ += element("failure", worst == nullptr ? "not tested" : to_string(worst->severity),
                      worst == nullptr ? verdict : worst->message, failing.empty() ? verdict : failing);
  }
  cases_ += fmt::format("      <system-out>{}</system-out>\n    </testcase>\n",
                        xml(fmt::format("verdict: {}\n", to_string(report.verdict)) + rest));
  return out;
}

std::string JunitWriter::close_suite() {
  auto out = fmt::format(
      "  <testsuite name=\"{}\" tests=\"{}\" failures=\"{}\" errors=\"{}\" skipped=\"0\" time=\"0\">\n{}"
      "  </testsuite>\n",
      xml(report::shown_path(path_, base_)), tests_, failures_, errors_, cases_);
  cases_.clear();
  tests_ = failures_ = errors_ = 0;
  return out;
}

std::string JunitWriter::end(const Summary& /*summary*/) {
  return (tests_ > 0 ? close_suite() : "") + "</testsuites>\n";
}

}  // namespace sealworthy
