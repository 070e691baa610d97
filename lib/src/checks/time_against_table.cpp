#include "checks/time_against_table.hpp"

#include <optional>
#include <vector>

#include "checks/against_table.hpp"
#include "checks/cases.hpp"
#include "checks/with_figures.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using reading::Reading;
using State = Point::State;

enum class Case {
  too_short,
  altitude,
  other_pack,
  higher_pressure,
  steam_longest,
  low_temperature,
  unsaid,
  infant
};
const std::vector<std::string_view> case_names{"short",           "altitude",      "other-pack",
                                               "higher-pressure", "steam-longest", "low-temperature",
                                               "unsaid",          "infant"};

/// A row of times by altitude that a rule gives itself.
struct InfantStep {
  std::optional<Altitude> to;  ///< unset: above the steps before
  Duration time;
};

class TimeAgainstTable final : public Check {
 public:
  TimeAgainstTable(std::span<const Rule* const> rules, Maker& maker)
      : cases_(rules, maker, case_names, [this](const Rule&, Fields& with) { read_more(with); }) {}

  void run(const Reading& reading, Results& results) const override {
    for (const JarProcess& jar : reading.jars) {
      if (jar.process == nullptr) {
        results.point(PointKind::time, State::unknown);
      } else if (jar.method == reading::MethodKind::low_temperature) {
        low_temperature(reading, jar, results);
      } else if (!jar.process->time) {
        unsaid(reading, jar, results);
      } else {
        steam(reading, jar, results);
        compare(reading, jar, results);
      }
    }
  }

 private:
  void read_more(Fields& with) {
    if (const auto least = time_figure(with, "least")) least_low_temperature_ = least;
    const yaml::Node* steps = with.find("steps");
    if (steps == nullptr) return;
    for (const yaml::Node& item : steps->items) {
      Fields fields(item, "a step of 'steps'", with.sink());
      InfantStep step{altitude_figure(fields, "to"), {}};
      if (const auto time = time_figure(fields, "time")) step.time = *time;
      fields.done();
      infant_steps_.push_back(step);
    }
  }

  void compare(const Reading& reading, const JarProcess& jar, Results& results) const {
    const Duration said = jar.process->time->value.low;
    const Choice choice = card_choice(reading, jar);
    for (const Altitude& height : heights_of(jar)) {
      const Judged judged = judge(jar, height, choice);
      if (infant_short(reading, jar, height, results)) return;
      if (judged.tabled == nullptr) continue;
      if (!judged.time) {
        tell(reading, jar, height, choice, judged, results);
        results.point(PointKind::time, State::differs, quantity::words(said),
                      quantity::words(judged.step->time));
        return;
      }
    }
    const Judged judged = judge(jar, heights_of(jar).front(), choice);
    if (judged.tabled == nullptr) {
      results.point(PointKind::time, State::unknown, quantity::words(said));
    } else {
      results.point(PointKind::time, State::held, quantity::words(said), quantity::words(judged.step->time));
    }
  }

  /// Which of the ways to be short it is.
  static Case kind_of(const JarProcess& jar, Altitude height, const Choice& choice, const Judged& judged) {
    const Judged lowest = judge(jar, feet(0), choice);
    if (lowest.time && lowest.pressure) return Case::altitude;
    const Judged any_pack = judge(jar, height, {{}, choice.method});
    if (any_pack.time && any_pack.pressure) return Case::other_pack;
    const auto& said = jar.process->pressure;
    if (judged.pressure && judged.step->pressure && said && said->value.low > *judged.step->pressure)
      return Case::higher_pressure;
    return Case::too_short;
  }

  void tell(const Reading& reading, const JarProcess& jar, Altitude height, const Choice& choice,
            const Judged& judged, Results& results) const {
    const Rule* rule = cases_.find(kind_of(jar, height, choice, judged), reading);
    if (rule == nullptr) return;
    const auto serves = holds_up_to(jar, choice, *reading.tables);
    Finding& finding = results.add(
        *rule, jar.process->time->at,
        {{"found", quantity::words_of(jar.process->time->value)},
         {"needed", quantity::words(judged.step->time)},
         {"jar", jar_words(jar)},
         {"of", of_words(reading)},
         {"at", at_words(jar, height)},
         {"pressure", judged.step->pressure ? " at " + quantity::words(*judged.step->pressure) : ""},
         {"serves", serves ? quantity::words(*serves) : ""},
         {"product", reading.match.product->title}});
    cite_row(finding, judged);
  }

  void steam(const Reading& reading, const JarProcess& jar, Results& results) const {
    if (jar.method != reading::MethodKind::steam) return;
    const Duration longest = reading.tables->steam().longest;
    const Duration said = jar.process->time->value.high;
    const Judged judged = judge(jar, heights_of(jar).front(), card_choice(reading, jar));
    const bool table_too_long = judged.tabled != nullptr && judged.step->time > longest;
    if (said <= longest && !table_too_long) return;
    results.point(PointKind::time, State::differs, quantity::words(said), quantity::words(longest));
    const Rule* rule = cases_.find(Case::steam_longest, reading);
    if (rule == nullptr) return;
    results.add(*rule, jar.process->time->at,
                {{"found", quantity::words(table_too_long ? judged.step->time : said)},
                 {"needed", quantity::words(longest)},
                 {"jar", jar_words(jar)},
                 {"of", of_words(reading)},
                 {"at", at_words(jar, heights_of(jar).front())}});
  }

  void low_temperature(const Reading& reading, const JarProcess& jar, Results& results) const {
    const bool listed =
        reading.match.product != nullptr && reading.match.product->low_temperature_pasteurization;
    if (!listed || !jar.process->time || !least_low_temperature_) {
      results.point(PointKind::time, State::unknown);
      return;
    }
    const Duration said = jar.process->time->value.low;
    const bool held = said >= *least_low_temperature_;
    results.point(PointKind::time, held ? State::held : State::differs, quantity::words(said),
                  quantity::words(*least_low_temperature_));
    const Rule* rule = held ? nullptr : cases_.find(Case::low_temperature, reading);
    if (rule == nullptr) return;
    results.add(*rule, jar.process->time->at,
                {{"found", quantity::words(said)}, {"needed", quantity::words(*least_low_temperature_)}});
  }

  void unsaid(const Reading& reading, const JarProcess& jar, Results& results) const {
    const Judged judged = judge(jar, heights_of(jar).front(), card_choice(reading, jar));
    const std::string needed = judged.tabled == nullptr ? std::string() : step_words(*judged.step);
    results.point(PointKind::time, State::unknown, {}, needed);
    const Rule* rule = needed.empty() ? nullptr : cases_.find(Case::unsaid, reading);
    if (rule == nullptr) return;
    results.add(*rule, process_at(reading, jar),
                {{"needed", needed},
                 {"jar", jar_words(jar)},
                 {"of", of_words(reading)},
                 {"at", at_words(jar, heights_of(jar).front())}});
  }

  /// True if a rule for infants asks more time than the card gives; it has told so.
  bool infant_short(const Reading& reading, const JarProcess& jar, Altitude height, Results& results) const {
    if (infant_steps_.empty() || !reading.infant) return false;
    const Rule* rule = cases_.find(Case::infant, reading);
    if (rule == nullptr) return false;
    const InfantStep* step = &infant_steps_.back();
    for (const InfantStep& candidate : infant_steps_) {
      if (candidate.to && height > *candidate.to) continue;
      step = &candidate;
      break;
    }
    const Duration said = jar.process->time->value.low;
    if (said >= step->time) return false;
    results.point(PointKind::time, State::differs, quantity::words(said), quantity::words(step->time));
    results.add(*rule, jar.process->time->at,
                {{"found", quantity::words(said)},
                 {"needed", quantity::words(step->time)},
                 {"jar", jar_words(jar)},
                 {"of", of_words(reading)},
                 {"at", at_words(jar, height)}});
    return true;
  }

  std::optional<Duration> least_low_temperature_;
  std::vector<InfantStep> infant_steps_;
  Cases cases_;  // last: its making fills the figures above
};

}  // namespace

std::unique_ptr<Check> make_time_against_table(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<TimeAgainstTable>(rules, maker);
}

}  // namespace sealworthy::checks
