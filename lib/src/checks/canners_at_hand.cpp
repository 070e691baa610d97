#include "checks/canners_at_hand.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "checks/against_table.hpp"
#include "quantity/figures.hpp"

namespace sealworthy::checks {
namespace {

using reading::CannerAtHand;
using reading::JarProcess;
using reading::MethodKind;
using reading::Reading;
using tested::TableMethod;

/// A weight is named in whole psi or rounded kilopascals.
bool has_weight(const recipe::Canner& canner, GaugePressure pressure) {
  constexpr double rounding = 0.02;
  return canner.weights.empty() ||
         std::any_of(canner.weights.begin(), canner.weights.end(),
                     [&](const auto& w) { return std::abs(w.value / pressure - 1) <= rounding; });
}

std::string too_much(const recipe::Canner& canner, GaugePressure pressure) {
  if (!canner.largest_pressure || pressure <= canner.largest_pressure->value) return {};
  return quantity::words(pressure) + ", more than the canner's largest pressure of " +
         quantity::words(canner.largest_pressure->value);
}

bool reaches(const CannerAtHand& at_hand, TableMethod method, GaugePressure pressure) {
  if (method == TableMethod::pressure_weighted && !has_weight(*at_hand.canner, pressure)) return false;
  return too_much(*at_hand.canner, pressure).empty();
}

bool serves_method(const CannerAtHand& at_hand, TableMethod method) {
  switch (method) {
    case TableMethod::boiling_water:
      return at_hand.method == MethodKind::boiling_water;
    case TableMethod::pressure_dial:
      return at_hand.method == MethodKind::pressure && at_hand.gauge != recipe::Gauge::weighted;
    case TableMethod::pressure_weighted:
      return at_hand.method == MethodKind::pressure && at_hand.gauge != recipe::Gauge::dial;
  }
  return false;
}

}  // namespace

bool of_its_kind(const CannerAtHand& at_hand, const JarProcess& jar) {
  switch (jar.method) {
    case MethodKind::pressure:
    case MethodKind::steam:
      return at_hand.method == jar.method;
    case MethodKind::boiling_water:
    case MethodKind::low_temperature:
      return at_hand.method == MethodKind::boiling_water || at_hand.method == MethodKind::pressure;
    default:
      return false;
  }
}

std::vector<const CannerAtHand*> of_its_kind(const Reading& reading, const JarProcess& jar) {
  std::vector<const CannerAtHand*> found;
  for (const CannerAtHand& at_hand : reading.canners)
    if (of_its_kind(at_hand, jar)) found.push_back(&at_hand);
  return found;
}

std::string lacking(const CannerAtHand& at_hand, const JarProcess& jar) {
  if (jar.method != MethodKind::pressure) return {};
  if (jar.gauge && at_hand.gauge && *jar.gauge != *at_hand.gauge)
    return *jar.gauge == recipe::Gauge::dial ? "a dial gauge" : "a weighted gauge";
  if (jar.process == nullptr || !jar.process->pressure) return {};
  const GaugePressure pressure = jar.process->pressure->value.low;
  if (jar.gauge == recipe::Gauge::weighted && !has_weight(*at_hand.canner, pressure))
    return "a weight of " + quantity::words(pressure);
  return too_much(*at_hand.canner, pressure);
}

std::vector<std::string> other_options(const Reading& reading, const JarProcess& jar) {
  std::vector<std::string> options;
  if (!reading.match.sure() || !jar.size) return options;
  const tested::Product& product = *reading.match.product;
  const std::string part = jar.tabled.empty() ? std::string() : jar.tabled.front().row->applies_to;
  const Altitude height = heights_of(jar).front();
  std::optional<recipe::Pack> pack;
  if (reading.recipe->pack) pack = reading.recipe->pack->value;
  for (const CannerAtHand& at_hand : reading.canners) {
    for (const auto method :
         {TableMethod::boiling_water, TableMethod::pressure_dial, TableMethod::pressure_weighted}) {
      if (!serves_method(at_hand, method)) continue;
      for (const auto& needed : reading.tables->needed(product, method, pack, *jar.size, height, part)) {
        const auto* step = needed.step;
        if (step == nullptr || step->not_recommended || step->read == Read::memory) continue;
        if (step->pressure && !reaches(at_hand, method, *step->pressure)) continue;
        std::string words = step_words(*step) + " in " + std::string(at_hand.method_name);
        if (std::find(options.begin(), options.end(), words) == options.end())
          options.push_back(std::move(words));
      }
    }
  }
  return options;
}

bool for_this_kitchen(const Reading& reading, const JarProcess& jar) {
  if (jar.process == nullptr) return false;
  return !reading.altitude.kitchen || !jar.process->altitude ||
         jar.process->altitude->value.overlaps(*reading.altitude.kitchen);
}

}  // namespace sealworthy::checks
