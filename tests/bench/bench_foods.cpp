// The catalogue of foods from the rules that are compiled in: load and finish (4 ms of the command's start at
// most), and reading ingredient lines (8 lines of each of 10,000 cards; the rule engine has 25 microseconds a
// card).

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <fstream>
#include <string>
#include <vector>

#include "foods/catalogue.hpp"
#include "knowledge/embedded.hpp"

namespace {

using namespace sealworthy;
using Clock = std::chrono::steady_clock;

constexpr double most_load_ms = 4.0;
constexpr double most_line_us = 1.5;

/// Seconds of the fastest of some runs: the one that was disturbed least.
template <class Run>
double fastest(int runs, Run run) {
  double best = 1e9;
  for (int i = 0; i < runs; ++i) {
    const auto begin = Clock::now();
    run();
    best = std::min(best, std::chrono::duration<double>(Clock::now() - begin).count());
  }
  return best;
}

foods::Catalogue load() {
  foods::Catalogue catalogue;
  std::vector<foods::LoadError> errors;
  const auto documents = yaml::unpack(embedded_rules());
  for (const auto& [file, document] : *documents)
    if (file.starts_with("rules/foods/")) catalogue.load(file, document, errors);
  catalogue.finish(errors);
  if (!errors.empty()) std::printf("%zu errors\n", errors.size());
  return catalogue;
}

std::vector<std::string> lines_of(const char* file) {
  std::ifstream in(std::string(SEALWORTHY_SOURCE_DIR "/tests/data/") + file);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);)
    if (!line.empty() && line.front() != '#') lines.push_back(line.substr(0, line.find('\t')));
  return lines;
}

double per_line(const foods::Catalogue& catalogue, const char* file) {
  const auto lines = lines_of(file);
  std::size_t foods = 0;
  const double seconds = fastest(15, [&] {
    foods = 0;
    for (const auto& line : lines) foods += catalogue.read_line(line, quantity::Units::us).foods.size();
  });
  const double amounts = fastest(15, [&] {
    for (const auto& line : lines) foods += quantity::read_amount(line, quantity::Units::us, true) ? 1 : 0;
  });
  const double micro = seconds / static_cast<double>(lines.size()) * 1e6;
  std::printf("%-24s %5zu lines  read_line %.3f us a line, of it the first amount %.3f us (%zu)\n", file,
              lines.size(), micro, amounts / static_cast<double>(lines.size()) * 1e6, foods);
  return micro;
}

}  // namespace

int main() {
  const double load_ms = fastest(20, [] { load(); }) * 1e3;
  const auto catalogue = load();
  std::printf("load and finish          %zu foods  %.2f ms\n", catalogue.all().size(), load_ms);
  const double canning = per_line(catalogue, "canning-lines.txt");
  per_line(catalogue, "labelled-lines.tsv");
  return load_ms <= most_load_ms && canning <= most_line_us ? 0 : 1;
}
