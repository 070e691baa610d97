#include "suggest/card_text.hpp"

#include <algorithm>
#include <sealworthy/checker.hpp>

namespace sealworthy::suggest {

std::string comment(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  return "  # " + text;
}

std::string bare(std::string_view yaml) {
  std::string out;
  for (const char c : yaml)
    if (c != '"' && c != '{' && c != '}' && c != '[' && c != ']') out += c;
  return out;
}

std::string sentence(std::string step) {
  if (const auto at = step.find(" pack: "); at == 3) step.erase(0, at + 7);
  if (!step.empty() && step.front() >= 'a' && step.front() <= 'z')
    step.front() = static_cast<char>(step.front() - 'a' + 'A');
  return step;
}

std::string open_points(const RecipeReport& report) {
  std::string open;
  for (const auto& finding : report.findings)
    if (finding.severity >= Severity::caution) return finding.message;
  for (const auto& point : report.points)
    if (point.state == Point::State::unknown || point.state == Point::State::differs)
      open.append(open.empty() ? "" : ", ").append(to_string(point.kind));
  if (open.empty() && report.matched.from_memory) return "its figures rest on memory";
  return open;
}

}  // namespace sealworthy::suggest
