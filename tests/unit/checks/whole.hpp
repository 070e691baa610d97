#pragma once

/// Whole cards through the whole checker, for checks that need foods and matching.

#include <algorithm>
#include <sealworthy/checker.hpp>
#include <string>

namespace sealworthy::checks {

inline RecipeReport check_card(const std::string& text, const CheckOptions& options = {}) {
  static const Checker checker = Checker::builtin();
  return checker.check_text("card.yaml", text, options).front();
}

inline const Finding* finding_of(const RecipeReport& report, std::string_view rule) {
  const auto found = std::find_if(report.findings.begin(), report.findings.end(),
                                  [&](const Finding& f) { return f.rule == rule; });
  return found == report.findings.end() ? nullptr : &*found;
}

inline Point::State point_of(const RecipeReport& report, PointKind kind) {
  const auto found = std::find_if(report.points.begin(), report.points.end(),
                                  [&](const Point& p) { return p.kind == kind; });
  return found == report.points.end() ? Point::State::unknown : found->state;
}

}  // namespace sealworthy::checks
