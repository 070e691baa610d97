// How long the steps of a card take: splitting them into sentences, and check `practice-in-steps` over the
// rules compiled in. Cards of five to eight sentences from tests/rules/innocent-steps.yaml, and cards whose
// steps each tell a fault. Also the making of the check, which a start of the program pays once.

#include <time.h>

#include <cstdio>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "checks/practice_in_steps.hpp"
#include "knowledge/knowledge.hpp"
#include "yaml/document.hpp"

using namespace sealworthy;

namespace {

/// Processor time of this thread, so that a busy machine does not count.
double now() {
  timespec time{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) * 1e6 + static_cast<double>(time.tv_nsec) * 1e-3;
}

std::vector<std::string> innocent() {
  std::ifstream file(SEALWORTHY_SOURCE_DIR "/tests/rules/innocent-steps.yaml");
  std::stringstream text;
  text << file.rdbuf();
  const auto held = text.str();
  std::vector<std::string> out;
  for (const auto& read : yaml::read_documents(held))
    if (const auto* document = std::get_if<yaml::Document>(&read))
      for (const auto& item : document->root().find("innocent")->items)
        if (item.is_scalar()) out.emplace_back(item.text);
  return out;
}

std::vector<std::string> faulty(const std::vector<const checks::Rule*>& rules) {
  std::vector<std::string> out;
  for (const auto* rule : rules)
    for (const auto& example : rule->examples)
      if (example.flags && example.change.is_scalar()) out.emplace_back(example.change.text);
  return out;
}

struct Cards {
  recipe::Recipe recipe;
  std::vector<std::vector<std::string_view>> steps;
  std::vector<reading::Reading> readings;
};

/// Cards of five to eight of the sentences each.
void fill(const std::vector<std::string>& sentences, Cards& cards) {
  cards.recipe.title = {"Ridge road jars", {1, 9}, "Ridge road jars"};
  cards.recipe.processes.resize(1);
  std::size_t next = 0;
  for (int c = 0; c < 2000; ++c) {
    auto& steps = cards.steps.emplace_back();
    for (int k = 0; k < 5 + c % 4; ++k) steps.push_back(sentences[next++ % sentences.size()]);
  }
}

void read(Cards& cards) {
  cards.readings.clear();
  cards.readings.reserve(cards.steps.size());
  for (const auto& steps : cards.steps) {
    auto& reading = cards.readings.emplace_back();
    reading.recipe = &cards.recipe;
    reading.jar_class = reading::JarClass::low_acid;
    reading.jars.resize(1);
    reading.jars[0].method = reading::MethodKind::pressure;
    reading.jars[0].process = cards.recipe.processes.data();
    reading.title = reading::Sentences(cards.recipe.title.text);
    for (const auto step : steps) reading.steps.push_back({{7, 5}, step, reading::Sentences(step)});
  }
}

double per_card(const checks::Check& check, const Cards& cards, std::size_t& findings) {
  double best = 1e9;
  for (int round = 0; round < 7; ++round) {
    findings = 0;
    const auto start = now();
    for (const auto& reading : cards.readings) {
      checks::Results results;
      check.run(reading, results);
      findings += results.findings.size();
    }
    best = std::min(best, (now() - start) / static_cast<double>(cards.readings.size()));
  }
  return best;
}

}  // namespace

int main() {
  const auto* knowledge = &knowledge::Knowledge::builtin();
  std::vector<const checks::Rule*> rules;
  for (const auto& rule : knowledge->rules)
    if (rule.check == "practice-in-steps") rules.push_back(&rule);
  std::vector<foods::LoadError> errors;
  checks::Maker maker{knowledge->catalogue, knowledge->tables, errors, knowledge->vocabularies};
  double made = 1e9;
  std::unique_ptr<checks::Check> check;
  for (int round = 0; round < 5; ++round) {
    const auto start = now();
    check = checks::make_practice_in_steps(rules, maker);
    made = std::min(made, now() - start);
  }

  const auto quiet_sentences = innocent();
  const auto loud_sentences = faulty(rules);
  Cards careful;
  fill(quiet_sentences, careful);
  const auto start = now();
  read(careful);
  const auto split = (now() - start) / static_cast<double>(careful.steps.size());
  Cards careless;
  fill(loud_sentences, careless);
  read(careless);

  std::size_t none = 0;
  std::size_t many = 0;
  const auto quiet = per_card(*check, careful, none);
  const auto loud = per_card(*check, careless, many);
  std::printf("%zu rules, made in %.0f microseconds\n", rules.size(), made);
  std::printf("sentences of a card split in %.2f microseconds\n", split);
  std::printf("careful cards: %.2f microseconds a card, %zu findings\n", quiet, none);
  std::printf("faulty cards:  %.2f microseconds a card, %zu findings\n", loud, many);
  return 0;
}
