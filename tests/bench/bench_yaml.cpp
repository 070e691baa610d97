// Reading 10,000 cards: read_documents against a bare YAML::LoadAll of the same bytes, each card as a file of
// its own and all in files of 100. The ratio must stay at or under 0.8.

#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <numeric>

#include "cards.hpp"
#include "yaml/document.hpp"

namespace {

using Clock = std::chrono::steady_clock;

/// Seconds of the fastest of five runs: the one that was disturbed least.
template <class Run>
double fastest(Run run) {
  double best = 1e9;
  for (int i = 0; i < 5; ++i) {
    const auto begin = Clock::now();
    run();
    best = std::min(best, std::chrono::duration<double>(Clock::now() - begin).count());
  }
  return best;
}

double compare(const char* what, const std::vector<std::string>& files) {
  const std::size_t bytes = std::accumulate(files.begin(), files.end(), std::size_t{0},
                                            [](std::size_t n, const auto& f) { return n + f.size(); });
  const double bare = fastest([&] {
    for (const std::string& file : files) YAML::LoadAll(file);
  });
  const double ours = fastest([&] {
    for (const std::string& file : files) sealworthy::yaml::read_documents(file);
  });
  std::printf("%-22s %5.2f MB  LoadAll %6.1f ms  read_documents %6.1f ms  ratio %.3f\n", what,
              static_cast<double>(bytes) / 1e6, bare * 1e3, ours * 1e3, ours / bare);
  return ours / bare;
}

}  // namespace

int main() {
  const std::vector<std::string> cards = bench::cards(10'000);
  std::vector<std::string> hundreds;
  for (std::size_t i = 0; i < cards.size(); ++i) {
    if (i % 100 == 0) hundreds.emplace_back();
    hundreds.back() += "---\n" + cards[i];
  }
  const double single = compare("one card a file", cards);
  const double many = compare("100 cards a file", hundreds);
  return std::max(single, many) <= 0.8 ? 0 : 1;
}
