#include "checks/gauge_error.hpp"

#include <optional>
#include <vector>

#include "checks/against_table.hpp"
#include "checks/fields.hpp"
#include "checks/with_figures.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using reading::Reading;

struct Entry {
  const Rule* rule;
  bool high;
  std::optional<GaugePressure> over, up_to;
};

bool may_use_dial(const JarProcess& jar) {
  return jar.process != nullptr && jar.method == reading::MethodKind::pressure &&
         jar.gauge != recipe::Gauge::weighted;
}

class GaugeError final : public Check {
 public:
  GaugeError(std::span<const Rule* const> rules, Maker& maker) {
    static const std::vector<std::string_view> directions{"high", "low"};
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      const auto direction = with.choice("reads", directions, true);
      entries_.push_back(
          {rule, direction.value_or(0) == 0, pressure_figure(with, "over"), pressure_figure(with, "up-to")});
      with.done();
    }
  }

  void run(const Reading& reading, Results& results) const override {
    for (const auto& at_hand : reading.canners) {
      if (!at_hand.canner->gauge_error || at_hand.method != reading::MethodKind::pressure) continue;
      for (const auto& jar : reading.jars)
        if (may_use_dial(jar)) judge_gauge(reading, jar, *at_hand.canner->gauge_error, results);
    }
  }

 private:
  void judge_gauge(const Reading& reading, const JarProcess& jar, const recipe::Placed<GaugePressure>& error,
                   Results& results) const {
    const bool high = error.value.si() > 0;
    const GaugePressure off = high ? error.value : error.value * -1.0;
    if (off.si() <= 0) return;
    const auto needed = shown(reading, jar, error.value);
    for (const Entry& entry : entries_) {
      if (entry.high != high || (entry.over && off <= *entry.over) || (entry.up_to && off > *entry.up_to))
        continue;
      if (entry.up_to && (!needed || raised(jar, *needed))) continue;
      if (!applies(entry.rule->only_if, reading)) continue;
      results
          .add(*entry.rule, error.at,
               {{"found", quantity::words(off)},
                {"needed", needed ? quantity::words(*needed) : std::string()}})
          .from_kitchen = true;
    }
  }

  /// What the dial must show for the table's pressure to be there, at the highest altitude judged.
  static std::optional<GaugePressure> shown(const Reading& reading, const JarProcess& jar,
                                            GaugePressure error) {
    const Judged judged = judge(jar, heights_of(jar).front(), card_choice(reading, jar));
    if (judged.tabled == nullptr || !judged.step->pressure) return std::nullopt;
    return *judged.step->pressure + error;
  }

  static bool raised(const JarProcess& jar, GaugePressure needed) {
    constexpr double rounding = 1e-6;
    return jar.process->pressure && jar.process->pressure->value.low.si() >= needed.si() * (1 - rounding);
  }

  std::vector<Entry> entries_;
};

}  // namespace

std::unique_ptr<Check> make_gauge_error(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<GaugeError>(rules, maker);
}

}  // namespace sealworthy::checks
