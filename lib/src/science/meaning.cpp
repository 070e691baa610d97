#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "quantity/figures.hpp"
#include "science/study.hpp"

namespace sealworthy::science {
namespace {

/// "0.4", "5.6", "25": two figures are all that such minutes are worth.
std::string minutes_words(Duration time) {
  const double m = in_minutes(time);
  if (m >= 10) return fmt::format("{:.0f} minutes", m);
  if (m >= 0.1) return fmt::format("{:.1f} minutes", m);
  return m >= 0.001 ? fmt::format("{:.1g} minutes", m) : std::string("nothing");
}

std::string degrees(Temperature t) { return fmt::format("{:.1f} F", in_fahrenheit(t)); }

std::string place(const Study& study) {
  if (!study.altitude || !study.altitude->known) return "at sea level";
  return "at " + quantity::words(study.altitude->altitude);
}

std::string reference_words(const HeatStudy& heat) {
  return fmt::format("{:.0f} F", in_fahrenheit(heat.reference));
}

std::string process_words(const HeatEffect& effect) {
  auto words = quantity::words(effect.time);
  if (effect.pressure) words += " at " + quantity::words(*effect.pressure);
  return words + ", " + degrees(effect.around);
}

std::string medium(const HeatEffect& effect, const Study& study) {
  if (!effect.pressure) return fmt::format("{} water boils at {}.", place(study), degrees(effect.around));
  return fmt::format("{} {} is steam of {}.", place(study), quantity::words(*effect.pressure),
                     degrees(effect.around));
}

std::string upper_first(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

/// What the card's minutes come to, beside the tested ones.
std::string kill_words(const HeatStudy& heat) {
  std::string words =
      fmt::format(" If the whole jar were that hot for all {}, it would count as {} at {}",
                  quantity::words(heat.card.time), minutes_words(heat.card.at_most), reference_words(heat));
  if (heat.least.si() > 0)
    words += fmt::format("; {} are the least that is given against {}", minutes_words(heat.least), heat.germ);
  if (heat.tested && heat.tested->at_most > heat.card.at_most)
    words += fmt::format("; the tested process ({}) counts as {}", process_words(*heat.tested),
                         minutes_words(heat.tested->at_most));
  return words + ".";
}

/// How much faster or slower a minute kills than a minute of the tested process.
std::string pressure_words(const HeatStudy& heat) {
  if (!heat.tested || !heat.tested->pressure || !(heat.tested->around > heat.card.around)) return {};
  const double rate = (heat.card.at_most / heat.card.time) / (heat.tested->at_most / heat.tested->time);
  if (!std::isfinite(rate)) return {};
  return fmt::format(" The tested {} is {}: each minute of the card's kills {:.0f} percent as much.",
                     quantity::words(*heat.tested->pressure), degrees(heat.tested->around), rate * 100);
}

std::string air_words(const Finding& finding, const HeatStudy& heat, const Study& study,
                      const HeatData& data) {
  if (std::find(data.air_rules.begin(), data.air_rules.end(), finding.rule) == data.air_rules.end())
    return {};
  if (!heat.card.pressure || !study.altitude) return {};
  const auto steam =
      value_of(canner_temperature({*heat.card.pressure, study.altitude->altitude, {}, data.air_share}));
  if (!steam) return {};
  return upper_first(
      fmt::format("{} {} of pure steam is {}. If {:.0f} percent of it were air left in the canner, the gauge "
                  "would show the "
                  "same, but the steam would be {}.",
                  place(study), quantity::words(*heat.card.pressure), degrees(heat.card.around),
                  data.air_share * 100, degrees(*steam)));
}

std::string acid_words(const Study& study) {
  if (!study.acidity) return {};
  const AcidityStudy& acid = *study.acidity;
  return fmt::format(
      "Worked out from the ingredients, the pH comes to about {:.1f}, and may come to {:.1f} with produce "
      "and acid "
      "at their worst. Botulism can grow above {:.1f}. An estimate settles nothing: only a tested formula or "
      "a "
      "process authority does.",
      acid.best, acid.strict, acid.limit);
}

}  // namespace

std::string meaning_of(const Finding& finding, const Study& study, const knowledge::Knowledge& knowledge) {
  if (finding.topic == Topic::acid) return acid_words(study);
  if (study.heat.empty()) return {};
  const HeatStudy& heat = study.heat.front();
  auto air = air_words(finding, heat, study, knowledge.heat);
  if (!air.empty()) return air;
  switch (finding.topic) {
    case Topic::method:
    case Topic::time:
      return upper_first(medium(heat.card, study)) + kill_words(heat);
    case Topic::altitude:
    case Topic::pressure:
      return upper_first(medium(heat.card, study)) +
             (heat.card.pressure ? pressure_words(heat) : kill_words(heat));
    default:
      return {};
  }
}

}  // namespace sealworthy::science
