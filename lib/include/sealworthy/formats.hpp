#pragma once

/// The report formats of `check` by name, and those that other programs take: NDJSON, SARIF, JUnit XML and
/// workflow-command annotations. Like all of report.hpp they are pure functions of the reports.
///
/// The last three show paths relative to `WriterOptions::base` with forward slashes, since build services
/// join them to the root of the checked-out files. Bytes that are no UTF-8 are replaced by U+FFFD in every
/// format for programs, so that what comes out can always be parsed. Memory: that of one recipe (JUnit: of
/// one file; HTML: the distinct texts of all).

#include <array>
#include <memory>
#include <optional>
#include <sealworthy/checker.hpp>
#include <sealworthy/report.hpp>
#include <string>
#include <string_view>
#include <vector>

namespace sealworthy {

enum class ReportFormat { text, json, ndjson, sarif, junit, annotations, html };
inline constexpr std::array<std::string_view, 7> report_formats{"text",  "json",        "ndjson", "sarif",
                                                                "junit", "annotations", "html"};
std::optional<ReportFormat> report_format(std::string_view name) noexcept;

/// What makes a recipe fail a build. Findings that are accepted or known from a baseline never do.
struct FailPolicy {
  std::optional<Severity> at = Severity::warning;  ///< lowest severity that fails; none: no finding does
  bool require_tested = false;                     ///< a verdict other than `tested` fails too

  [[nodiscard]] bool fails(const Finding& finding) const;
  [[nodiscard]] bool fails(const RecipeReport& report) const;
};

struct WriterOptions {
  TextStyle style;   ///< of text
  std::string base;  ///< absolute folder that paths are shown relative to; empty: paths stay as they are
  FailPolicy fail;   ///< which findings are failures in JUnit
};

/// Never null. The checker gives SARIF the texts of its rules and must outlive the writer.
std::unique_ptr<ReportWriter> make_writer(ReportFormat format, const Checker& checker, WriterOptions options);

/// One recipe a line, each the object that JSON has in `recipes`; no summary. Lines can be joined, cut and
/// sorted by any tool.
class NdjsonWriter : public ReportWriter {
 public:
  std::string begin() override { return {}; }
  std::string recipe(const RecipeReport& report) override;
  std::string end(const Summary& /*summary*/) override { return {}; }
};

/// SARIF 2.1.0 (OASIS Standard, 2020), one run. A result a finding, with region, the line as snippet, a
/// `partialFingerprints` entry that outlives moved lines, and a suppression where the card accepts it
/// (`inSource`) or a baseline knows it (`external`). Levels: danger and warning are `error`, caution is
/// `warning`, notice is `note`. Rules are listed in the order of their first result.
class SarifWriter : public ReportWriter {
 public:
  SarifWriter(const Checker& checker, std::string base) : checker_(checker), base_(std::move(base)) {}
  std::string begin() override;
  std::string recipe(const RecipeReport& report) override;
  std::string end(const Summary& summary) override;

 private:
  std::size_t index_of(const Finding& finding);

  const Checker& checker_;
  std::string base_;
  std::vector<std::string> rules_;          // in order of first result
  std::vector<Severity> severities_;        // of the first finding of each
  std::vector<std::size_t> index_by_name_;  // positions in rules_, sorted by name
  bool first_ = true;
};

/// JUnit XML as build servers read it: a `testsuite` a file, a `testcase` a recipe; what fails the build is a
/// `failure`, an unreadable recipe an `error`, everything else that was found is in `system-out`.
class JunitWriter : public ReportWriter {
 public:
  JunitWriter(std::string base, FailPolicy fail) : base_(std::move(base)), fail_(fail) {}
  std::string begin() override;
  std::string recipe(const RecipeReport& report) override;
  std::string end(const Summary& summary) override;

 private:
  std::string close_suite();

  std::string base_;
  FailPolicy fail_;
  std::string path_;  // of the file whose suite is open
  std::string cases_;
  std::size_t tests_ = 0;
  std::size_t failures_ = 0;
  std::size_t errors_ = 0;
};

/// Workflow commands, one a finding, which code hosting shows at the changed line:
/// `::error file=PATH,line=N,col=N,title=TITLE::TEXT`. Accepted and known findings are left out.
class AnnotationWriter : public ReportWriter {
 public:
  explicit AnnotationWriter(std::string base) : base_(std::move(base)) {}
  std::string begin() override { return {}; }
  std::string recipe(const RecipeReport& report) override;
  std::string end(const Summary& /*summary*/) override { return {}; }

 private:
  std::string base_;
};

/// What a finding is recognised by after lines were added above it or the file was moved: the rule, the words
/// of the recipe's title and the words of the line it stands at (16 hexadecimal digits of XXH3 over them). A
/// finding without a line is recognised by its message.
std::string fingerprint(const RecipeReport& report, const Finding& finding);

}  // namespace sealworthy
