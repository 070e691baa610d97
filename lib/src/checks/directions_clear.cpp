#include "checks/directions_clear.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "checks/fields.hpp"

namespace sealworthy::checks {
namespace {

/// On one line, at most so many bytes.
std::string shown(std::string_view text) {
  constexpr std::size_t longest = 120;
  std::string out(text.substr(0, text.size() > longest ? text.rfind(' ', longest) : text.size()));
  std::replace(out.begin(), out.end(), '\n', ' ');
  std::replace(out.begin(), out.end(), '\r', ' ');
  return text.size() > out.size() ? out + " ..." : out;
}

class DirectionsClear final : public Check {
 public:
  DirectionsClear(std::span<const Rule* const> rules, Maker& maker) : rules_(rules.begin(), rules.end()) {
    for (const Rule* rule : rules)
      Fields(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors}).done();
  }

  void run(const reading::Reading& reading, Results& results) const override {
    for (const recipe::Doubt& doubt : reading.recipe->doubts)
      for (const Rule* rule : rules_)
        if (applies(rule->only_if, reading))
          results.add(*rule, doubt.at, {{"words", shown(doubt.text)}, {"reason", doubt.reason}});
  }

 private:
  std::vector<const Rule*> rules_;
};

}  // namespace

std::unique_ptr<Check> make_directions_clear(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<DirectionsClear>(rules, maker);
}

}  // namespace sealworthy::checks
