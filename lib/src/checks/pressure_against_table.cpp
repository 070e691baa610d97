#include "checks/pressure_against_table.hpp"

#include <algorithm>
#include <cmath>
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
using tested::TableMethod;
using State = Point::State;

enum class Case {
  dial_short,
  dial_altitude,
  weighted_short,
  weighted_altitude,
  either_short,
  either_altitude,
  gauge_unsaid,
  weight,
  too_high,
  unsaid,
  no_gauge
};
const std::vector<std::string_view> case_names{
    "dial-short",   "dial-altitude",   "weighted-short", "weighted-altitude",
    "either-short", "either-altitude", "gauge-unsaid",   "weight",
    "too-high",     "unsaid",          "no-gauge"};

Case short_case(std::optional<recipe::Gauge> gauge, bool at_lowest) {
  if (!gauge) return at_lowest ? Case::either_altitude : Case::either_short;
  if (*gauge == recipe::Gauge::dial) return at_lowest ? Case::dial_altitude : Case::dial_short;
  return at_lowest ? Case::weighted_altitude : Case::weighted_short;
}

class PressureAgainstTable final : public Check {
 public:
  PressureAgainstTable(std::span<const Rule* const> rules, Maker& maker)
      : cases_(rules, maker, case_names, [this](const Rule&, Fields& with) { read_more(with); }) {}

  void run(const Reading& reading, Results& results) const override {
    for (const JarProcess& jar : reading.jars) {
      if (jar.process == nullptr) continue;
      if (jar.method != reading::MethodKind::pressure && !jar.process->pressure) continue;
      if (jar.method != reading::MethodKind::pressure && jar.process->method) {
        no_gauge(reading, jar, results);
      } else if (!jar.process->pressure) {
        unsaid(reading, jar, results);
      } else {
        too_high(reading, jar, results);
        compare(reading, jar, results);
      }
    }
  }

 private:
  void read_more(Fields& with) {
    if (const auto highest = pressure_figure(with, "highest")) highest_ = highest;
    const yaml::Node* weights = with.find("weights");
    if (weights == nullptr) return;
    for (const yaml::Node& item : weights->items) {
      const auto value = quantity::read_pressure(item.text);
      if (std::holds_alternative<quantity::FigureError>(value)) {
        with.sink().add(item.at, std::get<quantity::FigureError>(value).message);
      } else {
        weights_.push_back(std::get<0>(value).low);
      }
    }
  }

  /// True if a weighted gauge can be set to it; in kilopascals they are rounded, hence the two percent.
  bool is_weight(GaugePressure pressure) const {
    constexpr double rounding = 0.02;
    return weights_.empty() || std::any_of(weights_.begin(), weights_.end(), [&](GaugePressure w) {
             return std::abs(pressure / w - 1) <= rounding;
           });
  }

  void unsaid(const Reading& reading, const JarProcess& jar, Results& results) const {
    const Judged judged = judge(jar, heights_of(jar).front(), card_choice(reading, jar));
    const bool asked = judged.tabled != nullptr && judged.step->pressure;
    const std::string needed = asked ? quantity::words(*judged.step->pressure) : std::string();
    results.point(PointKind::gauge, State::unknown);
    results.point(PointKind::pressure, State::unknown, {}, needed);
    const Rule* rule = asked ? cases_.find(Case::unsaid, reading) : nullptr;
    if (rule == nullptr) return;
    results.add(*rule, process_at(reading, jar),
                {{"needed", needed},
                 {"gauge", judged.tabled->row->method == TableMethod::pressure_dial ? "dial" : "weighted"},
                 {"at", at_words(jar, heights_of(jar).front())}});
  }

  /// A pressure beside a method that builds none: one of the two is not meant.
  void no_gauge(const Reading& reading, const JarProcess& jar, Results& results) const {
    const std::string said = quantity::words(jar.process->pressure->value.low);
    results.point(PointKind::pressure, State::unknown, said);
    if (const Rule* rule = cases_.find(Case::no_gauge, reading))
      results.add(*rule, jar.process->pressure->at,
                  {{"found", said}, {"method", std::string(jar.process->method->value)}});
  }

  void too_high(const Reading& reading, const JarProcess& jar, Results& results) const {
    const GaugePressure said = jar.process->pressure->value.high;
    if (!highest_ || said <= *highest_) return;
    results.point(PointKind::pressure, State::differs, quantity::words(said), quantity::words(*highest_));
    if (const Rule* rule = cases_.find(Case::too_high, reading))
      results.add(*rule, jar.process->pressure->at,
                  {{"found", quantity::words(said)}, {"needed", quantity::words(*highest_)}});
  }

  void compare(const Reading& reading, const JarProcess& jar, Results& results) const {
    const Choice choice = card_choice(reading, jar);
    const std::string said = quantity::words(jar.process->pressure->value.low);
    for (const Altitude& height : heights_of(jar)) {
      const Judged judged = judge(jar, height, choice);
      if (judged.tabled == nullptr || !judged.step->pressure) {
        results.point(PointKind::gauge, State::unknown);
        results.point(PointKind::pressure, State::unknown, said);
        return;
      }
      if (!judged.pressure) {
        tell_short(reading, jar, height, choice, judged, results);
        results.point(PointKind::gauge, State::held);
        results.point(PointKind::pressure, State::differs, said, quantity::words(*judged.step->pressure));
        return;
      }
    }
    const Judged judged = judge(jar, heights_of(jar).front(), choice);
    results.point(PointKind::pressure, State::held, said, quantity::words(*judged.step->pressure));
    gauge(reading, jar, choice, results);
  }

  void tell_short(const Reading& reading, const JarProcess& jar, Altitude height, const Choice& choice,
                  const Judged& judged, Results& results) const {
    const bool at_lowest = judge(jar, feet(0), choice).pressure;
    const Rule* rule = cases_.find(short_case(jar.gauge, at_lowest), reading);
    if (rule == nullptr) return;
    const auto serves = holds_up_to(jar, choice, *reading.tables);
    Finding& finding = results.add(*rule, jar.process->pressure->at,
                                   {{"found", quantity::words_of(jar.process->pressure->value)},
                                    {"needed", quantity::words(*judged.step->pressure)},
                                    {"jar", jar_words(jar)},
                                    {"of", of_words(reading)},
                                    {"at", at_words(jar, height)},
                                    {"serves", serves ? quantity::words(*serves) : ""},
                                    {"product", reading.match.product->title}});
    cite_row(finding, judged);
  }

  /// The pressure is enough for one kind of gauge at least; is the card's the right one?
  void gauge(const Reading& reading, const JarProcess& jar, const Choice& choice, Results& results) const {
    const GaugePressure said = jar.process->pressure->value.low;
    if (jar.gauge == recipe::Gauge::dial) {
      results.point(PointKind::gauge, State::held, "dial");
      return;
    }
    if (jar.gauge == recipe::Gauge::weighted) {
      results.point(PointKind::gauge, is_weight(said) ? State::held : State::unknown, "weighted");
      const Rule* rule = is_weight(said) ? nullptr : cases_.find(Case::weight, reading);
      if (rule != nullptr) results.add(*rule, jar.process->pressure->at, {{"found", quantity::words(said)}});
      return;
    }
    const bool dial = serves(jar, {choice.pack, TableMethod::pressure_dial});
    const bool weighted = serves(jar, {choice.pack, TableMethod::pressure_weighted});
    const bool both = dial && weighted && is_weight(said);
    results.point(PointKind::gauge, both ? State::held : State::unknown, both ? "either" : "");
    // Where neither serves, the time is short and told of.
    const Rule* rule = both || (!dial && !weighted) ? nullptr : cases_.find(Case::gauge_unsaid, reading);
    if (rule == nullptr) return;
    results.add(*rule, process_at(reading, jar),
                {{"found", quantity::words(said)},
                 {"gauge", dial ? "dial" : "weighted"},
                 {"other", dial ? "weighted" : "dial"},
                 {"needed", needed_of(jar, {choice.pack, dial ? TableMethod::pressure_weighted
                                                              : TableMethod::pressure_dial})},
                 {"at", at_words(jar, heights_of(jar).front())}});
  }

  /// True if time and pressure serve that kind of gauge at every height.
  static bool serves(const JarProcess& jar, const Choice& choice) {
    const auto heights = heights_of(jar);
    return std::all_of(heights.begin(), heights.end(), [&](Altitude height) {
      const Judged judged = judge(jar, height, choice);
      return judged.tabled != nullptr && judged.pressure && judged.time;
    });
  }

  static std::string needed_of(const JarProcess& jar, const Choice& choice) {
    const Judged judged = judge(jar, heights_of(jar).front(), choice);
    return judged.tabled == nullptr || !judged.step->pressure ? std::string("no tested pressure")
                                                              : quantity::words(*judged.step->pressure);
  }

  std::optional<GaugePressure> highest_;
  std::vector<GaugePressure> weights_;
  Cases cases_;  // last: its making fills the figures above
};

}  // namespace

std::unique_ptr<Check> make_pressure_against_table(std::span<const Rule* const> rules, Maker& maker) {
  return std::make_unique<PressureAgainstTable>(rules, maker);
}

}  // namespace sealworthy::checks
