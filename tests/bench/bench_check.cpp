// Checking 10,000 cards of 400 bytes to 1.2 kB, one card a file, on one thread: what parsing, reading (foods,
// words, matching) and the checks with the verdict cost a card, and the whole against a bare YAML::LoadAll of
// the same bytes. Goals: reading and checks together at most 25 microseconds a card, the whole at most 1.35
// times LoadAll. The cards are the tables' own products, written out; a second set is mixtures that match
// nothing.

#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <sealworthy/checker.hpp>
#include <string>
#include <vector>

#include "cards.hpp"
#include "checks/verdict.hpp"
#include "knowledge/knowledge.hpp"
#include "reading/build.hpp"
#include "recipe/recipe.hpp"
#include "suggest/card_writer.hpp"
#include "yaml/document.hpp"

namespace {

using sealworthy::knowledge::Knowledge;
/// Time of the processor, so that whatever else runs on the machine does not count.
double now() {
  std::timespec time{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_nsec) * 1e-9;
}

constexpr int cards_wanted = 10'000;

/// Every row of every product at its lowest band, with steps of usual length, until there are enough.
std::vector<std::string> tested_cards(const Knowledge& knowledge) {
  const sealworthy::suggest::CardWriter writer(knowledge.tables, knowledge.catalogue);
  static const std::string steps[] = {
      "  - Wipe the rims, put the lids on and tighten them fingertip tight.\n",
      "  - Cool for 12 to 24 hours and check the seals.\n",
      "  - Wash the jars; keep them hot until they are filled.\n"};
  std::vector<std::string> cards;
  while (true) {
    for (const auto& product : knowledge.tables.products()) {
      for (const auto& row : product.rows) {
        const auto& step = row.options.front().steps.front();
        sealworthy::suggest::CardFigures figures{
            row.method,
            row.raw ? sealworthy::recipe::Pack::raw : sealworthy::recipe::Pack::hot,
            row.jar,
            step.time.si() / 60,
            {},
            500,
            row.applies_to};
        if (step.pressure) figures.psi = in_psi(*step.pressure);
        const bool follows = cards.size() % 2 == 0;
        std::string card =
            writer.write(product, figures, {.follows = follows, .acid = true, .acid_choice = 0});
        for (std::size_t k = 0; k < cards.size() % 4 && k < 3; ++k) card += steps[k];
        cards.push_back(std::move(card));
        if (cards.size() == cards_wanted) return cards;
      }
    }
  }
}

/// Seconds of the fastest of five runs: the one that was disturbed least.
double fastest(const std::function<void()>& run) {
  double best = 1e9;
  for (int i = 0; i < 5; ++i) {
    const double begin = now();
    run();
    best = std::min(best, now() - begin);
  }
  return best;
}

struct Parts {
  double reading = 0, checks = 0;
};

/// One pass over cards that are already parsed, the two parts timed apart: a hundred cards at a time, so that
/// the clock costs nothing and the readings stay near, as they do in a run.
Parts rule_engine(const std::vector<sealworthy::recipe::Recipe>& recipes, const Knowledge& knowledge) {
  using sealworthy::checks::Results;
  constexpr std::size_t batch = 100;
  Parts parts;
  for (std::size_t first = 0; first < recipes.size(); first += batch) {
    const std::size_t last = std::min(recipes.size(), first + batch);
    std::vector<sealworthy::reading::Reading> readings;
    readings.reserve(batch);
    const double begin = now();
    for (std::size_t i = first; i < last; ++i)
      readings.push_back(sealworthy::reading::build(recipes[i], {}, knowledge));
    const double middle = now();
    for (const auto& reading : readings) {
      Results results;
      for (const auto& check : knowledge.checks) check->run(reading, results);
      const auto points = sealworthy::checks::deciding_points(reading, results.points);
      const auto verdict = sealworthy::checks::decide(reading, points, results.findings);
      if (verdict == sealworthy::Verdict::unreadable) std::abort();
    }
    parts.reading += middle - begin;
    parts.checks += now() - middle;
  }
  return parts;
}

std::vector<sealworthy::recipe::Recipe> parse(const std::vector<std::string>& cards) {
  std::vector<sealworthy::recipe::Recipe> recipes;
  for (const std::string& card : cards) {
    for (const auto& document : sealworthy::yaml::read_documents(card)) {
      const auto* good = std::get_if<sealworthy::yaml::Document>(&document);
      if (good == nullptr) continue;
      auto recipe = sealworthy::recipe::read_card(*good);
      if (auto* read = std::get_if<sealworthy::recipe::Recipe>(&recipe)) recipes.push_back(std::move(*read));
    }
  }
  return recipes;
}

bool measure(const char* what, const std::vector<std::string>& cards, const sealworthy::Checker& checker) {
  std::size_t bytes = 0;
  for (const std::string& card : cards) bytes += card.size();
  const double bare = fastest([&] {
    for (const std::string& card : cards) YAML::LoadAll(card);
  });
  const double parsing = fastest([&] { parse(cards); });
  const auto recipes = parse(cards);
  Parts best{1e9, 1e9};
  for (int i = 0; i < 5; ++i) {
    const Parts parts = rule_engine(recipes, checker.knowledge());
    best.reading = std::min(best.reading, parts.reading);
    best.checks = std::min(best.checks, parts.checks);
  }
  const double whole = fastest([&] {
    for (const std::string& card : cards) (void)checker.check_text("card.yaml", card);
  });
  const double us = 1e6 / static_cast<double>(cards.size());
  std::printf("%s: %zu cards of %zu bytes on average\n", what, cards.size(), bytes / cards.size());
  std::printf(
      "  microseconds a card: parse %.1f, reading %.1f, checks %.1f, whole check %.1f, LoadAll %.1f\n",
      parsing * us, best.reading * us, best.checks * us, whole * us, bare * us);
  std::printf("  rule engine %.1f (goal 25), whole against LoadAll %.3f (goal 1.35)\n",
              (best.reading + best.checks) * us, whole / bare);
  return (best.reading + best.checks) * us <= 25 && whole / bare <= 1.35;
}

}  // namespace

int main() {
  const auto checker = sealworthy::Checker::builtin();
  const bool tested = measure("tested products", tested_cards(checker.knowledge()), checker);
  const bool mixed = measure("mixtures", bench::cards(cards_wanted), checker);
  return tested && mixed ? 0 : 1;
}
