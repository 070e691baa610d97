#include "suggest/card_text.hpp"

#include <algorithm>
#include <iterator>
#include <sealworthy/checker.hpp>
#include <utility>

#include "text/one_line.hpp"

namespace sealworthy::suggest {

std::string comment(std::string_view text) { return "  # " + text::one_line(text); }

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

std::vector<bool> faulty_steps(const recipe::Recipe& recipe, const RecipeReport& report) {
  std::vector<bool> faulty(recipe.steps.size(), false);
  // What begins somewhere on the card; of a page only what its directions do not hold themselves.
  std::vector<std::pair<Position, std::size_t>> begins;
  const auto other = [&](Position at) { begins.emplace_back(at, faulty.size()); };
  const auto placed = [&](const auto& value) {
    if (value && !recipe.prose) other(value->at);
  };
  other(recipe.title.at);
  for (const auto& line : recipe.ingredients) other(line.at);
  placed(recipe.pack);
  placed(recipe.headspace);
  placed(recipe.lids);
  placed(recipe.makes);
  placed(recipe.follows);
  if (recipe.process_at && !recipe.prose) other(*recipe.process_at);
  if (!recipe.prose)
    for (const auto& jar : recipe.jars) other(jar.at);
  for (const auto& accept : recipe.accept) other(accept.rule.at);
  for (std::size_t i = 0; i < faulty.size(); ++i) begins.emplace_back(recipe.steps[i].at, i);
  std::sort(begins.begin(), begins.end());
  for (const auto& finding : report.findings) {
    if (finding.severity <= Severity::notice || finding.from_kitchen) continue;
    const auto after = std::upper_bound(begins.begin(), begins.end(), finding.at,
                                        [](Position at, const auto& begin) { return at < begin.first; });
    if (after != begins.begin() && std::prev(after)->second < faulty.size())
      faulty[std::prev(after)->second] = true;
  }
  return faulty;
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
