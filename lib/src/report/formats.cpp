#include <algorithm>
#include <sealworthy/formats.hpp>
#include <sealworthy/html_report.hpp>

namespace sealworthy {

std::optional<ReportFormat> report_format(std::string_view name) noexcept {
  const auto it = std::find(report_formats.begin(), report_formats.end(), name);
  if (it == report_formats.end()) return std::nullopt;
  return static_cast<ReportFormat>(it - report_formats.begin());
}

bool FailPolicy::fails(const Finding& finding) const {
  return at && finding.severity >= *at && finding.counts();
}

bool FailPolicy::fails(const RecipeReport& report) const {
  if (require_tested && report.verdict != Verdict::tested) return true;
  return std::any_of(report.findings.begin(), report.findings.end(),
                     [this](const Finding& finding) { return fails(finding); });
}

std::unique_ptr<ReportWriter> make_writer(ReportFormat format, const Checker& checker,
                                          WriterOptions options) {
  switch (format) {
    case ReportFormat::text:
      break;
    case ReportFormat::json:
      return std::make_unique<JsonWriter>();
    case ReportFormat::ndjson:
      return std::make_unique<NdjsonWriter>();
    case ReportFormat::sarif:
      return std::make_unique<SarifWriter>(checker, std::move(options.base));
    case ReportFormat::junit:
      return std::make_unique<JunitWriter>(std::move(options.base), options.fail);
    case ReportFormat::html:
      return std::make_unique<HtmlWriter>();
    case ReportFormat::annotations:
      return std::make_unique<AnnotationWriter>(std::move(options.base));
  }
  return std::make_unique<TextWriter>(options.style);
}

}  // namespace sealworthy
