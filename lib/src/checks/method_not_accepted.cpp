#include "checks/method_not_accepted.hpp"

#include <algorithm>

#include "checks/fields.hpp"
#include "checks/food_set.hpp"

namespace sealworthy::checks {
namespace {

struct Entry {
  const Rule* rule;
  std::vector<std::string> methods;
  FoodSet only, not_only;
};

class MethodNotAccepted final : public Check {
 public:
  MethodNotAccepted(std::span<const Rule* const> rules, Maker& maker) {
    const FoodIndex& index = *maker.food_index;
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      Entry entry{rule, with.list("methods"), index.read_plain(with, "only"),
                  index.read_plain(with, "not-only")};
      if (entry.methods.empty()) with.sink().add(rule->at, "rule " + rule->id + ": 'methods' are missing");
      with.done();
      entries_.push_back(std::move(entry));
    }
  }

  void run(const reading::Reading& reading, Results& results) const override {
    for (const auto& jar : reading.jars)
      if (jar.method == reading::MethodKind::not_accepted) judge(reading, jar, results);
  }

 private:
  void judge(const reading::Reading& reading, const reading::JarProcess& jar, Results& results) const {
    results.point(PointKind::method, Point::State::differs, std::string(jar.method_name));
    const Position at = jar.process->method ? jar.process->method->at : jar.process->at;
    for (const auto& entry : entries_) {
      if (std::find(entry.methods.begin(), entry.methods.end(), jar.method_id) == entry.methods.end())
        continue;
      if (!entry.only.unset() && !nothing_but(reading, entry.only)) continue;
      if (!entry.not_only.unset() && nothing_but(reading, entry.not_only)) continue;
      if (applies(entry.rule->only_if, reading))
        results.add(*entry.rule, at, {{"found", std::string(jar.method_name)}});
    }
  }

  std::vector<Entry> entries_;
};

}  // namespace

std::unique_ptr<Check> make_method_not_accepted(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<MethodNotAccepted>(rules, maker);
}

}  // namespace sealworthy::checks
