#pragma once

/// Writing reports for people and for programs. Pure functions of the reports: no file, clock or terminal is
/// touched.

#include <array>
#include <cstddef>
#include <sealworthy/finding.hpp>
#include <span>
#include <string>

namespace sealworthy {

/// Counts over many recipes, kept up to date as they come so that a long run need not keep its reports.
struct Summary {
  std::size_t recipes = 0;
  std::array<std::size_t, 4> verdicts{};    ///< by Verdict
  std::array<std::size_t, 4> severities{};  ///< by Severity; accepted and known findings are not counted
  std::size_t accepted = 0;
  std::size_t skipped = 0;  ///< recipes not about canning and pages without one (FileReport::skipped)
  std::size_t known = 0;    ///< listed in a baseline

  void add(const RecipeReport& report);
  [[nodiscard]] std::size_t count(Verdict v) const { return verdicts[static_cast<std::size_t>(v)]; }
  [[nodiscard]] std::size_t count(Severity s) const { return severities[static_cast<std::size_t>(s)]; }
};

/// How text for people is laid out.
struct TextStyle {
  int width = 100;     ///< columns; at least 40 and at most 100 are used
  bool color = false;  ///< ANSI escape sequences; colours of the signal words as in ANSI Z535.4
};

/// A format writes a run in three parts, so that reports can be written as soon as they are ready.
class ReportWriter {
 public:
  ReportWriter() = default;
  ReportWriter(const ReportWriter&) = delete;
  ReportWriter& operator=(const ReportWriter&) = delete;
  virtual ~ReportWriter() = default;
  virtual std::string begin() = 0;
  virtual std::string recipe(const RecipeReport& report) = 0;
  virtual std::string end(const Summary& summary) = 0;
};

/// For people: findings with the card's own line, the figures found and needed, the reason, what to do, the
/// source.
class TextWriter : public ReportWriter {
 public:
  explicit TextWriter(TextStyle style) : style_(style) {}
  std::string begin() override { return {}; }
  std::string recipe(const RecipeReport& report) override;
  std::string end(const Summary& summary) override;

 private:
  TextStyle style_;
  std::string last_path_;
};

/// For programs: one JSON object; tests/schema/check.schema.json describes it. Each recipe stands on a line
/// of its own.
class JsonWriter : public ReportWriter {
 public:
  std::string begin() override;
  std::string recipe(const RecipeReport& report) override;
  std::string end(const Summary& summary) override;
  /// What stands before the next recipe: a comma and a line break.
  std::string next();

 private:
  bool first_ = true;
};

/// "0.1.0"
std::string_view version() noexcept;

}  // namespace sealworthy
