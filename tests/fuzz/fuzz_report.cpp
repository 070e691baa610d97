// Any bytes as a file of cards, through the whole checker and both writers.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <sealworthy/checker.hpp>
#include <sealworthy/report.hpp>
#include <string_view>

namespace {

/// What must hold of every report, whatever the bytes.
void hold(bool so) {
  if (!so) std::abort();
}

void check(const sealworthy::RecipeReport& report) {
  using sealworthy::Point;
  using sealworthy::Severity;
  using sealworthy::Verdict;
  const bool grave = std::any_of(report.findings.begin(), report.findings.end(),
                                 [](const auto& f) { return f.severity >= Severity::warning; });
  const bool open = std::any_of(report.points.begin(), report.points.end(), [](const Point& p) {
    return p.state == Point::State::unknown || p.state == Point::State::differs;
  });
  if (report.verdict == Verdict::unreadable)
    hold(report.findings.size() == 1 && report.findings[0].rule == "unreadable");
  if (report.verdict == Verdict::tested)
    hold(!grave && !open && !report.matched.id.empty() && !report.matched.from_memory);
  if (grave) hold(report.verdict == Verdict::hazard || report.verdict == Verdict::unreadable);
  for (const auto& finding : report.findings) {
    hold(!finding.message.empty());
    hold(finding.severity != Severity::danger || finding.accepted_because.empty());
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const auto checker = sealworthy::Checker::builtin();
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  sealworthy::TextWriter people({60, true});
  sealworthy::JsonWriter programs;
  sealworthy::Summary summary;
  programs.begin();
  for (const auto& report : checker.check_text("fuzz.yaml", text)) {
    check(report);
    summary.add(report);
    people.recipe(report);
    programs.recipe(report);
  }
  people.end(summary);
  programs.end(summary);
  return 0;
}
