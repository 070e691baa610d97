#include "science/study.hpp"

#include <algorithm>
#include <cmath>

#include "checks/against_table.hpp"
#include "science/card_mixture.hpp"

namespace sealworthy::science {
namespace {

using reading::JarClass;
using reading::JarProcess;
using reading::MethodKind;
using reading::Reading;
using tested::TableMethod;

std::optional<AltitudeStudy> altitude_of(const Reading& reading) {
  AltitudeStudy study;
  study.known = !reading.altitude.judged.empty();
  study.altitude = study.known ? reading.altitude.judged.front() : feet(0);
  const auto air = value_of(air_pressure(study.altitude));
  const auto boiling = value_of(boiling_point(study.altitude));
  if (!air || !boiling) return std::nullopt;
  study.air = *air;
  study.boiling = *boiling;
  return study;
}

/// A jar's lag by its size: heat travels by the square of the width.
JarLag scaled(const JarLag& pint, const JarProcess& jar) {
  const double pints = jar.jar == nullptr ? 1 : jar.jar->volume / us_fluid_ounces(16);
  const double factor = std::clamp(std::pow(std::max(pints, 0.01), 2.0 / 3), 0.1, 10.0);
  return {pint.heating * factor, pint.cooling * factor, pint.j};
}

class Heat {
 public:
  Heat(const HeatData& data, bool low_acid, bool hot, Altitude altitude)
      : data_(data), target_(low_acid ? data.low_acid : data.acid), hot_(hot), altitude_(altitude) {}

  [[nodiscard]] const HeatTarget& target() const { return target_; }

  [[nodiscard]] std::optional<HeatEffect> effect(const JarProcess& jar, Duration time,
                                                 std::optional<GaugePressure> pressure) const {
    const auto around =
        value_of(pressure ? canner_temperature({*pressure, altitude_}) : boiling_point(altitude_));
    if (!around) return std::nullopt;
    const auto rate = value_of(lethal_rate(*around, target_.reference, target_.z));
    const Temperature start = std::min(hot_ ? data_.hot_start : data_.raw_start, *around);
    const HeatTreatment treatment{start, *around, time, data_.room};
    const auto thin =
        value_of(jar_lethality(treatment, scaled(data_.thin.pint, jar), target_.reference, target_.z));
    const auto thick =
        value_of(jar_lethality(treatment, scaled(data_.thick.pint, jar), target_.reference, target_.z));
    if (!rate || !thin || !thick) return std::nullopt;
    return HeatEffect{
        pressure ? "pressure canner" : "boiling water", time, pressure, *around, time * *rate, *thin, *thick};
  }

 private:
  const HeatData& data_;
  const HeatTarget& target_;
  bool hot_;
  Altitude altitude_;
};

/// The published process for the jar: by the card's own method, else by pressure, else by boiling water.
const tested::Option::Step* tested_step(const Reading& reading, const JarProcess& jar, Altitude altitude) {
  const auto judged = checks::judge(jar, altitude, checks::card_choice(reading, jar));
  if (judged.tabled != nullptr && judged.step != nullptr) return judged.step;
  if (reading.match.product == nullptr || !jar.size) return nullptr;
  const auto pack = reading.recipe->pack ? std::optional(reading.recipe->pack->value) : std::nullopt;
  for (const auto method :
       {TableMethod::pressure_dial, TableMethod::pressure_weighted, TableMethod::boiling_water})
    for (const auto& needed :
         reading.tables->needed(*reading.match.product, method, pack, *jar.size, altitude))
      if (needed.step != nullptr && !needed.step->not_recommended) return needed.step;
  return nullptr;
}

bool boils(MethodKind method) { return method == MethodKind::boiling_water || method == MethodKind::steam; }

std::optional<HeatStudy> heat_of(const Reading& reading, const JarProcess& jar, Altitude altitude,
                                 const HeatData& data) {
  if (jar.process == nullptr || !jar.process->time) return std::nullopt;
  std::optional<GaugePressure> pressure;
  if (jar.method == MethodKind::pressure) {
    if (!jar.process->pressure) return std::nullopt;
    pressure = jar.process->pressure->value.low;
  } else if (!boils(jar.method)) {
    return std::nullopt;
  }
  const bool low_acid =
      reading.jar_class == JarClass::low_acid || jar.method == MethodKind::pressure ||
      (reading.jar_class == JarClass::unknown && reading.low_acid_food && !reading.acid_added);
  const bool hot = reading.recipe->pack && reading.recipe->pack->value == recipe::Pack::hot;
  const Heat heat(data, low_acid, hot, altitude);
  const auto card = heat.effect(jar, jar.process->time->value.low, pressure);
  if (!card) return std::nullopt;
  HeatStudy study;
  study.jar = checks::jar_words(jar);
  study.low_acid = low_acid;
  study.germ = heat.target().germ;
  study.reference = heat.target().reference;
  study.least = heat.target().least;
  study.card = *card;
  study.log_reductions =
      science::log_reductions(card->at_most, {heat.target().reference, heat.target().z, heat.target().d});
  study.source = heat.target().source;
  study.from_memory = heat.target().from_memory;
  if (const auto* step = tested_step(reading, jar, altitude))
    study.tested = heat.effect(jar, step->time, step->pressure);
  return study;
}

void acidity_of(const Reading& reading, const AcidData& data, Study& study) {
  const CardMixture card = mixture_of(reading, data);
  if (card.acid_unknown) {
    study.no_acidity = "the amount or the strength of an acid is not known";
    return;
  }
  const auto ph = ph_of(card.mixture, data);
  if (!ph) {
    study.no_acidity = "no ingredient could be weighed";
    return;
  }
  AcidityStudy acidity{ph->ph[0], ph->ph[1], ph->ph[2], data.bounds().limit, {}, card.no_amount};
  for (std::size_t i = 0; i < card.mixture.parts.size(); ++i) {
    const Part& part = card.mixture.parts[i];
    acidity.parts.push_back({std::string(part.name), part.grams, part.profile.own_ph[0], ph->pulls[i].meq,
                             part.profile.by_default && !part.profile.inert});
  }
  std::stable_sort(acidity.parts.begin(), acidity.parts.end(),
                   [](const AcidPart& a, const AcidPart& b) { return a.meq < b.meq; });
  study.acidity = std::move(acidity);
}

}  // namespace

Study study_of(const Reading& reading, const knowledge::Knowledge& knowledge) {
  Study study;
  study.altitude = altitude_of(reading);
  const Altitude altitude = study.altitude ? study.altitude->altitude : feet(0);
  for (const JarProcess& jar : reading.jars) {
    auto heat = heat_of(reading, jar, altitude, knowledge.heat);
    if (heat) study.heat.push_back(std::move(*heat));
  }
  acidity_of(reading, knowledge.acidity, study);
  return study;
}

}  // namespace sealworthy::science
