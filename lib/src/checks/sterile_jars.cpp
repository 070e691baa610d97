#include "checks/sterile_jars.hpp"

#include <algorithm>
#include <cmath>

#include "checks/fields.hpp"
#include "checks/phrases.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::checks {
namespace {

using reading::Reading;

struct Entry {
  const Rule* rule;
  double under = 0, minutes = 0, up_to_feet = 0, more_each = 0, each_feet = 1;
  Phrases told;
  std::string assume;
};

Entry read_entry(const Rule& rule, Maker& maker) {
  Fields with(rule.with, "rule " + rule.id + ", with", {rule.file, maker.errors});
  Entry entry;
  entry.rule = &rule;
  const auto number = [&](std::string_view key) {
    const auto value = with.number(key);
    if (!value || *value <= 0)
      with.sink().add(rule.at, "rule " + rule.id + ": '" + std::string(key) + "' is missing");
    return value.value_or(1);
  };
  entry.under = number("under");
  entry.minutes = number("minutes");
  entry.up_to_feet = number("up-to-feet");
  entry.more_each = number("more-each");
  entry.each_feet = number("each-feet");
  entry.told = Phrases(with.list("told"));
  entry.assume = with.text("assume", true);
  with.done();
  return entry;
}

class SterileJars final : public Check {
 public:
  SterileJars(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) entries_.push_back(read_entry(*rule, maker));
  }

  void run(const Reading& reading, Results& results) const override {
    const auto* product = reading.match.product;
    if (product == nullptr || !product->sterile_jars_under_10_minutes) return;
    for (const auto& entry : entries_) {
      if (!short_process(reading, entry) || !applies(entry.rule->only_if, reading)) continue;
      const bool told = std::any_of(reading.steps.begin(), reading.steps.end(), [&](const auto& step) {
        return !entry.told.in(step.sentences.words).empty();
      });
      if (!told) results.assume(fill(entry.assume, {{"needed", quantity::words(boil(reading, entry))}}));
    }
  }

 private:
  static bool short_process(const Reading& reading, const Entry& entry) {
    return std::any_of(reading.jars.begin(), reading.jars.end(), [&](const auto& jar) {
      return jar.process != nullptr && jar.process->time &&
             in_minutes(jar.process->time->value.low) < entry.under;
    });
  }

  static Duration boil(const Reading& reading, const Entry& entry) {
    double highest = 0;
    for (const auto& altitude : reading.altitude.judged) highest = std::max(highest, in_feet(altitude));
    const double above = std::max(0.0, highest - entry.up_to_feet);
    return minutes(entry.minutes + entry.more_each * std::floor(above / entry.each_feet));
  }

  std::vector<Entry> entries_;
};

}  // namespace

std::unique_ptr<Check> make_sterile_jars(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<SterileJars>(rules, maker);
}

}  // namespace sealworthy::checks
