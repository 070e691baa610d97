#include "checks/lid_kind.hpp"

#include "checks/fields.hpp"
#include "checks/phrases.hpp"

namespace sealworthy::checks {
namespace {

struct Entry {
  const Rule* rule;
  Phrases lids, jars;
};

class LidKind final : public Check {
 public:
  LidKind(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      entries_.push_back({rule, Phrases(with.list("lids")), Phrases(with.list("jars"))});
      with.done();
    }
  }

  void run(const reading::Reading& reading, Results& results) const override {
    const auto& recipe = *reading.recipe;
    if (recipe.lids) {
      judge(reading, *recipe.lids, &Entry::lids, results);
    } else if (reading.kitchen != nullptr && reading.kitchen->lids && reading.kitchen->lids->words &&
               reading.processed()) {
      const auto before = results.findings.size();
      judge(reading, *reading.kitchen->lids->words, &Entry::lids, results);
      for (auto i = before; i < results.findings.size(); ++i) results.findings[i].from_kitchen = true;
    }
    for (const auto& jar : recipe.jars)
      judge(reading, recipe::Placed<std::string_view>{jar.text, jar.at, jar.text}, &Entry::jars, results);
  }

 private:
  void judge(const reading::Reading& reading, const recipe::Placed<std::string_view>& text,
             Phrases Entry::*which, Results& results) const {
    const text::Words words(text.value);
    for (const auto& entry : entries_)
      if (!(entry.*which).in(words).empty() && applies(entry.rule->only_if, reading))
        results.add(*entry.rule, text.at, {{"found", std::string(text.value)}});
  }

  std::vector<Entry> entries_;
};

}  // namespace

std::unique_ptr<Check> make_lid_kind(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<LidKind>(rules, maker);
}

}  // namespace sealworthy::checks
