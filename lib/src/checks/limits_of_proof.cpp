#include "checks/limits_of_proof.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "checks/cases.hpp"
#include "checks/verdict.hpp"

namespace sealworthy::checks {
namespace {

using reading::Keep;
using reading::Reading;

enum class Case { kept_cold, from_memory, bodies_differ };
const std::vector<std::string_view> case_names{"kept-cold", "from-memory", "bodies-differ"};

class LimitsOfProof final : public Check {
 public:
  LimitsOfProof(std::span<const Rule* const> rules, Maker& maker) : cases_(rules, maker, case_names) {}

  void run(const Reading& reading, Results& results) const override {
    if (reading.keep != Keep::shelf) {
      const char* where = reading.keep == Keep::freezer ? "freezer" : "refrigerator";
      tell(Case::kept_cold, reading, reading.keep_at, {{"found", where}}, results);
      return;
    }
    notes_to_read(reading, results);
    const tested::Product* product = reading.match.product;
    if (product == nullptr || !reading.match.sure()) return;
    const Position at = reading.recipe->follows ? reading.recipe->follows->at : reading.recipe->title.at;
    if (product->no_tested_process) {
      tell(Case::bodies_differ, reading, at,
           {{"product", product->title}, {"reason", product->why_no_process}}, results);
    } else if (rests_on_memory(reading)) {
      tell(Case::from_memory, reading, at, {{"product", product->title}}, results);
    }
  }

 private:
  /// What stands behind the process in somebody's own voice was looked through for known changes only, and
  /// people tell a change in more ways than are known.
  static void notes_to_read(const Reading& reading, Results& results) {
    if (reading.steps.empty() || reading.recipe->processes.empty()) return;
    Position last;
    for (const auto& process : reading.recipe->processes) last = std::max(last, process.at);
    if (last < reading.steps.front().at) return;  // under a key of its own
    bool any = false;
    std::string lines;
    for (const auto& step : reading.steps) {
      if (step.at <= last || !own_voice(step)) continue;
      any = true;
      if (step.at.line != last.line)
        lines += (lines.empty() ? " in line " : ", ") + std::to_string(step.at.line);
    }
    if (any) results.assume("nothing in the notes" + lines + " changes the recipe");
  }

  static bool own_voice(const reading::StepText& step) {
    static constexpr std::array<std::string_view, 24> words{
        "i",     "we",     "my",    "our",   "mine",    "ours",  "i'm",    "i've",
        "i'd",   "we've",  "we're", "we'd",  "instead", "swap",  "skip",   "omit",
        "extra", "double", "half",  "twice", "less",    "fewer", "larger", "bigger"};
    return std::any_of(step.sentences.words.begin(), step.sentences.words.end(), [](const text::Word& word) {
      return std::find(words.begin(), words.end(), word.text) != words.end();
    });
  }

  void tell(Case which, const Reading& reading, Position at, const Figures& figures, Results& results) const {
    if (const Rule* rule = cases_.find(which, reading)) results.add(*rule, at, figures);
  }

  Cases cases_;
};

}  // namespace

std::unique_ptr<Check> make_limits_of_proof(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<LimitsOfProof>(rules, maker);
}

}  // namespace sealworthy::checks
