#include "checks/gauge_test_due.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

#include "checks/fields.hpp"

namespace sealworthy::checks {
namespace {

using reading::Reading;

std::chrono::sys_days day(const recipe::Date& date) {
  return std::chrono::year_month_day{std::chrono::year(date.year),
                                     std::chrono::month(static_cast<unsigned>(date.month)),
                                     std::chrono::day(static_cast<unsigned>(date.day))};
}

struct Entry {
  const Rule* rule;
  bool untested;
  std::optional<double> older_than, up_to;
};

bool may_use_dial(const Reading& reading) {
  return std::any_of(reading.jars.begin(), reading.jars.end(), [](const auto& jar) {
    return jar.method == reading::MethodKind::pressure && jar.gauge != recipe::Gauge::weighted;
  });
}

class GaugeTestDue final : public Check {
 public:
  GaugeTestDue(std::span<const Rule* const> rules, Maker& maker) {
    for (const Rule* rule : rules) {
      Fields with(rule->with, "rule " + rule->id + ", with", {rule->file, maker.errors});
      entries_.push_back(
          {rule, with.flag("untested"), with.number("older-than-days"), with.number("up-to-days")});
      with.done();
    }
  }

  void run(const Reading& reading, Results& results) const override {
    if (reading.kitchen == nullptr || !may_use_dial(reading)) return;
    for (const auto& canner : reading.kitchen->canners)
      if (canner.gauge && canner.gauge->value == recipe::Gauge::dial) judge(reading, canner, results);
  }

 private:
  void judge(const Reading& reading, const recipe::Canner& canner, Results& results) const {
    for (const auto& entry : entries_) {
      if (entry.untested == canner.gauge_tested.has_value()) continue;
      if (!entry.untested && !old_enough(entry, reading, canner)) continue;
      if (!applies(entry.rule->only_if, reading)) continue;
      const auto found = canner.gauge_tested ? words(canner.gauge_tested->value) : std::string();
      auto& finding = results.add(
          *entry.rule, canner.gauge_tested ? canner.gauge_tested->at : canner.gauge->at, {{"found", found}});
      finding.from_kitchen = true;
    }
  }

  static bool old_enough(const Entry& entry, const Reading& reading, const recipe::Canner& canner) {
    if (!reading.today) return false;
    const auto age = static_cast<double>((day(*reading.today) - day(canner.gauge_tested->value)).count());
    return entry.older_than && age > *entry.older_than && (!entry.up_to || age <= *entry.up_to);
  }

  static std::string words(const recipe::Date& date) {
    return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
  }

  std::vector<Entry> entries_;
};

}  // namespace

std::unique_ptr<Check> make_gauge_test_due(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<GaugeTestDue>(rules, maker);
}

}  // namespace sealworthy::checks
