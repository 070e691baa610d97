#include "checks/altitude_known.hpp"

#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "checks/against_table.hpp"
#include "checks/cases.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::checks {
namespace {

using reading::JarProcess;
using reading::Reading;
using tested::AdviceAbove;
using State = Point::State;

enum class Case { unsaid, unsaid_unmatched, above_table, extension_row, other_body, outside_card };
const std::vector<std::string_view> case_names{"unsaid",        "unsaid-unmatched", "above-table",
                                               "extension-row", "other-body",       "outside-card"};

/// The table's highest altitude for the option, open bands ending where they are taken to end.
Altitude top_of(const tested::Option& option, const tested::Tables& tables) {
  return std::min(option.steps.back().band.to, tables.highest_open());
}

/// What is asked above the altitude to which the card's figures hold; empty where nothing is printed.
std::string needed_above(const JarProcess& jar, Altitude serves, const Choice& choice,
                         const tested::Tables& tables) {
  const Judged judged = judge(jar, serves + feet(1), choice);
  const bool printed = judged.tabled != nullptr && judged.published && serves < tables.highest_open();
  return printed ? step_words(*judged.step) : std::string();
}

class AltitudeKnown final : public Check {
 public:
  AltitudeKnown(std::span<const Rule* const> rules, Maker& maker) : cases_(rules, maker, case_names) {}

  void run(const Reading& reading, Results& results) const override {
    if (!reading.processed()) {
      results.point(PointKind::altitude, State::unknown);
      return;
    }
    if (reading.altitude.judged.empty()) {
      unsaid(reading, results);
      return;
    }
    outside_card(reading, results);
    for (const JarProcess& jar : reading.jars) check(reading, jar, results);
  }

 private:
  Position altitude_at(const Reading& reading) const {
    return reading.altitude.card ? reading.altitude.card->at : reading.recipe->process_or_title();
  }

  /// Where the kitchen file tells this height, if that is where it comes from.
  static const recipe::Placed<Interval<Altitude>>* kitchen_altitude(const Reading& reading, Altitude height) {
    if (reading.altitude.from_option || reading.kitchen == nullptr || !reading.kitchen->altitude)
      return nullptr;
    const auto& told = *reading.kitchen->altitude;
    return told.value.contains(height) ? &told : nullptr;
  }

  void unsaid(const Reading& reading, Results& results) const {
    results.point(PointKind::altitude, State::unknown);
    const JarProcess& jar = reading.jars.front();
    const Choice choice = card_choice(reading, jar);
    const auto serves = holds_up_to(jar, choice, *reading.tables);
    const Rule* rule = cases_.find(serves ? Case::unsaid : Case::unsaid_unmatched, reading);
    if (rule == nullptr) return;
    std::string above;
    if (serves) above = needed_above(jar, *serves, choice, *reading.tables);
    results.add(*rule, reading.recipe->process_or_title(),
                {{"serves", serves ? quantity::words(*serves) : std::string()},
                 {"above", above.empty() ? std::string("no figures are tested") : "it takes " + above}});
  }

  void outside_card(const Reading& reading, Results& results) const {
    const auto& use = reading.altitude;
    if (!use.kitchen || !use.card) return;
    // Of several processes one may be for the kitchen although the first is not.
    for (const JarProcess& jar : reading.jars) {
      if (jar.process == nullptr || !jar.process->altitude) continue;
      const Interval<Altitude>& range = jar.process->altitude->value;
      if (range.low <= use.kitchen->low && use.kitchen->high <= range.high) return;
    }
    const Rule* rule = cases_.find(Case::outside_card, reading);
    if (rule == nullptr) return;
    results.add(*rule, use.card->at,
                {{"found", quantity::words_of(*use.kitchen)}, {"needed", quantity::words(use.card->value)}});
  }

  void check(const Reading& reading, const JarProcess& jar, Results& results) const {
    if (jar.tabled.empty() || jar.heights.empty()) {
      const bool known = !jar.heights.empty() && jar.method == reading::MethodKind::low_temperature;
      results.point(PointKind::altitude, known ? State::held : State::unknown);
      return;
    }
    const Choice choice = card_choice(reading, jar);
    bool held = true;
    for (const Altitude& height : jar.heights)
      held = check_height(reading, jar, choice, height, results) && held;
    results.point(PointKind::altitude, held ? State::held : State::unknown,
                  quantity::words(jar.heights.front()));
  }

  /// False where no published row holds for the altitude; it has been told.
  bool check_height(const Reading& reading, const JarProcess& jar, const Choice& choice, Altitude height,
                    Results& results) const {
    const Judged judged = judge(jar, height, choice);
    if (judged.tabled == nullptr) return false;
    const tested::Option& option = *judged.tabled->option;
    const AdviceAbove* advice = reading.tables->advice(option, judged.tabled->row->method, height);
    const Altitude top = top_of(option, *reading.tables);
    if (height <= top) {
      // "Above 6,000 ft" as the table prints it speaks of no place in particular.
      const bool open = jar.process->altitude && std::isinf(jar.process->altitude->value.high.si()) &&
                        kitchen_altitude(reading, height) == nullptr;
      if (advice != nullptr && !open)
        tell(Case::other_body, reading, jar, judged, advice, height, top, results);
      return true;
    }
    const bool follows = advice != nullptr && follows_advice(jar, judged, *advice);
    tell(follows ? Case::extension_row : Case::above_table, reading, jar, judged, advice, height, top,
         results);
    return false;
  }

  /// The extension's pressure with the table's time, or the table's time and what the extension adds.
  static bool follows_advice(const JarProcess& jar, const Judged& judged, const AdviceAbove& advice) {
    const recipe::Process& process = *jar.process;
    if (!process.time || process.time->value.low < judged.step->time + advice.added) return false;
    return !advice.pressure || (process.pressure && process.pressure->value.low >= *advice.pressure);
  }

  void tell(Case which, const Reading& reading, const JarProcess& jar, const Judged& judged,
            const AdviceAbove* advice, Altitude height, Altitude top, Results& results) const {
    const Rule* rule = cases_.find(which, reading);
    if (rule == nullptr) return;
    std::string needed;
    if (advice != nullptr) {
      needed = advice->pressure ? quantity::words(*advice->pressure)
                                : quantity::words(judged.step->time + advice->added);
    }
    const auto* kitchen = kitchen_altitude(reading, height);
    const Position card_at = jar.process->altitude ? jar.process->altitude->at : altitude_at(reading);
    Finding& finding = results.add(*rule, kitchen != nullptr ? kitchen->at : card_at,
                                   {{"found", quantity::words(height)},
                                    {"needed", needed},
                                    {"serves", quantity::words(top)},
                                    {"body", advice == nullptr ? std::string() : advice->body},
                                    {"product", reading.match.product->title}});
    finding.from_kitchen = kitchen != nullptr;
    if (advice != nullptr) finding.sources.push_back(advice->source);
  }

  Cases cases_;
};

}  // namespace

std::unique_ptr<Check> make_altitude_known(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<AltitudeKnown>(rules, maker);
}

}  // namespace sealworthy::checks
