// Reading amounts: nanoseconds a line over the lines of tests/data/labelled-lines.tsv, and card values. The
// goal is 300 ns a line.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <fstream>
#include <string>
#include <vector>

#include "quantity/amount.hpp"

using namespace sealworthy::quantity;

namespace {

using Clock = std::chrono::steady_clock;

/// Nanoseconds an item of the fastest of twenty runs: the one that was disturbed least.
template <class Read>
double nanoseconds(const std::vector<std::string>& items, Read read) {
  double best = 1e18;
  for (int run = 0; run < 20; ++run) {
    const auto begin = Clock::now();
    std::size_t found = 0;
    for (int i = 0; i < 4; ++i)
      for (const auto& item : items) found += read(item) ? 1 : 0;
    const std::chrono::duration<double, std::nano> passed = Clock::now() - begin;
    if (found == 0) return 0;
    best = std::min(best, passed.count() / (4.0 * static_cast<double>(items.size())));
  }
  return best;
}

std::vector<std::string> labelled_lines() {
  std::ifstream file(SEALWORTHY_SOURCE_DIR "/tests/data/labelled-lines.tsv");
  std::vector<std::string> lines;
  for (std::string line; std::getline(file, line);)
    if (!line.empty() && line[0] != '#') lines.push_back(line.substr(0, line.find('\t')));
  return lines;
}

}  // namespace

int main() {
  const auto lines = labelled_lines();
  const double start =
      nanoseconds(lines, [](const auto& line) { return read_amount(line, Units::us).has_value(); });
  const double anywhere =
      nanoseconds(lines, [](const auto& line) { return read_amount(line, Units::us, true).has_value(); });
  const std::vector<std::string> times{"25 minutes", "1 hr 15 min", "20-25 min", "1 1/2 hours"};
  const double time = nanoseconds(times, [](const auto& text) { return read_time(text).index() == 0; });
  const std::vector<std::string> jars{"quart", "half-pint", "12-oz", "500 ml", "wide-mouth pint"};
  const double jar = nanoseconds(jars, [](const auto& text) { return read_jar(text).index() == 0; });
  std::printf("%zu lines: amount at the start %.0f ns, anywhere %.0f ns; a time %.0f ns; a jar %.0f ns\n",
              lines.size(), start, anywhere, time, jar);
  return start <= 300 ? 0 : 1;
}
