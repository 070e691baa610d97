#include <sealworthy/report.hpp>

namespace sealworthy {

void Summary::add(const RecipeReport& report) {
  ++recipes;
  ++verdicts[static_cast<std::size_t>(report.verdict)];
  for (const auto& finding : report.findings) {
    if (finding.counts())
      ++severities[static_cast<std::size_t>(finding.severity)];
    else
      ++(finding.known ? known : accepted);
  }
}

std::string_view version() noexcept { return SEALWORTHY_VERSION; }

}  // namespace sealworthy
